/** What one fault does: which sockets and receivers lose what, and which findings it causes. */
import type { Design } from "../../design/design.ts";
import { WEIGHT } from "../../findings/causes/fold.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Fault } from "./fault.ts";
import { type EvaluatedDesign, evaluated, type Symptom, symptomKey, symptomsOf } from "./symptoms.ts";

export type Consequence = {
  readonly fault: Fault;
  /** Services that were better before, with what is left of them. */
  readonly lost: readonly (Symptom & { readonly before: number })[];
  /** Findings that the sound design does not have, or has as less grave. */
  readonly findings: readonly Finding[];
  /** The design with the fault in it, evaluated. */
  readonly faulty: EvaluatedDesign;
};

/** `sound`: the design itself, evaluated, where the caller has one already. */
export function whatFails(
  design: Design,
  fault: Fault,
  sound: EvaluatedDesign = evaluated(design),
): Consequence {
  const faulty = evaluated(fault.apply(design), sound);
  const before = new Map(symptomsOf(sound, sound).map((s) => [symptomKey(s), s.got]));
  const lost = symptomsOf(faulty, sound).flatMap((s) => {
    const had = before.get(symptomKey(s)) ?? 0;
    return s.got < had ? [{ ...s, before: had }] : [];
  });
  const known = new Map(sound.report.findings.map((f) => [f.id, WEIGHT[f.severity]]));
  const findings = faulty.report.findings.filter(
    ({ id, severity }) => WEIGHT[severity] < (known.get(id) ?? Number.POSITIVE_INFINITY),
  );
  return { fault, lost, findings, faulty };
}

/** True when some receiver gets less than before. */
export function isNoticed(consequence: Consequence): boolean {
  return consequence.lost.some((s) => s.role === "receiver");
}
