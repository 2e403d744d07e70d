/** Every carrier of a service that a part is offered, walked. */
import type { Evaluation } from "../../src/evaluate/evaluation.ts";
import { carriersOffered } from "../../src/findings/walk/choice.ts";
import type { SignalQuestion } from "../../src/findings/walk/signal.ts";
import { type ToldWay, tellSignal } from "../../src/sentences/walk/signal.ts";

/** All carriers of a service to one part. */
export function everyWay(evaluation: Evaluation, question: SignalQuestion): readonly ToldWay[] {
  const record = evaluation.record(question.part);
  if (!record) throw new Error(`no part ${question.part}`);
  const carriers = carriersOffered(evaluation, record, question).map((c) => c.carrier);
  return tellSignal(evaluation, { ...question, carriers }).ways;
}
