/** Whether a changed design is better: the finding gone, nothing new broken, nobody served worse. */
import type { Finding, ServiceVerdict, Verdict } from "../findings/finding.ts";
import type { Site } from "./site.ts";

export type Proof = {
  /** Findings that are gone, worst first. */
  readonly cured: readonly Finding[];
  /** Warnings and notes that come with it. */
  readonly caused: readonly Finding[];
  readonly errorsLeft: number;
  readonly warningsLeft: number;
};

/**
 * The proof that a design cures the targets; null where it does not, or where something else suffers:
 * a new error, a receiver or an outlet that gets less, no fewer errors than before
 * (no fewer warnings, where the targets are warnings).
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
  const keysBefore = new Set(before.report.findings.map((f) => f.id));
  const keysAfter = new Set(after.report.findings.map((f) => f.id));
  return {
    cured: before.report.findings.filter((f) => !keysAfter.has(f.id)),
    caused: after.report.findings.filter((f) => !keysBefore.has(f.id)),
    errorsLeft: countOf(after, "error"),
    warningsLeft: countOf(after, "warning"),
  };
}

export function countOf(site: Site, severity: Finding["severity"]): number {
  return site.report.findings.filter((f) => f.severity === severity).length;
}

function isBetter(before: Site, proof: Proof, targets: readonly Finding[]): boolean {
  const errors = countOf(before, "error");
  if (proof.errorsLeft < errors) return true;
  if (proof.errorsLeft > errors || targets.some((t) => t.severity === "error")) return false;
  const warnings = countOf(before, "warning");
  if (proof.warningsLeft < warnings) return true;
  return proof.warningsLeft === warnings && targets.every((t) => t.severity === "note");
}

/** Every receiver of before gets as much as before of every service; every outlet hands on as large a share. */
export function everybodyServed(before: Site, after: Site): boolean {
  const now = new Map(after.report.verdicts.map((v) => [v.part, v]));
  return before.report.verdicts.every((was) => {
    const is = now.get(was.part);
    if (was.role === "receiver") return is !== undefined && receivesAsMuch(was, is);
    return handsOnAsMuch(was, is, before, after);
  });
}

function receivesAsMuch(was: Verdict, is: Verdict): boolean {
  if (was.state !== "fails" && is.state === "fails") return false;
  return was.services.every((s) => {
    const same = is.services.find((t) => t.service === s.service);
    if (s.wanted === 0) return true;
    return same !== undefined && same.wanted >= s.wanted && same.got >= s.got;
  });
}

/** A service may leave an outlet only for another plate that is new or changed. */
function handsOnAsMuch(was: Verdict, is: Verdict | undefined, before: Site, after: Site): boolean {
  const share = (s: ServiceVerdict | undefined) => (s && s.wanted > 0 ? s.got / s.wanted : 0);
  return was.services.every((s) => {
    const same = is?.services.find((t) => t.service === s.service);
    if (share(same) >= share(s)) return true;
    return after.report.verdicts.some((other) => {
      if (other.role !== "outlet" || other.part === was.part) return false;
      const former = before.evaluation.record(other.part)?.part;
      const isNew = former?.kind !== after.evaluation.record(other.part)?.part.kind;
      return isNew && share(other.services.find((t) => t.service === s.service)) > 0;
    });
  });
}
