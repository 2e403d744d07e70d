/**
 * Opening designs, from wherever they come. The storage is told first and the canvas after, so that the
 * canvas never shows a design that the autosave takes for a change of the one before.
 */

import { type Design, EMPTY_DESIGN } from "../../../design/design.ts";
import { EXAMPLES } from "../../../design/examples.ts";
import { readDesign, type Writing, writeDesign } from "../../../design/file.ts";
import { LIMITS } from "../../../design/limits.ts";
import { decodeLink } from "../../../design/link.ts";
import type { EvaluatedDesign } from "../../../remedies/faults/symptoms.ts";
import { useApp } from "../../../store/app.ts";
import { type Opened, useDocuments } from "../../../store/documents/documents.ts";
import type { History } from "../../../store/documents/history.ts";
import { persistenceWords } from "../../../store/documents/persistence.ts";
import {
  evaluateOnPage,
  LARGE_PARTS,
  type OpeningFailure,
  type OpeningProblem,
  PRACTICE_BUDGET,
  tryDesign,
  useOpening,
} from "../../../store/opening.ts";
import { startMarks } from "../../../store/startMark.ts";
import { usePractice } from "../../../store/trainingSession.ts";
import { evaluateAndReportNow } from "../../../store/trial.ts";
import { addressRequestOf, linkAddress, withoutAddressRequest } from "../../kit/addressRequest.ts";
import { afterLayout } from "../../kit/afterLayout.ts";
import { download, fileName } from "../../kit/download.ts";
import { openDialog } from "../../kit/panes.ts";
import { pickFile } from "../../kit/pickFile.ts";

/** The example that greets whoever comes for the first time. */
const FIRST_EXAMPLE = "house-universal";

function show(design: Design, { notes = [], ...known }: Showing = {}): void {
  const { openDesign, notify, notices, dismiss, opened } = useApp.getState();
  // What was said of the design before no longer matters; before the first, it was said of the address.
  if (opened > 0) for (const notice of notices) dismiss(notice.id);
  openDesign(design, known);
  if (notes.length > 0) notify(notes.join(" "));
  const { problem, leaveProblem } = useOpening.getState();
  if (problem) {
    // The address may still name what did not open; now it would name the wrong design.
    window.history.replaceState(null, "", withoutAddressRequest(window.location.href));
    leaveProblem();
  }
  cameUp();
}

type Showing = {
  readonly notes?: readonly string[];
  readonly worked?: EvaluatedDesign;
  readonly history?: History;
};

/** Takes the mark of this start away, once there is one. */
let unmark: (() => void) | null = null;

/** The design stands there, and has been drawn: a page that is killed in drawing has not come up. */
function cameUp(): void {
  const { current, cameUp: remember } = useDocuments.getState();
  void remember(current);
  const done = unmark;
  if (!done) return;
  unmark = null;
  afterDrawing(done);
  // A page that can still say that it goes away is not stuck in drawing.
  window.addEventListener("pagehide", done, { once: true });
}

/** Two frames later; a page in the background draws none, and does with a moment. */
function afterDrawing(work: () => void): void {
  if (document.visibilityState === "hidden") setTimeout(work, 0);
  else afterLayout(() => setTimeout(work, 0));
}

/** Opens an example as a design that becomes an own document with its first change. */
export async function openExample(key: string): Promise<boolean> {
  const example = EXAMPLES.find((e) => e.key === key);
  if (!example) {
    const problem = `There is no example “${key.slice(0, 60)}”. All of them are listed below.`;
    refuse({ type: "refused", what: "example", reason: problem });
    return false;
  }
  await openAsNewDesign(example.load());
  return true;
}

/** Opens a design as one of its own, which becomes a document with its first change; the present one stays stored. */
export async function openAsNewDesign(design: Design): Promise<void> {
  await useDocuments.getState().begin(design);
  show(design);
}

export async function openEmpty(): Promise<void> {
  // A copy, so that a second empty design is not taken for the first.
  await openAsNewDesign({ ...EMPTY_DESIGN });
}

export async function openStored(id: string): Promise<boolean> {
  const { open, list } = useDocuments.getState();
  const opened = await open(id);
  // What can't be read can still be taken along as it is.
  if (!opened.ok && opened.text !== null)
    download(opened.text, `${fileName(list.find((head) => head.id === id)?.title ?? "")}.json`);
  return taken(opened);
}

