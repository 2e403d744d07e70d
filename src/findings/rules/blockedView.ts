import { feedsOf, obstructionOf } from "../../parts/dishFeeds.ts";
import { DISH_OPTIONS, type DishOptions } from "../../parts/dishOptions.ts";
import { remembered } from "../../signal/remember.ts";
import type { Draft } from "../finding.ts";
import { type RuleOf, wireIdsAt } from "../rule.ts";

export type BlockedViewFacts =
  | { readonly kind: "below the horizon"; readonly elevationDeg: number }
  | {
      readonly kind: "obstacle";
      readonly azimuthDeg: number;
      readonly elevationDeg: number;
      /** How high the obstacle stands in that direction. */
      readonly topDeg: number;
      readonly lossDb: number;
    };

/** Less is no more than an alignment costs that is not quite perfect [dB]; a choice of this tool. */
const LEAST_LOSS_DB = 1;
/** Middle of the sky band, where the loss is told [MHz]. */
const TOLD_AT_MHZ = 11_700;

const checked = new WeakMap<object, DishOptions>();

/** A dish that cannot see its satellite: it stands below the horizon, or something stands before it. */
export const blockedView: RuleOf<"blocked-view"> = {
  id: "blocked-view",
  check: ({ record }) => {
    if (record.kind.options !== DISH_OPTIONS) return [];
    const o = remembered(checked, record.options, () => DISH_OPTIONS.parse(record.options));
    return feedsOf(o).flatMap(({ port, aim }): Draft<"blocked-view">[] => {
      const { azimuthDeg, elevationDeg } = aim;
      const place = {
        at: { part: record.part.id, port, service: "satellite" as const },
        parts: [record.part.id] as const,
        wires: wireIdsAt(record, port),
        unit: "°",
        value: elevationDeg,
      };
      if (elevationDeg <= 0)
        return [
          {
            severity: "error",
            ...place,
            limit: 0,
            facts: { kind: "below the horizon", elevationDeg },
          },
        ];
      const hidden = obstructionOf(o, aim, TOLD_AT_MHZ);
      if (!hidden || hidden.lossDb < LEAST_LOSS_DB) return [];
      const topDeg = hidden.obstacle.elevationDeg;
      return [
        {
          severity: "warning",
          ...place,
          limit: topDeg,
          facts: { kind: "obstacle", azimuthDeg, elevationDeg, topDeg, lossDb: hidden.lossDb },
        },
      ];
    });
  },
};
