/** What people notice at sockets and receivers: which services, planes and tuners work. */
import type { Design, PartId } from "../../design/design.ts";
import { evaluate } from "../../evaluate/evaluate.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Report } from "../../findings/finding.ts";
import type { Plane } from "../../findings/missing.ts";
import { report } from "../../findings/report.ts";
import { planeKey } from "../../findings/wanted.ts";
import type { Service } from "../../signal/carrier.ts";
import { receptionAt } from "./receptionAt.ts";

/** "partial": some carriers are there and some are not. */
export type State = "works" | "partial" | "fails";

/** Where somebody looks: a service at a socket or receiver as a whole, or one plane or one tuner of it. */
export type SymptomPlace = {
  readonly part: PartId;
  readonly service: Service;
  /** One quadrant of one satellite, by `planeKey`. */
  readonly plane?: string;
  /** Tuner of a receiver, counted from 1. */
  readonly tuner?: number;
};

export type Symptom = SymptomPlace & {
  readonly role: "receiver" | "outlet";
  readonly state: State;
  /** Carriers that are there, and how many there should be. */
  readonly got: number;
  readonly wanted: number;
};

/** What somebody has seen at a socket or a receiver. */
export type Observation = SymptomPlace & { readonly works: boolean | "partial" };

type Evaluated = { readonly evaluation: Evaluation };

/** A design with all that is known of it. */
export type EvaluatedDesign = Evaluated & { readonly report: Report };

/** Evaluates and reports; `former`: an earlier state of the same design, to save work. */
export function evaluated(design: Design, former?: Evaluated): EvaluatedDesign {
  const evaluation = evaluate(design, former?.evaluation);
  return { evaluation, report: report(evaluation) };
}

/**
 * Services at every receiver and outlet of `sound`, as they are in `now`. What should be there is what is there
 * in the sound design: a receiver that is unplugged by the fault is missed, not forgotten.
 */
export function symptomsOf(now: Evaluated, sound: Evaluated): readonly Symptom[] {
  return detailedSymptoms(now, sound).filter((s) => s.plane === undefined && s.tuner === undefined);
}

/** The same, and beside each service its planes and its tuners where there are several. */
export function detailedSymptoms(now: Evaluated, sound: Evaluated): readonly Symptom[] {
  const here = receptionAt(now.evaluation);
  return [...receptionAt(sound.evaluation).values()].flatMap(({ part, role, services, planes, tuners }) => {
    const left = here.get(part);
    const symptom = (place: Omit<SymptomPlace, "part">, wanted: number, gotNow = 0): Symptom => {
      const got = Math.min(wanted, gotNow);
      return { part, role, ...place, state: stateOf(got, wanted), got, wanted };
    };
    return [
      ...[...services].map(([service, { wanted }]) =>
        symptom({ service }, wanted, left?.services.get(service)?.got),
      ),
      ...(planes.size > 1
        ? [...planes].map(([plane, got]) =>
            symptom({ service: "satellite", plane }, got, left?.planes.get(plane)),
          )
        : []),
      ...(tuners.size > 1
        ? [...tuners].map(([tuner, got]) =>
            symptom({ service: "satellite", tuner }, got, left?.tuners.get(tuner)),
          )
        : []),
    ].filter((s) => s.wanted > 0);
  });
}

function stateOf(got: number, wanted: number): State {
  if (got === 0) return "fails";
  return got < wanted ? "partial" : "works";
}

/** Short name of the place of a symptom or an observation. */
export function symptomKey({ part, service, plane, tuner }: SymptomPlace): string {
  if (plane !== undefined) return `${part}|${service}|${plane}`;
  return tuner === undefined ? `${part}|${service}` : `${part}|${service}|${tuner}`;
}

/** The place of a plane at a receiver or an outlet. */
export function planePlace(part: PartId, plane: Plane): SymptomPlace {
  return { part, service: "satellite", plane: planeKey(plane) };
}
