/** Puts into the storage what a page left behind that went away before it could. Doing it twice does no harm. */
import type { Design } from "../../design/design.ts";
import { readStoredDesign } from "../../design/file.ts";
import { applyPatch, patchBetween } from "../../design/patch.ts";
import { readPatch } from "../../design/patchReading.ts";
import { readDocument } from "./documentReading.ts";
import type { DocumentHead, StoredDocument } from "./documentStorage.ts";
import { historyOf, presentOf, withStep } from "./history.ts";
import { copyTitle, newWork, saveWork, type Writer, workOn } from "./saving.ts";
import type { FormerUnsavedNote, UnsavedNote } from "./unsavedNotes.ts";

/** Id of the document in which it lies now; null where nothing can be made of the note yet. Rejects with the storage. */
export async function recoverUnsaved(
  writer: Writer,
  note: UnsavedNote | FormerUnsavedNote,
): Promise<string | null> {
  return "change" in note ? putChange(writer, note) : putText(writer, note);
}

async function putChange(writer: Writer, note: UnsavedNote): Promise<string | null> {
  const { storage } = writer;
  const { change, expected, underWay } = note;
  const { id, mark } = change.head;
  const written = await storage.write(change, expected);
  if (written.ok || written.standing?.mark === mark) return id;
  const { standing } = written;
  if (standing && underWay.includes(standing.mark ?? "")) {
    const head = { ...change.head, revision: standing.revision + 1 };
    const again = await storage.write({ ...change, head }, standing.revision);
    if (again.ok) return id;
  }
  const stored = standing ? await storage.read(id) : undefined;
  const design = designOf(note, stored);
  return design && beside(writer, change.head, design, stored);
}

/** What the note comes to: from its text, or else from its steps on top of what lies there. */
function designOf({ change, text }: UnsavedNote, stored: StoredDocument | undefined): Design | null {
  const whole = text ?? change.text?.text;
  const reading = whole === undefined ? null : readStoredDesign(whole);
  if (reading?.ok) return reading.design;
  const found = stored && readDocument(stored);
  let design = found?.ok ? found.disk.states[change.dropFrom - 1 - found.disk.first] : undefined;
  for (const step of change.steps) {
    const patch = readPatch(step.patch);
    design = (patch && design && applyPatch(patch, design)) ?? undefined;
    if (step.at === change.head.at) break;
  }
  return design ?? null;
}

/** A document that another window changed in between stays as it is; this one stands beside it. */
async function beside(
  writer: Writer,
  { id }: DocumentHead,
  design: Design,
  stored: StoredDocument | undefined,
): Promise<string> {
  const found = stored && readDocument(stored);
  if (found?.ok && !patchBetween(presentOf(found.history), design)) return id;
  const own = stored ? { ...design, title: copyTitle(design.title) } : design;
  const work = newWork(stored ? writer.newId() : id, writer.now());
  return (await saveWork(writer, work, historyOf(own), true)).work.id;
}

/** Notes of a former edition hold the text alone. */
async function putText(writer: Writer, { id, revision, text }: FormerUnsavedNote): Promise<string | null> {
  const reading = readStoredDesign(text);
  if (!reading.ok) return null;
  const { design } = reading;
  const stored = await writer.storage.read(id);
  const found = stored && readDocument(stored);
  if (!stored || !found?.ok || found.isDamaged || stored.head.revision !== revision) {
    const head = stored?.head ?? { id, title: design.title, changed: 0, parts: 0, revision: 0 };
    return beside(writer, head, design, stored);
  }
  if (!patchBetween(presentOf(found.history), design)) return id;
  const work = workOn(stored.head, found, writer.now());
  return (await saveWork(writer, work, withStep(found.history, design), true)).work.id;
}