/** A stored design as a list, without working it out. */
export async function listStored(id: string, before: OpeningProblem): Promise<boolean> {
  const text = await useDocuments.getState().text(id);
  const reading = text === null ? null : readDesign(text);
  if (reading?.ok) useOpening.getState().showProblem({ type: "list", design: reading.design, before });
  return reading?.ok ?? false;
}

/** The text of a stored design, whether or not it can be read. */
export async function downloadStored(id: string, title: string): Promise<boolean> {
  const text = await useDocuments.getState().text(id);
  if (text !== null) download(text, `${fileName(title)}.json`);
  return text !== null;
}

/** Brings up what the storage has turned to. Where that does not work, nothing may seem to be open in its place. */
async function taken(opened: Opened): Promise<boolean> {
  if (!opened.ok) {
    useApp.getState().notify(opened.problem, "error");
    return false;
  }
  const { design, notes, history } = opened;
  const tried = design.parts.length > LARGE_PARTS ? await tryDesign(design, { isShown: true }) : "fits";
  if (tried === "overtaken") return false;
  const worked = tried === "fits" ? await evaluateOnPage(design) : null;
  if (worked) show(design, { notes, worked, history });
  else {
    await clear();
    halt(design, tried === "fits" ? "too large" : tried);
  }
  return worked !== null;
}

/** Nothing is open any more: neither here nor for the storage. */
async function clear(): Promise<void> {
  const empty = { ...EMPTY_DESIGN };
  await useDocuments.getState().begin(empty);
  useApp.getState().openDesign(empty);
}

/** Opens a design from outside as a new document of its own, once it has been tried out. */
async function openForeign(design: Design, notes: readonly string[]): Promise<boolean> {
  const tried = await tryDesign(design, { isShown: false });
  if (tried === "overtaken") return false;
  const worked = tried === "fits" ? await evaluateOnPage(design) : null;
  if (!worked) {
    halt(design, tried === "fits" ? "too large" : tried);
    return false;
  }
  await useDocuments.getState().create(design);
  show(design, { notes, worked });
  return true;
}

/** What was left of a design that did not come up: as a document of its own, beside the first. */
export async function openRest(design: Design): Promise<boolean> {
  return openForeign(design, []);
}

/** What was tried and given up is said, and what can be done with it. */
function halt(design: Design, why: OpeningFailure): void {
  openDialog(null);
  useOpening.getState().showProblem({ type: "halted", why, design });
}

function refuse(problem: OpeningProblem): void {
  openDialog(null);
  useOpening.getState().showProblem(problem);
}

/** Opens a share link as a new document of its own; a bad one leaves everything as it is. */
async function openLink(fragment: string): Promise<boolean> {
  const reading = await decodeLink(fragment);
  if (reading.ok) return openForeign(reading.design, reading.notes);
  refuse({ type: "refused", what: "link", reason: reading.problem });
  return false;
}

/** Opens what somebody pasted as a link: a whole address or what stands behind its "#". Null, or why not. */
export async function openPasted(text: string): Promise<string | null> {
  const link = text.replace(/\s+/g, "");
  const address = linkAddress(window.location.href, link.slice(link.indexOf("#") + 1));
  const { type } = addressRequestOf(address);
  if (type !== "link" && type !== "training")
    return "This is no link to a design: one contains “#d1.” and a long run of letters and digits.";
  // The address is the link, so that a reload tries it again.
  window.history.replaceState(null, "", address);
  await followWish();
  return null;
}

/** Opens the text of a file as a new document of its own; a bad one leaves everything as it is. */
async function openText(text: string, name: string): Promise<boolean> {
  const reading = readDesign(text);
  if (reading.ok) return openForeign(reading.design, reading.notes);
  refuse({ type: "refused", what: "file", reason: `“${name}”: ${reading.problem}` });
  return false;
}

