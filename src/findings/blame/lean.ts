/** Which part makes the levels of two carriers differ. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { extreme } from "../extreme.ts";
import type { Where } from "../finding.ts";
import type { Blamed, Misdeed } from "./culprit.ts";
import { levelled } from "./level.ts";
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
  const shared = above[0]?.step.part === below[0]?.step.part;
  const suspects = [...leansOf(above, below, shared), ...onlyBelow(above, below)];
  const worst = extreme(suspects, (s) => s.excessDb);
  return worst && worst.excessDb > 0 ? worst : undefined;
}

function leansOf(above: readonly Stage[], below: readonly Stage[], shared: boolean): readonly Blamed[] {
  return above.flatMap((stage): Blamed[] => {
    const other = below.find(({ step }) => step.part === stage.step.part);
    const { part, to, gainDb, levelDbuv } = stage.step;
    if (gainDb === null) {
      const lower = other ?? below[0];
      const excessDb = levelDbuv - (lower?.step.levelDbuv ?? levelDbuv);
      return [
        { part, port: to, does: shared ? "uneven source" : "strong source", excessDb, amount: levelDbuv },
      ];
    }
    // A part on the way of this one alone counts by what it amplifies.
    const excessDb = gainDb - (other?.step.gainDb ?? 0);
    return [{ part, port: to, ...named(stage, "high gain"), excessDb, amount: excessDb }];
  });
}

/** Parts that only the weaker carrier comes through, by what they take from it. */
function onlyBelow(above: readonly Stage[], below: readonly Stage[]): readonly Blamed[] {
  return below
    .filter(({ step }) => step.gainDb !== null && !above.some((s) => s.step.part === step.part))
    .map((stage) => {
      const { part, to, gainDb } = stage.step;
      return { part, port: to, ...named(stage, "loses"), excessDb: -(gainDb ?? 0), amount: gainDb ?? 0 };
    });
}

/** A cable leans by its length; whatever serves both leans by itself; what serves one alone does what is said. */
function named({ record }: Stage, alone: Misdeed): Pick<Blamed, "does" | "lengthM"> {
  const length = record.options.lengthM;
  if (record.kind.trade.job === "cable" && typeof length === "number")
    return { does: "long cable", lengthM: length };
  return { does: record.kind.trade.job === "joint" ? "bad joint" : alone === "loses" ? "loses" : "leans" };
}
