/** Lets a stored document be the open design; of a damaged one the latest that can be read, with a sentence. */

import { readStoredDesign } from "../../design/file.ts";
import { plural } from "../../words/plural.ts";
import { GONE, keepRemains } from "./care.ts";
import type { Desk, Found, Surroundings } from "./desk.ts";
import { historyOf, presentOf } from "./history.ts";
import type { DocumentHead, RevisionHead } from "./shelf.ts";
import type { Opened } from "./state.ts";

/** Leaves everything as it was where nothing can be read. */
export async function openStored(around: Surroundings, desk: Desk, id: string): Promise<Opened> {
  try {
    const stored = await desk.find(id);
    return stored ? await openFound(around, desk, stored) : { ok: false, problem: GONE, text: null };
  } catch (error) {
    return { ok: false, problem: desk.refused(error), text: null };
  }
}

/** The document that was open last, or null. */
export async function openLast(around: Surroundings, desk: Desk): Promise<Opened | null> {
  try {
    const id = await around.shelf.lastOpened();
    const stored = id === null ? undefined : await desk.find(id);
    return stored ? await openFound(around, desk, stored) : null;
  } catch (error) {
    desk.refused(error);
    return null;
  }
}

async function openFound(around: Surroundings, desk: Desk, { head, found, isKept }: Found): Promise<Opened> {
  const revisions = isKept ? [] : await around.shelf.revisions(head.id);
  if (!found.ok) {
    const problem = `“${head.title}” cannot be read: ${found.problem} Its text is kept as it is.`;
    return (await openRevision(around, desk, head, revisions)) ?? { ok: false, problem, text: found.text };
  }
  // The next save would replace what could not be read.
  if (found.isDamaged) await keepRemains(around, head.id);
  const last = Math.max(...revisions.map(({ when }) => when), 0);
  // A state that a revision holds already needs no other; one that never had any counts from its last save.
  const revisedAt = last > 0 ? last : head.changed;
  desk.sit(head, found, isKept || last >= head.changed ? around.now() : revisedAt);
  const notes = found.lost === 0 ? found.notes : [...found.notes, lostSteps(head.title, found.lost)];
  return { ok: true, design: presentOf(found.history), notes, history: found.history };
}

/** The latest revision that can be read stands in for a text that cannot. */
async function openRevision(
  around: Surroundings,
  desk: Desk,
  head: DocumentHead,
  revisions: readonly RevisionHead[],
): Promise<Opened | null> {
  for (const { id, when } of [...revisions].sort((a, b) => b.when - a.when)) {
    const reading = readStoredDesign((await around.shelf.revision(id))?.text ?? "");
    if (!reading.ok) continue;
    await keepRemains(around, head.id);
    const history = historyOf(reading.design);
    const disk = { states: [], first: 0, texts: [] };
    desk.sit(head, { ...reading, history, disk, lost: 0, isDamaged: true }, around.now());
    const date = new Date(when).toLocaleString();
    const note = `“${head.title}” could not be read. This is its revision of ${date}; the damaged text is kept among its revisions.`;
    return { ok: true, design: reading.design, notes: [...reading.notes, note], history };
  }
  return null;
}

function lostSteps(title: string, lost: number): string {
  return plural(lost, {
    one: `The last change of “${title}” could not be read. What lies in the storage is kept among its revisions.`,
    other: (n) =>
      `The last ${n} changes of “${title}” could not be read. What lies in the storage is kept among its revisions.`,
  });
}
