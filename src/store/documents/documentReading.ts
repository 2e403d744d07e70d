/**
 * From what lies in the storage to a design with its history. Of a damaged journal as much is read as hangs together;
 * of several texts that one counts from which the most can be had.
 */
import type { Design } from "../../design/design.ts";
import { readStoredDesign } from "../../design/file.ts";
import { applyPatch, invertPatch } from "../../design/patch.ts";
import { readPatch } from "../../design/patchReading.ts";
import type { DocumentHead, StoredDocument, StoredStep } from "./documentStorage.ts";
import { type History, presentOf } from "./history.ts";
import type { OnDisk } from "./journal.ts";

export type DocumentReading =
  | {
      readonly ok: true;
      readonly history: History;
      readonly disk: OnDisk;
      /** What was in the text but is not in the design. */
      readonly notes: readonly string[];
      /** How many of the last changes are lost; 0 where all is well. */
      readonly lost: number;
      /** Whether anything of it could not be read, be it only what undo would reach. */
      readonly isDamaged: boolean;
    }
  | { readonly ok: false; readonly problem: string; readonly text: string };

/** The whole way that can be read, and the place on it where the document stands. */
export function readDocument({
  head,
  texts,
  steps,
}: Pick<StoredDocument, "head" | "texts" | "steps">): DocumentReading {
  const ways = texts.map(({ at, text }) => ({ at, text, reading: readStoredDesign(text) }));
  const readable = ways.flatMap(({ at, reading }) => (reading.ok ? [{ at, ...reading }] : []));
  const end = Math.max(...texts.map(({ at }) => at), ...steps.map(({ at }) => at));
  const wanted = head.at ?? end;
  const [best] = readable
    .map(({ at, design, notes }) => ({ at, notes, ...wayThrough(at, design, steps) }))
    .sort((a, b) => missing(a, wanted) - missing(b, wanted) || b.at - a.at);
  if (!best) {
    const last = ways.at(-1);
    const problem = last && !last.reading.ok ? last.reading.problem : "Its text is missing.";
    return { ok: false, problem, text: last?.text ?? "" };
  }
  const { first, states, notes } = best;
  const last = first + states.length - 1;
  const at = Math.min(Math.max(wanted, first), last) - first;
  const isWhole =
    readable.length === texts.length && steps.every((step) => step.at > first && step.at <= last);
  return {
    ok: true,
    history: { states, at },
    disk: {
      states,
      first,
      texts: readable.map((each) => each.at).filter((each) => each >= first && each <= last),
    },
    notes,
    lost: missing(best, wanted),
    isDamaged: !isWhole || wanted !== first + at,
  };
}

type Way = { readonly first: number; readonly states: readonly Design[] };

/** Steps between the place that is wanted and the nearest that can be had. */
function missing({ first, states }: Way, wanted: number): number {
  return Math.max(0, first - wanted, wanted - (first + states.length - 1));
}

/** Up and down from a text, as far as one step follows on another. */
function wayThrough(at: number, design: Design, steps: readonly StoredStep[]): Way {
  const patches = new Map(steps.map((step) => [step.at, step.patch]));
  const walk = (from: Design, place: number, direction: 1 | -1): readonly Design[] => {
    const way: Design[] = [];
    let state = from;
    for (let i = place; ; i += direction) {
      const patch = patches.has(i) ? readPatch(patches.get(i)) : null;
      const next = patch && applyPatch(direction === 1 ? patch : invertPatch(patch), state);
      if (!next) return way;
      way.push(next);
      state = next;
    }
  };
  const before = walk(design, at, -1);
  return {
    first: at - before.length,
    states: [...[...before].reverse(), design, ...walk(design, at + 1, 1)],
  };
}

/** A head for a design whose own is lost: what its text tells. */
export function rebuiltHead(id: string, journal: Pick<StoredDocument, "texts" | "steps">): DocumentHead {
  const head = { id, title: "Recovered design", changed: 0, parts: 0, revision: 0 };
  const found = readDocument({ head, ...journal });
  if (!found.ok) return head;
  const { title, parts } = presentOf(found.history);
  return { ...head, title, parts: parts.length };
}
