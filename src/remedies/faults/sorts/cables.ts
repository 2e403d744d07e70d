/** Faults along a cable: water in it, or a cable of another sort than planned. */
import type { Part } from "../../../design/design.ts";
import { quoted } from "../../../design/lookup.ts";
import { GRADES, type Grade } from "../../../parts/cable.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { metresOf } from "../../../parts/meanings.ts";
import { withOptions } from "../change.ts";
import type { Fault } from "../fault.ts";
import { makeFault, type Sort } from "./sort.ts";

/**
 * What a wet stretch adds at 2150 MHz, whatever the length of the rest [dB]; in proportion to the frequency,
 * as loss in a dielectric is. Order of magnitude, from memory.
 */
const WET_DB_AT_2150 = 60;
const MOST_K2 = 0.1;

export const cableFaults: Sort = (design) =>
  design.parts
    .filter((part) => kindOf(part.kind)?.trade.job === "cable")
    .flatMap((part) => [wet(part), ...steel(part)]);

function wet(part: Part): Fault {
  const kind = kindOf(part.kind);
  const metres = (kind && metresOf(kind, part.options)) ?? 1;
  const grade = gradeOf(part);
  const dry = grade ? { k1: grade.k1, k2: grade.k2, loopOhmPerKm: grade.loopOhmPerKm } : {};
  const dryK2 = grade ? grade.k2 : typeof part.options.k2 === "number" ? part.options.k2 : 0;
  const k2 = Math.min(MOST_K2, dryK2 + (WET_DB_AT_2150 * 100) / metres / 2150);
  return makeFault("wet-cable", {
    key: part.id,
    title: `There is water in ${quoted(part)}.`,
    parts: [part.id],
    apply: (d) => withOptions(d, part.id, { grade: "own", ...dry, k2 }),
  });
}

function steel(part: Part): Fault[] {
  if (gradeOf(part)?.conductor === "clad steel") return [];
  return [
    makeFault("steel-cable", {
      key: part.id,
      title: `${quoted(part)} is copper-clad steel.`,
      parts: [part.id],
      apply: (d) => withOptions(d, part.id, { grade: "clad-0.8" }),
    }),
  ];
}

/** Undefined for a grade of the user's own. */
function gradeOf(part: Part): Grade | undefined {
  return Object.entries(GRADES).find(([key]) => key === part.options.grade)?.[1];
}