export async function openFile(file: File): Promise<boolean> {
  const refused = (words: string) => {
    refuse({ type: "refused", what: "file", reason: `“${file.name}” ${words}` });
    return false;
  };
  // UTF-8 takes up to four bytes a character: beyond that, reading the file would be in vain.
  if (file.size > LIMITS.textLength * 4) return refused("is too large for a design file.");
  let text: string;
  try {
    text = await file.text();
  } catch {
    return refused("could not be read from the disk.");
  }
  return openText(text, file.name);
}

/** Asks for a file and opens it. */
export async function chooseFile(): Promise<boolean> {
  const file = await pickFile();
  return file ? openFile(file) : false;
}

export function downloadDesign(design: Design = useApp.getState().design, writing: Writing = {}): void {
  const text = writeDesign(design, writing);
  if (writing.full && !readDesign(text).ok) {
    const problem =
      "With every value written out, this file would be too large to open again. Leave typical values out.";
    useApp.getState().notify(problem, "error");
    return;
  }
  download(text, `${fileName(design.title)}.json`);
}

/** Opens what the address asks for, else what was open last, else the first example. */
export async function openAtStart(): Promise<void> {
  const { type } = addressRequestOf(window.location.href);
  if (type !== "last" && (await followWish()) !== "over the document") return;
  await openLast();
}

/** Opens what the address asks for. A practice case lies over the document, which opens below it as ever. */
async function followWish(): Promise<"done" | "over the document"> {
  const wish = addressRequestOf(window.location.href);
  if (wish.type === "link" && (await openLink(wish.fragment))) forgetWish();
  if (wish.type === "example") await openExample(wish.key);
  if (wish.type !== "training") return "done";
  const trouble = await openCase(wish.fragment, isFitForPractice);
  if (trouble !== null) refuse({ type: "refused", what: "practice", reason: trouble });
  return usePractice.getState().session ? "over the document" : "done";
}

/** Opens a practice case that an address names: null, or a sentence that says why not. */
type CaseOpener = (fragment: string, isFit: (design: Design) => Promise<boolean>) => Promise<string | null>;

let openCase: CaseOpener = async () => "There is no practice here.";

/** Tells how practice cases are opened: practice is built upon documents, and not the other way round. */
export function openCasesBy(opener: CaseOpener): void {
  openCase = opener;
}

async function isFitForPractice(design: Design): Promise<boolean> {
  const tried = await tryDesign(design, { isShown: false });
  if (tried === "overtaken") return false;
  if (tried !== "fits") halt(design, tried);
  else if (evaluateAndReportNow(design, { budget: PRACTICE_BUDGET })) return true;
  else refuse({ type: "refused", what: "practice", reason: "Its design is too large to practise on." });
  return false;
}

/** What was open last; what did not come up the last time is not simply tried again. */
export async function openLast(): Promise<void> {
  const failed = await startMarks.takeFailed();
  if (failed) {
    // Until something has come up: reloading this page is no way round it.
    unmark = startMarks.leave(failed, { isFailed: true });
    useOpening.getState().showProblem({ type: "not up", mark: failed });
    return;
  }
  const last = await useDocuments.getState().openLast();
  const { current } = useDocuments.getState();
  if (last?.ok && current !== null) {
    unmark = startMarks.leave({ id: current, title: last.design.title });
    // Where it does not come up the mark stays, until something else has.
    await taken(last);
    return;
  }
  if (last && (await taken(last))) return;
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
    if (last) await taken(last);
  });
}

/**
 * Takes the wish out of the address once it is fulfilled: reloading a link would make a second copy of it.
 * Where nothing can be stored, the address is all there is to come back to, and stays.
 */
function forgetWish(): void {
  if (useDocuments.getState().state === "unavailable") return;
  window.history.replaceState(null, "", withoutAddressRequest(window.location.href));
}

/** Keeps following the address: links pasted into the open page, and examples that became own documents. */
export function followAddress(): () => void {
  const onHash = () => {
    const { type } = addressRequestOf(window.location.href);
    if (type === "link" || type === "training") void followWish();
  };
  window.addEventListener("hashchange", onHash);
  const stop = useDocuments.subscribe((now, before) => {
    if (now.current !== null && before.current === null) forgetWish();
    if (now.hasAnswered && !before.hasAnswered) useApp.getState().notify(persistenceWords(now.persisted));
  });
  return () => {
    window.removeEventListener("hashchange", onHash);
    stop();
  };
}
