/** A modulator on a channel that an aerial brings as well: another channel. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { describedOptions, doesCount, optionMeaning, optionsMeaning } from "../../parts/meanings.ts";
import { bandEdgeMHz, tvChannelEdges } from "../../parts/plans.ts";
import { EUROPEAN, rasterOf, type TvRaster, UHF_RASTERS } from "../../parts/tvRasters.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";

/** So many are tried, the nearest to the present one first. */
const MOST = 3;

export const freeChannel: Idea = (site, finding) =>
  finding.parts.flatMap((id): readonly Candidate[] => {
    const record = site.evaluation.record(id);
    if (!record) return [];
    const described = describedOptions(record.kind);
    const option = optionsMeaning(record.kind, "own channel").find((key) => {
      const meta = described.get(key);
      return meta !== undefined && doesCount(meta, record.options);
    });
    if (option === undefined) return [];
    const raster = rasterOfPart(record);
    const from = record.options[option];
    const taken = takenMHz(site, id);
    const channels = (described.get(option)?.choices ?? []).map(({ value }) => value);
    return channels
      .filter((value) => value !== from && isFree(Number(value), { taken, raster }))
      .sort((a, b) => Math.abs(Number(a) - Number(from)) - Math.abs(Number(b) - Number(from)))
      .slice(0, MOST)
      .map((to) =>
        candidate("free-channel", [id, to], { option, from, to }, (design) => {
          const d = draft(design);
          d.set(id, { [option]: to });
          return d.result();
        }),
      );
  });

function rasterOfPart({ kind, options }: PartRecord): TvRaster {
  const key = optionMeaning(kind, "channel raster");
  const raster = UHF_RASTERS.find((each) => key !== undefined && each === options[key]);
  return raster === undefined ? EUROPEAN : rasterOf(raster);
}

/** Centres of all that other sources of the design send [MHz]. */
function takenMHz({ evaluation }: Site, own: string): readonly number[] {
  return evaluation.records
    .filter((r) => r.kind.family === "receive" && r.part.id !== own)
    .flatMap((r) => Object.values(r.outputs).flatMap(({ bands }) => bands))
    .flatMap(({ grid }) => [...grid.centre]);
}

/** Neither taken itself nor beside one that is. */
function isFree(
  channel: number,
  { taken, raster }: { readonly taken: readonly number[]; readonly raster: TvRaster },
): boolean {
  const { fromMHz, toMHz } = tvChannelEdges(channel, raster);
  const width = toMHz - fromMHz;
  return toMHz <= bandEdgeMHz(width) && !taken.some((f) => f > fromMHz - width && f < toMHz + width);
}
