/** Too little C/N: a masthead amplifier, the dish turned or larger, a pad before an amplifier taken away. */
import type { Finding } from "../../findings/finding.ts";
import { defectsOf, optionMeaning, standardValues } from "../../parts/meanings.ts";
import type { Job } from "../../parts/trade.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { isFed, type Step, wayUp } from "../site.ts";
import { wayOf } from "./cable.ts";
import { excessDb, isWeak } from "./levels.ts";
import { blamedOf } from "./mend.ts";
import { curePlaceOf } from "./places.ts";
import { isHidden } from "./view.ts";

/** An amplifier at the aerial, fed through the cable. */
export const masthead: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  if (!place || place.service === "satellite" || !isWeak(finding)) return [];
  const way = wayUp(site, [place.part.part.id, place.input], place.service);
  const aerial = way.at(-1);
  if (
    aerial?.record.kind.trade.job !== "aerial" ||
    way.some((s) => s.record.kind.trade.job === "mast amplifier")
  )
    return [];
  const source = aerial.record.part.id;
  // The first part behind the aerial that could feed it, or else the end of the first cable.
  const fed = isFed(aerial.record, aerial.out);
  // An amplifier feeds the mast through its plain input.
  const amp = way.find(
    (s) =>
      optionMeaning(s.record.kind, "aerial supply") &&
      s.record.ports.some((p) => p.id === s.in && p.role === "input"),
  );
  const down = [...way].reverse();
  const cable = down.find((s) => s.record.kind.trade.job === "cable");
  // What stands before the cable must pass the current up; else the unit goes right behind the amplifier.
  const isPassed = down.slice(1, cable ? down.indexOf(cable) : 0).every(passesUp);
  const takes = place.service === "tv" ? "uhf" : "all";
  const needs = -excessDb(finding);
  const gainDb = Math.min(26, Math.max(10, Math.ceil(needs) + 8));
  return [
    candidate("masthead", [source, gainDb], { db: gainDb }, (design) => {
      const d = draft(design);
      const lifted = d.insert("amp-masthead", { gainDb, takes }, [source, aerial.out]);
      const supply = amp && optionMeaning(amp.record.kind, "aerial supply");
      if (amp && supply) d.set(amp.record.part.id, { [supply]: "12" });
      else if (!fed)
        d.insert("power-inserter", {}, cable && isPassed ? [cable.record.part.id, "out"] : [lifted, "out"]);
      return d.result();
    }),
  ];
};

/** Whether what arrives at the way's output of a part goes on to its input. */
function passesUp({ record, in: input, out }: Step): boolean {
  return (record.power.paths ?? []).some(({ from, to }) => from === out && to === input);
}

/** Lost to satellites beside the dish's own: a larger dish hears less of them. */
function isOfNeighbours({ facts }: Finding): boolean {
  return "missing" in facts && facts.missing.spoiler?.by === "neighbours";
}

/** Where a fault may lie that a larger dish makes up for. */
const AT_THE_DISH: readonly Job[] = ["dish", "converter"];

/** A dish turned to its best, or a larger one. */
export const betterDish: Idea = (site, finding) => {
  if (!isWeak(finding) && !isOfNeighbours(finding)) return [];
  const place = curePlaceOf(site, finding);
  const way = place
    ? wayUp(site, [place.part.part.id, place.input], "satellite")
    : wayOf(site, finding.parts);
  const dish = way.find((s) => s.record.kind.trade.job === "dish")?.record;
  if (!dish) return [];
  const id = dish.part.id;
  const width = optionMeaning(dish.kind, "diameter");
  const aim = defectsOf(dish.kind, dish.options).find(
    ({ option }) => option === optionMeaning(dish.kind, "pointing loss"),
  );
  // A larger dish wants more aiming, not less: what is off its aim is aimed before anything is bought.
  if (aim)
    return [
      candidate("aim-dish", [id], { option: aim.option, from: aim.value, to: aim.soundValue }, (design) => {
        const d = draft(design);
        d.set(id, { [aim.option]: aim.soundValue });
        return d.result();
      }),
    ];
  const diameterM = width === undefined ? undefined : dish.options[width];
  if (width === undefined || typeof diameterM !== "number" || isHidden(dish)) return [];
  // What a cable or a pad takes away no dish brings back.
  const blamed = site.evaluation.record(blamedOf(finding)?.part ?? "")?.kind.trade.job;
  if (blamed !== undefined && !AT_THE_DISH.includes(blamed)) return [];
  return standardValues(dish.kind, width)
    .filter((m) => m > diameterM + 0.1)
    .slice(0, 2)
    .map((larger) =>
      candidate("larger-dish", [id, larger], { metres: larger }, (design) => {
        const d = draft(design);
        d.set(id, { [width]: larger });
        return d.result();
      }),
    );
};

/** A pad or a setting that takes level where it is needed. */
export const lessLossBefore: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  if (!place || !isWeak(finding)) return [];
  const way = wayUp(site, [place.part.part.id, place.input], place.service);
  return way.flatMap(({ record }): Candidate[] => {
    const id = record.part.id;
    if (record.kind.trade.job === "pad" || record.kind.trade.job === "equaliser")
      return [
        candidate("pad-away", [id], {}, (design) => {
          const d = draft(design);
          d.remove(id);
          return d.result();
        }),
      ];
    const key = optionMeaning(record.kind, "input pad");
    if (key === undefined || record.options[key] === 0) return [];
    return [
      candidate("input-pad", [id, key], { option: key, from: record.options[key], to: 0 }, (design) => {
        const d = draft(design);
        d.set(id, { [key]: 0 });
        return d.result();
      }),
    ];
  });
};
