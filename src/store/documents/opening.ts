/** Lets a stored document be the open design; of a damaged one the latest that can be read, with a sentence. */

import { readStoredDesign } from "../../design/file.ts";
import { plural } from "../../words/plural.ts";
import { DOCUMENT_GONE, keepDamagedAsRevisions } from "./documentCommands.ts";
import type { DocumentHead, RevisionHead } from "./documentStorage.ts";
import { historyOf, presentOf } from "./history.ts";
import type { DocumentServices, FoundDocument, OpenDocument } from "./openDocument.ts";
import type { Opened } from "./state.ts";

/** Leaves everything as it was where nothing can be read. */
export async function openStoredDocument(
  around: DocumentServices,
  openDocument: OpenDocument,
  id: string,
): Promise<Opened> {
  try {
    const stored = await openDocument.find(id);
    return stored
      ? await openFound(around, openDocument, stored)
      : { ok: false, problem: DOCUMENT_GONE, text: null };
  } catch (error) {
    return { ok: false, problem: openDocument.refused(error), text: null };
  }
}

/** The document that was open last, or null. */
export async function openLastDocument(
  around: DocumentServices,
  openDocument: OpenDocument,
): Promise<Opened | null> {
  try {
    const id = await around.storage.lastOpened();
    const stored = id === null ? undefined : await openDocument.find(id);
    return stored ? await openFound(around, openDocument, stored) : null;
  } catch (error) {
    openDocument.refused(error);
    return null;
  }
}

async function openFound(
  around: DocumentServices,
  openDocument: OpenDocument,
  { head, found, isKept }: FoundDocument,
): Promise<Opened> {
  const revisions = isKept ? [] : await around.storage.revisions(head.id);
  if (!found.ok) {
    const problem = `“${head.title}” cannot be read: ${found.problem} Its text is kept as it is.`;
    return (
      (await openRevision(around, openDocument, head, revisions)) ?? { ok: false, problem, text: found.text }
    );
  }
  // The next save would replace what could not be read.
  if (found.isDamaged) await keepDamagedAsRevisions(around, head.id);
  const last = Math.max(...revisions.map(({ when }) => when), 0);
  // A state that a revision holds already needs no other; one that never had any counts from its last save.
  const revisedAt = last > 0 ? last : head.changed;
  openDocument.show(head, found, isKept || last >= head.changed ? around.now() : revisedAt);
  const notes = found.lost === 0 ? found.notes : [...found.notes, lostSteps(head.title, found.lost)];
  return { ok: true, design: presentOf(found.history), notes, history: found.history };
}

/** The latest revision that can be read stands in for a text that cannot. */
async function openRevision(
  around: DocumentServices,
  openDocument: OpenDocument,
  head: DocumentHead,
  revisions: readonly RevisionHead[],
): Promise<Opened | null> {
  for (const { id, when } of [...revisions].sort((a, b) => b.when - a.when)) {
    const reading = readStoredDesign((await around.storage.revision(id))?.text ?? "");
    if (!reading.ok) continue;
    await keepDamagedAsRevisions(around, head.id);
    const history = historyOf(reading.design);
    const disk = { states: [], first: 0, texts: [] };
    openDocument.show(head, { ...reading, history, disk, lost: 0, isDamaged: true }, around.now());
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
