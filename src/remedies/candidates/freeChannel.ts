/** A modulator on a channel that an aerial brings as well: another channel. */
import { describedOptions, optionMeaning } from "../../parts/meanings.ts";
import { tvChannelEdges } from "../../parts/plans.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";

/** Top of the band for television today: above it phones send [MHz]. */
const BAND_EDGE_MHZ = 694;
/** So many are tried, the nearest to the present one first. */
const MOST = 3;

export const freeChannel: Idea = (site, finding) =>
  finding.parts.flatMap((id): readonly Candidate[] => {
    const record = site.evaluation.record(id);
    const option = record && optionMeaning(record.kind, "own channel");
    if (!record || option === undefined) return [];
    const from = record.options[option];
    const taken = takenMHz(site, id);
    const channels = (describedOptions(record.kind).get(option)?.choices ?? []).map(({ value }) => value);
    return channels
      .filter((value) => value !== from && isFree(Number(value), taken))
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

/** Centres of all that other sources of the design send [MHz]. */
function takenMHz({ evaluation }: Site, own: string): readonly number[] {
  return evaluation.records
    .filter((r) => r.kind.family === "receive" && r.part.id !== own)
    .flatMap((r) => Object.values(r.outputs).flatMap(({ bands }) => bands))
    .flatMap(({ grid }) => [...grid.centre]);
}

/** Neither taken itself nor beside one that is. */
function isFree(channel: number, taken: readonly number[]): boolean {
  const { fromMHz, toMHz } = tvChannelEdges(channel);
  const width = toMHz - fromMHz;
  return toMHz <= BAND_EDGE_MHZ && !taken.some((f) => f > fromMHz - width && f < toMHz + width);
}
