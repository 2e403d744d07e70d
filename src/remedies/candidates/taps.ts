/** What a line is divided by: taps of another value, splitters with fewer legs or of a better kind. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { describedOptions, doesCount, optionMeaning, standardValues } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { wayUp } from "../site.ts";
import { excessDb } from "./levels.ts";
import { curePlaceOf } from "./places.ts";

/** Further inside the limit than the limit itself: nobody fits a tap that only just serves [dB]. */
const SPARE_DB = 5;

/** A tap, a riser plate or a unit of a cascade with another loss to its branch. */
export const tapValue: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  const over = excessDb(finding);
  if (!place || over === 0) return [];
  const way = wayUp(site, [place.part.part.id, place.input], place.service);
  const taps = [
    place.part,
    ...way.filter((s) => s.record.ports.some((p) => p.id === s.out && p.role === "tap")).map((s) => s.record),
    ...way.filter((s) => dropLossOf(s.record) !== undefined).map((s) => s.record),
  ];
  return taps.flatMap((record): Candidate[] => {
    const key = optionMeaning(record.kind, "tap loss") ?? dropLossOf(record);
    const now = key === undefined ? undefined : record.options[key];
    if (key === undefined || typeof now !== "number") return [];
    const sold = standardValues(record.kind, key);
    // The next value that is sold, and the last one where none goes so far.
    const tapLossDb =
      over > 0
        ? (sold.find((value) => value >= now + Math.ceil(over + SPARE_DB)) ?? sold.at(-1))
        : (sold.findLast((value) => value <= now - Math.ceil(-over + SPARE_DB)) ?? sold[0]);
    if (tapLossDb === undefined || tapLossDb === now) return [];
    const id = record.part.id;
    return [
      candidate("tap-value", [id, tapLossDb], { db: tapLossDb, before: now }, (design) => {
        const d = draft(design);
        d.set(id, { [key]: tapLossDb });
        return d.result();
      }),
    ];
  });
};

/** The option for what a unit of a cascade takes off for its outputs; undefined where it has none, or amplifies. */
function dropLossOf({ kind, options }: PartRecord): string | undefined {
  const key = optionMeaning(kind, "drop loss");
  const meta = key === undefined ? undefined : describedOptions(kind).get(key);
  return meta && doesCount(meta, options) ? key : undefined;
}

/** A splitter with no more legs than are used, or a ferrite one for a resistive one. */
export const smallerSplit: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  if (!place) return [];
  const splits = wayUp(site, [place.part.part.id, place.input], place.service)
    .map((s) => s.record)
    .filter((r) => r.kind.trade.job === "splitter");
  return splits.flatMap((record) => smallerSplitOf(record));
};

function smallerSplitOf(record: PartRecord): readonly Candidate[] {
  const { type } = record.options;
  const key = optionMeaning(record.kind, "ways");
  const ways = key === undefined ? undefined : record.options[key];
  if (key === undefined || typeof ways !== "number") return [];
  const id = record.part.id;
  const used = record.ports.filter((p) => p.side === "out" && record.joined[p.id]).map((p) => p.id);
  const fewest = standardValues(record.kind, key).find((count) => count >= used.length) ?? ways;
  const found: Candidate[] = [];
  if (type === "resistive")
    found.push(
      candidate("ferrite-splitter", [id], {}, (design) => {
        const d = draft(design);
        d.set(id, { type: "hybrid" });
        return d.result();
      }),
    );
  if (fewest < ways)
    found.push(
      candidate(
        "smaller-splitter",
        [id, fewest],
        { ways: fewest, legs: ways, used: used.length },
        (design) => {
          const d = draft(design);
          // The legs in use move up first, so that none of them falls away.
          const ends = used.map((port) => d.other([id, port]));
          for (const port of used) d.unjoin([id, port]);
          d.set(id, { [key]: fewest });
          const legs = record.kind
            .ports(d.part(id)?.options ?? record.options)
            .filter((p) => p.role === "leg");
          ends.forEach((end, i) => {
            const leg = legs[i];
            if (end && leg) d.join([id, leg.id], end);
          });
          return d.result();
        },
      ),
    );
  return found;
}
