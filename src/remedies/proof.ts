/** Whether a changed design is better: a cause gone or somebody served more, nothing new broken, nobody served worse. */
import type { PartId } from "../design/design.ts";
import { WEIGHT } from "../findings/causes/fold.ts";
import type { Cause, Finding, Verdict } from "../findings/finding.ts";
import { everybodyServed, isServedMore } from "./served.ts";
import type { Site } from "./site.ts";

export type Proof = {
  /** Findings that are gone, worst first. */
  readonly cured: readonly Finding[];
  /** Findings that come with it, or that it makes graver. */
  readonly caused: readonly Finding[];
  /** Errors of which a warning stays: not quite cured. */
  readonly softened: readonly Finding[];
  /** Ids of the causes that are gone, and of those that are left: errors and warnings, worst first. */
  readonly causesCured: readonly string[];
  readonly causesLeft: readonly string[];
  /** Causes left, by the severity of their root. */
  readonly errorsLeft: number;
  readonly warningsLeft: number;
  /** Receivers that get more than before. */
  readonly gain: readonly PartId[];
  /** Receivers that failed and now work on a knife's edge only: not quite cured. */
  readonly onEdge: readonly PartId[];
  /** Receivers that then have little to spare, whether they had before or not. */
  readonly edgesLeft: number;
};

/**
 * The proof that a design cures the targets; null where it does not, or where something else suffers:
 * a new error, somebody who is served worse, or neither a cause less nor a receiver that gets more.
 */
export function prove(before: Site, after: Site, targets: readonly Finding[]): Proof | null {
  const keysAfter = new Set(after.report.findings.map((f) => f.id));
  if (!targets.some((t) => !keysAfter.has(t.id))) return null;
  const proof = proofOf(before, after);
  if (proof.caused.some((f) => f.severity === "error")) return null;
  if (!isBetter(before, proof, targets)) return null;
  return everybodyServed(before, after) ? proof : null;
}

/** What went and what came between two states, without a judgement. */
export function proofOf(before: Site, after: Site): Proof {
  const weightBefore = new Map(before.report.findings.map((f) => [f.id, WEIGHT[f.severity]]));
  const severityAfter = new Map(after.report.findings.map((f) => [f.id, f.severity]));
  const left = wrongIn(after);
  // A cause that follows from another one now is no longer one of its own, and yet not cured.
  const standing = new Set(left.flatMap((c) => c.findings.map((f) => f.id)));
  const now = new Map(after.report.verdicts.map((v) => [v.part, v]));
  const receivers = before.report.verdicts.filter((v) => v.role === "receiver");
  const changed = (is: (was: Verdict, now: Verdict) => boolean) =>
    receivers.flatMap((was) => {
      const then = now.get(was.part);
      return then && is(was, then) ? [was.part] : [];
    });
  return {
    cured: before.report.findings.filter((f) => !severityAfter.has(f.id)),
    caused: after.report.findings.filter((f) => WEIGHT[f.severity] < (weightBefore.get(f.id) ?? Infinity)),
    softened: before.report.findings.filter(
      (f) => f.severity === "error" && severityAfter.get(f.id) === "warning",
    ),
    causesCured: wrongIn(before).flatMap(({ id }) => (standing.has(id) ? [] : [id])),
    causesLeft: left.map((c) => c.id),
    errorsLeft: countOf(after, "error"),
    warningsLeft: countOf(after, "warning"),
    gain: changed(isServedMore),
    onEdge: changed((was, is) => was.state === "fails" && is.state === "edge"),
    edgesLeft: after.report.verdicts.filter((v) => v.role === "receiver" && v.state === "edge").length,
  };
}

/** Causes that call for something to be done. */
function wrongIn(site: Site): readonly Cause[] {
  return site.report.causes.filter((c) => c.severity !== "note");
}

/** Causes of one severity. */
export function countOf(site: Site, severity: Finding["severity"]): number {
  return site.report.causes.filter((c) => c.severity === severity).length;
}

/** A cause is gone and none came for it: what followed from it may stand on its own now. */
function takesAway(before: Site, { causesCured, caused }: Proof, severity: Finding["severity"]): boolean {
  const cured = before.report.causes.some((c) => c.severity === severity && causesCured.includes(c.id));
  return cured && caused.every((f) => f.severity === "note");
}

function isBetter(before: Site, proof: Proof, targets: readonly Finding[]): boolean {
  const errors = countOf(before, "error");
  if (proof.errorsLeft < errors) return true;
  if (proof.errorsLeft > errors) return false;
  if (proof.gain.length > 0 || takesAway(before, proof, "error")) return true;
  // Who asks for the end of one finding gets it, also where the cause has others.
  if (targets.length === 1 && proof.caused.every((f) => f.severity === "note")) return true;
  if (targets.some((t) => t.severity === "error")) return false;
  const warnings = countOf(before, "warning");
  if (proof.warningsLeft < warnings || takesAway(before, proof, "warning")) return true;
  return proof.warningsLeft === warnings && targets.every((t) => t.severity === "note");
}
