/** A design with its way back and forth: what undo and redo lead through. */
import type { Design } from "../../design/design.ts";

export type History = {
  /** From the oldest that undo reaches to the newest that redo reaches. */
  readonly states: readonly Design[];
  /** Place of the present one among them. */
  readonly at: number;
};

/** Undo reaches so many steps back. */
export const HISTORY_LIMIT = 300;

/** A design that has no past. */
export function historyOf(design: Design): History {
  return { states: [design], at: 0 };
}

export function presentOf({ states, at }: History): Design {
  const present = states[at];
  if (!present) throw new RangeError(`a history of ${states.length} states has none at ${at}`);
  return present;
}

/** One step further; what redo could have reached is gone. */
export function withStep({ states, at }: History, design: Design): History {
  return { states: [...states.slice(0, at + 1), design], at: at + 1 };
}

/** The same way with another design at its present place. */
export function withPresent({ states, at }: History, design: Design): History {
  return { states: states.map((state, i) => (i === at ? design : state)), at };
}
