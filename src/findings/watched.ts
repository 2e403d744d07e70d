/** Answers that follow wires through a design, kept as long as all that they rest on is as it was. */
import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";

/** An answer with all that it rests on. */
export type Kept<T> = {
  readonly answer: T;
  readonly looked: ReadonlyMap<PartId, PartRecord | undefined>;
  readonly asked: readonly Asked[];
  readonly also: readonly unknown[];
};

/** A question to the whole design, and what the answer was. */
type Asked = { readonly ask: (whole: Evaluation) => unknown; readonly answer: unknown };

/** The evaluation behind one that is watched, and the questions that are noted. */
type Watch = { readonly whole: Evaluation; readonly asked: Asked[] };

const watches = new WeakMap<Evaluation, Watch>();

/**
 * The answer kept at a key, or a new one. `work` may look at records through the evaluation that it is given, ask the
 * whole design by `askWhole`, and look at what stands in `also`; at nothing else of the design.
 */
export function keptWhile<K extends object, T>(
  store: { get(key: K): Kept<T> | undefined; set(key: K, kept: Kept<T>): unknown },
  key: K,
  { evaluation, also }: { readonly evaluation: Evaluation; readonly also: readonly unknown[] },
  work: (evaluation: Evaluation) => T,
): T {
  const former = store.get(key);
  if (former && isSame(former, evaluation, also)) return former.answer;
  const looked = new Map<PartId, PartRecord | undefined>();
  const asked: Asked[] = [];
  const watched: Evaluation = {
    ...evaluation,
    record: (id) => {
      const record = evaluation.record(id);
      looked.set(id, record);
      return record;
    },
  };
  watches.set(watched, { whole: wholeOf(evaluation), asked });
  const answer = work(watched);
  store.set(key, { answer, looked, asked, also });
  return answer;
}

/** The same work, with its answers kept: for each thing that it is done for, as long as what it looks at stays. */
export function keptFor<K extends object, T>(
  work: (key: K, evaluation: Evaluation) => T,
): (key: K, evaluation: Evaluation) => T {
  const store = new WeakMap<K, Kept<T>>();
  return (key, evaluation) =>
    keptWhile(store, key, { evaluation, also: [] }, (watched) => work(key, watched));
}

/** The evaluation without the watch on it: what is remembered at it serves all. */
export function wholeOf(evaluation: Evaluation): Evaluation {
  return watches.get(evaluation)?.whole ?? evaluation;
}

/** Asks what only the whole design can answer; an answer that is kept rests on this one, not on all parts. */
export function askWhole<T extends string | number | boolean | undefined>(
  evaluation: Evaluation,
  ask: (whole: Evaluation) => T,
): T {
  const watch = watches.get(evaluation);
  const answer = ask(wholeOf(evaluation));
  watch?.asked.push({ ask, answer });
  return answer;
}

function isSame(
  { looked, asked, also: before }: Kept<unknown>,
  evaluation: Evaluation,
  also: readonly unknown[],
): boolean {
  if (before.length !== also.length || before.some((value, n) => value !== also[n])) return false;
  for (const [id, was] of looked) if (evaluation.record(id) !== was) return false;
  return asked.every(({ ask, answer }) => ask(wholeOf(evaluation)) === answer);
}
