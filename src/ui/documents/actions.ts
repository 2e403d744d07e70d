/**
 * Opening designs, from wherever they come. The storage is told first and the canvas after, so that the
 * canvas never shows a design that the autosave takes for a change of the one before.
 */

import { type Design, EMPTY_DESIGN } from "../../design/design.ts";
import { EXAMPLES } from "../../design/examples.ts";
import { readDesign, writeDesign } from "../../design/file.ts";
import { LIMITS } from "../../design/limits.ts";
import { decodeLink } from "../../design/link.ts";
import { useApp } from "../../store/app.ts";
import { type Opened, useDocuments } from "../../store/documents.ts";
import type { History } from "../../store/history.ts";
import { pickFile } from "../kit/pickFile.ts";
import { wishOf, withoutWish } from "../start.ts";
import { openTraining } from "../training/actions.ts";

/** The example that greets whoever comes for the first time. */
const FIRST_EXAMPLE = "house-universal";

function show(design: Design, notes: readonly string[] = [], history?: History): void {
  const { openDesign, notify, notices, dismiss, opened } = useApp.getState();
  // What was said of the design before no longer matters; before the first, it was said of the address.
  if (opened > 0) for (const notice of notices) dismiss(notice.id);
  openDesign(design, history);
  void useDocuments.getState().cameUp(useDocuments.getState().current);
  if (notes.length > 0) notify(notes.join(" "));
}

function tell(problem: string): void {
  useApp.getState().notify(problem, "error");
}

/** Opens an example as a design that becomes an own document with its first change. */
export async function openExample(key: string): Promise<boolean> {
  const example = EXAMPLES.find((e) => e.key === key);
  if (!example) {
    tell(`There is no example “${key.slice(0, 60)}”. The list of examples is under “Designs”.`);
    return false;
  }
  await openAside(example.load());
  return true;
}

/** Opens a design as one of its own, which becomes a document with its first change; the present one stays stored. */
export async function openAside(design: Design): Promise<void> {
  await useDocuments.getState().begin(design);
  show(design);
}

export async function openEmpty(): Promise<void> {
  // A copy, so that a second empty design is not taken for the first.
  await openAside({ ...EMPTY_DESIGN });
}

export async function openStored(id: string): Promise<boolean> {
  return taken(await useDocuments.getState().open(id));
}

function taken(opened: Opened): boolean {
  if (opened.ok) show(opened.design, opened.notes, opened.history);
  else tell(opened.problem);
  return opened.ok;
}

/** Opens a share link as a new document of its own; a bad one leaves everything as it is. */
async function openLink(fragment: string): Promise<boolean> {
  const reading = await decodeLink(fragment);
  if (!reading.ok) {
    tell(reading.problem);
    return false;
  }
  await useDocuments.getState().create(reading.design);
  show(reading.design, reading.notes);
  return true;
}

/** Opens the text of a file as a new document of its own; a bad one leaves everything as it is. */
async function openText(text: string, name: string): Promise<boolean> {
  const reading = readDesign(text);
  if (!reading.ok) {
    tell(`“${name}”: ${reading.problem}`);
    return false;
  }
  await useDocuments.getState().create(reading.design);
  show(reading.design, reading.notes);
  return true;
}

export async function openFile(file: File): Promise<boolean> {
  // UTF-8 takes up to four bytes a character: beyond that, reading the file would be in vain.
  if (file.size > LIMITS.textLength * 4) {
    tell(`“${file.name}” is too large for a design file.`);
    return false;
  }
  try {
    return await openText(await file.text(), file.name);
  } catch {
    tell(`“${file.name}” could not be read from the disk.`);
    return false;
  }
}

/** Asks for a file and opens it. */
export async function chooseFile(): Promise<boolean> {
  const file = await pickFile();
  return file ? openFile(file) : false;
}

export function downloadDesign(design: Design = useApp.getState().design): void {
  download(writeDesign(design), `${fileName(design.title)}.json`);
}

export function download(text: string, name: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const anchor = document.createElement("a");
  anchor.href = address;
  anchor.download = name;
  anchor.click();
  // The browser has taken the blob over by then; freeing it in the same turn would cancel the download.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A title as a file name: letters and digits of any script, the rest as hyphens. */
export function fileName(title: string): string {
  const name = title
    .normalize("NFC")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
  return name === "" ? "design" : name;
}

/** Opens what the address asks for, else what was open last, else the first example. */
export async function openAtStart(): Promise<void> {
  const wish = wishOf(window.location.href);
  if (wish.type === "link" && (await openLink(wish.fragment))) return forgetWish();
  if (wish.type === "example" && (await openExample(wish.key))) return;
  if (wish.type === "training") await openCaseFrom(wish.fragment);
  const last = await useDocuments.getState().openLast();
  if (last && taken(last)) return;
  await openExample(FIRST_EXAMPLE);
  if (useDocuments.getState().state === "unavailable") openLastOnceThere();
}

/** The storage did not answer at the start: once it does, the last design comes up, unless other work has begun. */
function openLastOnceThere(): void {
  const { opened, design } = useApp.getState();
  const stop = useDocuments.subscribe(async ({ state }) => {
    if (state === "unavailable") return;
    stop();
    const now = useApp.getState();
    if (state !== "saved" || now.opened !== opened || now.design !== design) return;
    const last = await useDocuments.getState().openLast();
    if (last) taken(last);
  });
}

/** A practice case lies over the document, which opens below it as ever. */
async function openCaseFrom(fragment: string): Promise<void> {
  const trouble = await openTraining(fragment);
  if (trouble !== null) tell(trouble);
}

/**
 * Takes the wish out of the address once it is fulfilled: reloading a link would make a second copy of it.
 * Where nothing can be stored, the address is all there is to come back to, and stays.
 */
function forgetWish(): void {
  if (useDocuments.getState().state === "unavailable") return;
  window.history.replaceState(null, "", withoutWish(window.location.href));
}

/** Keeps following the address: links pasted into the open page, and examples that became own documents. */
export function followAddress(): () => void {
  const onHash = async () => {
    const wish = wishOf(window.location.href);
    if (wish.type === "link" && (await openLink(wish.fragment))) forgetWish();
    if (wish.type === "training") await openCaseFrom(wish.fragment);
  };
  window.addEventListener("hashchange", onHash);
  const stop = useDocuments.subscribe((now, before) => {
    if (now.current !== null && before.current === null) forgetWish();
  });
  return () => {
    window.removeEventListener("hashchange", onHash);
    stop();
  };
}
