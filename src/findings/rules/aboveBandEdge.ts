import type { Band } from "../../signal/band.ts";
import { isLive } from "../../signal/readout.ts";
import { isFormer } from "../former.ts";
import { type RuleOf, wireIdsAt } from "../rule.ts";

/** Upper edge of terrestrial TV in Europe since the 700 MHz band went to phones [MHz]: Decision (EU) 2017/899, from memory. */
export const BAND_EDGE_MHZ = 694;

export type AboveBandEdgeFacts = {
  /** Names of the channels, rising. */
  readonly channels: readonly string[];
};

/** Channels that no transmitter of today uses. */
export const aboveBandEdge: RuleOf<"above-band-edge"> = {
  id: "above-band-edge",
  check: ({ record }) =>
    Object.entries(record.outputs).flatMap(([port, spectrum]) => {
      if (record.kind.family !== "receive") return [];
      const own = spectrum.bands.filter((b) => b.origin.part === record.part.id);
      const above = own.flatMap((band) =>
        Array.from(band.grid.centre.keys()).flatMap((i) => (isAboveBandEdge(band, i) ? [{ band, i }] : [])),
      );
      if (above.length === 0) return [];
      return [
        {
          severity: "note" as const,
          at: { part: record.part.id, port, service: "tv" as const },
          parts: [record.part.id],
          wires: wireIdsAt(record, port),
          value: above.length,
          limit: 0,
          unit: "channels",
          facts: {
            channels: above.map(({ band, i }) => band.grid.plan[band.grid.index[i] ?? 0]?.name ?? ""),
          },
        },
      ];
    }),
};

/** Whether a TV channel of an aerial's list lies where phones are now; cable networks and modulators use these frequencies. */
export function isAboveBandEdge(band: Band, i: number): boolean {
  return isFormer(band, i) && isLive(band, i);
}
