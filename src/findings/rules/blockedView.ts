import { dishOptionsOf } from "../../parts/dishBands.ts";
import { feedsOf, middleOfBandMHz, obstructionOf } from "../../parts/dishFeeds.ts";
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

/** A dish that cannot see its satellite: it stands below the horizon, or something stands before it. */
export const blockedView: RuleOf<"blocked-view"> = {
  id: "blocked-view",
  check: ({ record }) => {
    const o = dishOptionsOf(record);
    if (!o) return [];
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
      const hidden = obstructionOf(o, aim, middleOfBandMHz(o));
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
