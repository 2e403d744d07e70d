/** Whether a named fault is right, and what the trainee's own readings say about it. */
import { evaluate } from "../../evaluate/evaluate.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { alike } from "../faults/alike.ts";
import { isAlikeInEffect, isSameFault } from "../faults/equivalent.ts";
import type { Fault } from "../faults/fault.ts";
import { faults } from "../faults/list.ts";
import { measure } from "../faults/measure.ts";
import { askedKey, askingFor, type RequestChoice, requestsOf } from "../faults/requestChoice.ts";
import type { OpenedCase } from "./case.ts";
import type { Evidence, NamedFault, NamedVerdict, TakenMeasurement } from "./progress.ts";

/**
 * "right": the fault, or another description of it. "alike": elsewhere, but nothing that can be measured tells
 * it apart. "part": the right part, another fault.
 */
export function judge({ design, fault }: OpenedCase, named: NamedFault): NamedVerdict {
  const isAt = fault.parts.includes(named.part);
  if (isAt && fault.type === named.type) return "right";
  const meant = faultsNamed(design, named);
  if (meant.some((other) => isSameFault(design, other, fault))) return "right";
  if (isAt) return "part";
  return meant.some((other) => isAlikeInEffect(design, other, fault)) ? "alike" : "wrong";
}

/** The first reading that no fault of the name would have given: it spoke against the name already. */
export function readingAgainst(
  opened: OpenedCase,
  named: NamedFault,
  measured: readonly TakenMeasurement[],
): TakenMeasurement | undefined {
  const meant = faultsNamed(opened.design, named);
  return measured.find((each) => meant.every((fault) => !agrees(opened, fault, each)));
}

/** How many of the suspects the readings leave; what is the same fault as the true one counts as that one. */
export function evidenceOf(
  opened: OpenedCase,
  suspects: readonly Fault[],
  measured: readonly TakenMeasurement[],
): Evidence {
  const { design, fault } = opened;
  const others = suspects.filter((other) => other.id !== fault.id);
  const left = others.filter((other) => measured.every((each) => agrees(opened, other, each)));
  // Nothing to measure would exclude these: they are no lack of evidence.
  const possible = left.filter((other) => !isAlikeInEffect(design, other, fault));
  return { suspects: others.length + 1, left: possible.length + 1 };
}

function faultsNamed(design: OpenedCase["design"], { part, type }: NamedFault): readonly Fault[] {
  return faults(design).filter((fault) => fault.type === type && fault.parts.includes(part));
}

/** Whether a fault would have given the reading that the trainee took. */
function agrees(
  opened: OpenedCase,
  fault: Fault,
  { part, port, quantity, asked }: TakenMeasurement,
): boolean {
  const { design } = opened;
  const request = requestOfKey(design, asked);
  const shown = measure(design, evaluationUnder(opened, opened.fault, request), [part, port], quantity);
  const would = measure(design, evaluationUnder(opened, fault, request), [part, port], quantity);
  return shown === null || would === null ? shown === would : alike(shown, would);
}

/** Back from what is kept; null for the receivers' own request, and for one that no longer exists. */
export function requestOfKey(design: OpenedCase["design"], key: string): RequestChoice | null {
  return requestsOf(design).find((asked) => askedKey(asked) === key) ?? null;
}

const known = new WeakMap<OpenedCase, Map<string, Evaluation>>();

/** Each fault is calculated once for each request. */
function evaluationUnder(opened: OpenedCase, fault: Fault, asked: RequestChoice | null): Evaluation {
  const evaluations = known.get(opened) ?? new Map<string, Evaluation>();
  known.set(opened, evaluations);
  const key = `${fault.id}|${askedKey(asked)}`;
  const evaluation = evaluations.get(key) ?? evaluate(askingFor(fault.apply(opened.design), asked));
  evaluations.set(key, evaluation);
  return evaluation;
}
