/** Receivers that share a position switch: a switch for each, with a line of its own from every LNB. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { type DesignDraft, draft } from "../draft.ts";
import { type Feeding, feedingOf, lengthM, type Site, type Step } from "../site.ts";
import { cableOptions, freeOutput, isPlain, legsOf, outputsFor, sharedLines } from "./share.ts";

/** The converter at an input of the switch, and the options with which it has outputs enough. */
type Source = {
  readonly input: string;
  readonly feeding: Feeding;
  readonly outputs: Readonly<Record<string, unknown>>;
};

export const ownPositionLines: Idea = (site, finding) =>
  sharedLines(site, finding.parts).flatMap(({ split, above }): Candidate[] => {
    const index = above.findIndex(({ record }) => record.kind.trade.job === "position switch");
    const unit = above[index]?.record;
    const legs = legsOf(split);
    const down = above.slice(0, index);
    const sources = unit && sourcesOf(site, unit, legs.length - 1);
    if (!unit || !sources || legs.length < 2 || !isPlain(down)) return [];
    const [id, splitter] = [unit.part.id, split.part.id];
    return [
      candidate("own-position-lines", [id, splitter], { splitter }, (design) => {
        const d = draft(design);
        const ends = legs.map((leg) => d.other([splitter, leg]));
        const first = d.other([splitter, "in"]);
        const [start, ...others] = ends;
        if (!first || !start) return null;
        d.remove(splitter);
        d.join(first, start);
        for (const { feeding, outputs } of sources) d.set(feeding.converter.part.id, outputs);
        others.forEach((end, i) => {
          const [x, y] = unit.part.at;
          const own = d.put(unit.kind.kind, unit.options, [x, y + (i + 1) * 160]);
          for (const source of sources) fed(d, own, source);
          if (end) run(d, [own, "out"], end, down);
        });
        return d.result();
      }),
    ];
  });

/** Every joined input with its LNB; undefined where one of them cannot have so many outputs more. */
function sourcesOf(site: Site, unit: PartRecord, more: number): readonly Source[] | undefined {
  const sources: Source[] = [];
  for (const { id: input, side } of unit.ports) {
    if (side !== "in" || !unit.joined[input]) continue;
    const feeding = feedingOf(site, [unit.part.id, input]);
    if (!feeding || !isPlain(feeding.between)) return undefined;
    const { converter } = feeding;
    const outputs = outputsFor(converter, more);
    if (!outputs) return undefined;
    sources.push({ input, feeding, outputs });
  }
  return sources.length > 0 ? sources : undefined;
}

function fed(d: DesignDraft, own: string, { input, feeding }: Source): void {
  const { converter, between } = feeding;
  const { id } = converter.part;
  const out = freeOutput(converter, d.part(id)?.options, (port) => d.other([id, port]) !== undefined);
  run(d, [id, out], [own, input], between);
}

/** A line like another one: a cable as long as all of its cables, or none. */
function run(
  d: DesignDraft,
  from: readonly [string, string],
  to: readonly [string, string],
  like: readonly Step[],
): void {
  const metres = lengthM(like);
  if (metres === 0) {
    d.join(from, to);
    return;
  }
  const cable = d.put("cable", { ...cableOptions(like), lengthM: metres }, d.part(from[0])?.at ?? [0, 0]);
  d.join(from, [cable, "in"]);
  d.join([cable, "out"], to);
}
