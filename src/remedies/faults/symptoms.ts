/** What people notice: which service works at which socket and receiver. */
import type { Design, PartId } from "../../design/design.ts";
import { evaluate } from "../../evaluate/evaluate.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Report } from "../../findings/finding.ts";
import { report } from "../../findings/report.ts";
import type { Service } from "../../signal/carrier.ts";

/** "partial": some carriers are there and some are not. */
export type State = "works" | "partial" | "fails";

/** One service at one socket or receiver. */
export type Symptom = {
  readonly part: PartId;
  readonly role: "receiver" | "outlet";
  readonly service: Service;
  readonly state: State;
  /** Carriers that are there, and how many there should be. */
  readonly got: number;
  readonly wanted: number;
};

/** What somebody has seen at a socket or a receiver. */
export type Observation = {
  readonly part: PartId;
  readonly service: Service;
  readonly works: boolean | "partial";
};

/** A design with all that is known of it. */
export type Look = {
  readonly evaluation: Evaluation;
  readonly report: Report;
};

/** Evaluates and reports; `former`: the look at an earlier state of the same design, to save work. */
export function lookAt(design: Design, former?: Look): Look {
  const evaluation = evaluate(design, former?.evaluation);
  return { evaluation, report: report(evaluation) };
}

/**
 * Services at every receiver and outlet of `sound`, as they are in `now`. What should be there is what is there
 * in the sound design: a receiver that is unplugged by the fault is missed, not forgotten.
 */
export function symptomsOf(now: Look, sound: Look): readonly Symptom[] {
  const gotNow = new Map<string, number>();
  for (const verdict of now.report.verdicts)
    for (const { service, got } of verdict.services) gotNow.set(`${verdict.part}|${service}`, got);
  return sound.report.verdicts.flatMap(({ part, role, services }) =>
    services.flatMap(({ service, wanted }): Symptom[] => {
      if (wanted === 0) return [];
      const got = Math.min(wanted, gotNow.get(`${part}|${service}`) ?? 0);
      return [{ part, role, service, state: stateOf(got, wanted), got, wanted }];
    }),
  );
}

function stateOf(got: number, wanted: number): State {
  if (got === 0) return "fails";
  return got < wanted ? "partial" : "works";
}

/** Short name of a symptom's place and service. */
export function symptomKey({ part, service }: Pick<Symptom, "part" | "service">): string {
  return `${part}|${service}`;
}
