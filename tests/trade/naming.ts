/** Says of a case of the trade whether its causes name what is wrong. */
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Cause, Verdict } from "../../src/findings/finding.ts";
import { report } from "../../src/findings/report.ts";
import type { TradeCase } from "./drawings.ts";

export type Naming = {
  /** All but mere notes, worst first. */
  readonly causes: readonly Cause[];
  /** The parts that the first two of them take in hand. */
  readonly named: readonly string[];
  readonly failing: readonly Verdict[];
};

/** Looks at the first two causes, as somebody on a roof does. */
export function namingOf({ design }: Pick<TradeCase, "design">): Naming {
  const { causes: all, verdicts } = report(evaluate(design));
  const causes = all.filter(({ root }) => root.severity !== "note");
  return {
    causes,
    named: causes.slice(0, 2).map(({ root }) => root.parts[0]),
    failing: verdicts.filter((v) => v.role === "receiver" && v.state === "fails"),
  };
}

/** Every fault is named; where nothing is wrong, nothing is. */
export function isNamed({ culprits, also }: TradeCase, { causes, named }: Naming): boolean {
  if (culprits.length === 0) return causes.length === 0;
  return [culprits, also ?? culprits].every((fault) => named.some((part) => fault.includes(part)));
}
