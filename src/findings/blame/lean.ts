/** Which part makes the levels of two carriers differ. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { extreme } from "../extreme.ts";
import type { Where } from "../finding.ts";
import { type Blamed, dishField, type Misdeed } from "./culprit.ts";
import { levelled } from "./level.ts";
import { lacking } from "./shortcomings.ts";
import { type Arriving, type Stage, stagesTo } from "./stages.ts";

/** Of all parts that one carrier or both come through, the one that puts the one most above the other. */
export function blameForLean(
  evaluation: Evaluation,
  at: Where,
  ends: { readonly above: Arriving; readonly below: Arriving },
): Blamed | undefined {
  if (at.port === undefined) return undefined;
  const spot = { part: at.part, port: at.port };
  const above = levelled(stagesTo(evaluation, spot, ends.above));
  const below = levelled(stagesTo(evaluation, spot, ends.below));
  const worst = extreme(pairsOf(above, below).flatMap(leanOf), (s) => s.excessDb);
  return worst && worst.excessDb > 0 ? worst : undefined;
}

/** What the carriers come through at one place of their ways: the same part, or parts that do the same for each. */
type Pair = { readonly above?: Stage; readonly below?: Stage };

/** Two ways beside each other: what both pass, then what each passes alone, like with like in the order of the ways. */
function pairsOf(above: readonly Stage[], below: readonly Stage[]): readonly Pair[] {
  const both = above.flatMap((stage): Pair[] => {
    const same = below.find(({ step }) => step.part === stage.step.part);
    return same ? [{ above: stage, below: same }] : [];
  });
  const [left, right] = [above, below].map((stages) =>
    stages.filter((stage) => !both.some((pair) => pair.above?.step.part === stage.step.part)),
  );
  const open = [...(right ?? [])];
  const apart = (left ?? []).map((stage): Pair => {
    const match = open.findIndex((other) => doesLike(stage, other));
    const [like] = match < 0 ? [] : open.splice(match, 1);
    return like ? { above: stage, below: like } : { above: stage };
  });
  return [...both, ...apart, ...open.map((stage): Pair => ({ below: stage }))];
}

function doesLike(a: Stage, b: Stage): boolean {
  const isSource = (stage: Stage) => stage.step.gainDb === null;
  return (
    isSource(a) === isSource(b) &&
    a.record.kind.family === b.record.kind.family &&
    a.record.kind.trade.job === b.record.kind.trade.job
  );
}

function leanOf({ above, below }: Pair): readonly Blamed[] {
  const excessDb = doneBy(above) - doneBy(below);
  if (above && above.step.part === below?.step.part) {
    const wrong = lacking(below);
    const does = above.step.gainDb === null ? "uneven source" : "leans";
    return [{ ...named(above, wrong && LEANING.has(wrong.does) ? wrong : { does }), excessDb }];
  }
  // Of two that differ, the one that falls short of a sound one; else the one that gives more.
  const wrong = below && lacking(below);
  if (below && (wrong || !above || isLossy(below)))
    return [
      { ...named(below, wrong ?? { does: below.step.gainDb === null ? "weak source" : "loses" }), excessDb },
    ];
  if (!above) return [];
  return [
    { ...named(above, { does: above.step.gainDb === null ? "strong source" : "high gain" }), excessDb },
  ];
}

/** What takes more from one end of the range than from the other. */
const LEANING: ReadonlySet<Misdeed> = new Set([
  "bad joint",
  "poor cable",
  "long cable",
  "turned away",
  "other polarisation",
]);

/** Gain, or level of a source; a part that is not there does nothing [dB, dBµV]. */
function doneBy(stage: Stage | undefined): number {
  return stage ? (stage.step.gainDb ?? stage.step.levelDbuv) : 0;
}

function isLossy({ step }: Stage): boolean {
  return step.gainDb !== null && step.gainDb < 0;
}

function named(
  { record, step }: Stage,
  wrong: Pick<Blamed, "does" | "ways" | "lengthM" | "facesAnother">,
): Omit<Blamed, "excessDb"> {
  const amount = step.gainDb ?? step.levelDbuv;
  const at = { part: step.part, port: step.to, amount, ...dishField(record) };
  const length = record.options.lengthM;
  const leans = wrong.does === "leans" || wrong.does === "loses";
  if (record.kind.trade.job === "cable" && leans && typeof length === "number")
    return { ...at, does: "long cable", lengthM: length };
  const { does, ways, lengthM, facesAnother } = wrong;
  return {
    ...at,
    does,
    ...(ways ? { ways } : {}),
    ...(lengthM ? { lengthM } : {}),
    ...(facesAnother ? { facesAnother } : {}),
  };
}
