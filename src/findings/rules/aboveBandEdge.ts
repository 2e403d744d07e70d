import { bandEdgeMHz } from "../../parts/plans.ts";
import type { Band } from "../../signal/band.ts";
import { isLive } from "../../signal/readout.ts";
import { isFormer } from "../former.ts";
import { type RuleOf, wireIdsAt } from "../rule.ts";

/** Television in Band III, in the rasters of 7 and 8 MHz, and the lower edge in UHF [MHz] (Geneva 2006 plan, from memory). */
const BAND_III = { fromMHz: 174, toMHz: 230 } as const;
const UHF_FROM_MHZ = 470;

export type AboveBandEdgeFacts = {
  /** Names of the channels above the edge, rising. */
  readonly channels: readonly string[];
  /** [MHz] */
  readonly edgeMHz: number;
  /** Names of those that lie in no TV band at all: wrong numbers, or numbers of another raster. */
  readonly nowhere: readonly string[];
};

/** Channels that no transmitter of today uses, and such as no raster has. */
export const aboveBandEdge: RuleOf<"above-band-edge"> = {
  id: "above-band-edge",
  check: ({ record }) =>
    Object.entries(record.outputs).flatMap(([port, spectrum]) => {
      // What a network or a modulator puts onto a cable is not on air, and may lie anywhere.
      if (record.kind.trade.job !== "aerial") return [];
      const own = spectrum.bands.filter((b) => b.origin.part === record.part.id);
      const where = (is: (band: Band, i: number) => boolean) =>
        own.flatMap((band) =>
          [...band.grid.centre.keys()].filter((i) => is(band, i)).map((i) => ({ band, i })),
        );
      const name = ({ band, i }: { readonly band: Band; readonly i: number }) =>
        band.grid.plan[band.grid.index[i] ?? 0]?.name ?? "";
      const above = where(isAboveBandEdge);
      const nowhere = where(isNowhere);
      if (above.length + nowhere.length === 0) return [];
      const [first] = above;
      return [
        {
          severity: "note" as const,
          at: { part: record.part.id, port, service: "tv" as const },
          parts: [record.part.id],
          wires: wireIdsAt(record, port),
          value: above.length + nowhere.length,
          limit: 0,
          unit: "channels",
          facts: {
            channels: above.map(name),
            edgeMHz: bandEdgeMHz(first?.band.grid.width[first.i] ?? 8),
            nowhere: nowhere.map(name),
          },
        },
      ];
    }),
};

/** Whether a TV channel of an aerial's list lies where phones are now; cable networks and modulators use these frequencies. */
export function isAboveBandEdge(band: Band, i: number): boolean {
  return isFormer(band, i) && isLive(band, i);
}

/** Whether a TV channel lies outside all bands of television. */
export function isNowhere(band: Band, i: number): boolean {
  const centreMHz = band.grid.centre[i] ?? 0;
  const isInBandIii = centreMHz > BAND_III.fromMHz && centreMHz < BAND_III.toMHz;
  return band.origin.service === "tv" && isLive(band, i) && !isInBandIii && centreMHz < UHF_FROM_MHZ;
}
