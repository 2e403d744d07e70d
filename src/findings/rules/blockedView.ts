import type { PartRecord } from "../../evaluate/evaluation.ts";
import { dishOptionsOf } from "../../parts/dishBands.ts";
import {
  type DishFeed,
  feedPort,
  feedsOf,
  middleOfBandMHz,
  neededSpacingMm,
  obstructionOf,
  pastSatelliteLossDb,
} from "../../parts/dishFeeds.ts";
import type { DishOptions } from "../../parts/dishOptions.ts";
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
    }
  /** An LNB beside the focus that sits where its satellite's beam does not meet. */
  | {
      readonly kind: "feed beside its place";
      readonly feed: number;
      readonly spacingMm: number;
      readonly neededMm: number;
      /** By how many degrees it looks past its satellite. */
      readonly pastDeg: number;
      readonly lossDb: number;
      /** The one in the focus sits in the same housing. */
      readonly isMonoblock: boolean;
    };

/** Less is no more than an alignment costs that is not quite perfect [dB]; a choice of this tool. */
const LEAST_LOSS_DB = 1;

/** A dish that does not see a satellite: that one stands below the horizon, something stands before it, or an LNB sits beside its place. */
export const blockedView: RuleOf<"blocked-view"> = {
  id: "blocked-view",
  check: ({ record }) => {
    const o = dishOptionsOf(record);
    if (!o) return [];
    return feedsOf(o).flatMap((feed): Draft<"blocked-view">[] => {
      const { port, aim } = feed;
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
      const besides = besideItsPlace(record, o, feed);
      if (!hidden || hidden.lossDb < LEAST_LOSS_DB) return [...besides];
      const topDeg = hidden.obstacle.elevationDeg;
      return [
        ...besides,
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

function besideItsPlace(
  record: PartRecord,
  o: DishOptions,
  feed: DishFeed,
): readonly Draft<"blocked-view">[] {
  const { port, number } = feed;
  const lossDb = pastSatelliteLossDb(o, feed, middleOfBandMHz(o));
  if (lossDb < LEAST_LOSS_DB) return [];
  const spacingMm = o.sideFeeds[number - 2]?.spacingMm ?? 0;
  const neededMm = neededSpacingMm(o, feed);
  const lnb = record.joined[port]?.[0];
  return [
    {
      severity: "warning",
      at: { part: record.part.id, port, service: "satellite", band: "feed" },
      parts: [record.part.id],
      wires: wireIdsAt(record, port),
      unit: "mm",
      value: spacingMm,
      limit: neededMm,
      facts: {
        kind: "feed beside its place",
        feed: number,
        spacingMm,
        neededMm,
        pastDeg: feed.pastDeg,
        lossDb,
        isMonoblock: lnb !== undefined && lnb === record.joined[feedPort(1)]?.[0],
      },
    },
  ];
}
