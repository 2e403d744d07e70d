/** Answers that follow wires through a design, kept as long as every part that they looked at is as it was. */
import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";

/** An answer with all that it rests on. */
export type Kept<T> = {
  readonly answer: T;
  readonly looked: ReadonlyMap<PartId, PartRecord | undefined>;
  readonly also: readonly unknown[];
};

/**
 * The answer kept at a key, or a new one. `work` may look at records through the evaluation that it is given, and at
 * what stands in `also`; at nothing else of the design.
 */
export function keptWhile<T>(
  store: { get(key: PartRecord): Kept<T> | undefined; set(key: PartRecord, kept: Kept<T>): unknown },
  key: PartRecord,
  { evaluation, also }: { readonly evaluation: Evaluation; readonly also: readonly unknown[] },
  work: (evaluation: Evaluation) => T,
): T {
  const former = store.get(key);
  if (former && isSame(former, evaluation, also)) return former.answer;
  const looked = new Map<PartId, PartRecord | undefined>();
  const answer = work({
    ...evaluation,
    record: (id) => {
      const record = evaluation.record(id);
      looked.set(id, record);
      return record;
    },
  });
  store.set(key, { answer, looked, also });
  return answer;
}

function isSame(
  { looked, also: before }: Kept<unknown>,
  { record }: Evaluation,
  also: readonly unknown[],
): boolean {
  if (before.length !== also.length || before.some((value, n) => value !== also[n])) return false;
  for (const [id, was] of looked) if (record(id) !== was) return false;
  return true;
}
