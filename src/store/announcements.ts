/**
 * What is read out: one sentence or two after each edit, undo, refusal or notice, never more than one announcement for
 * what happens at once. The page has one place for it, which is always there (`Announcer`).
 */
import { create } from "zustand";
import type { Design } from "../design/design.ts";
import type { Report } from "../findings/finding.ts";
import { editFacts } from "../remedies/editFacts.ts";
import { receiverTurns } from "../remedies/receiverTurns.ts";
import {
  editSentence,
  openedSentence,
  previewSentence,
  receiversSentence,
  stepSentence,
  touchesSignals,
} from "../sentences/announcement.ts";
import { type AppState, useApp } from "./app.ts";
import type { Preview } from "./preview.ts";

/** The number makes a text that is said again a new one. */
export type Announcement = { readonly text: string; readonly number: number };

export const useAnnouncement = create<Announcement>(() => ({ text: "", number: 0 }));

export function announce(text: string): void {
  if (text === "") return;
  useAnnouncement.setState((s) => ({ text, number: s.number + 1 }));
}

/** What follows within this is said together; a key held down is heard once, at its end [ms]. */
const QUIET_MS = 400;

/** The document as it was when last spoken of, and where undo and redo led from there. */
type Known = {
  readonly design: Design;
  readonly report: Report;
  readonly opened: number;
  readonly preview: Preview | null;
  readonly past: ReadonlySet<Design | undefined>;
  readonly future: ReadonlySet<Design | undefined>;
};

/** Listens to the open design and says what becomes of it; returns how to end that. */
export function attachAnnouncer(): () => void {
  let known = knownNow(useApp.getState());
  let notices: string[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  const speak = () => {
    const now = knownNow(useApp.getState());
    announce(wordsFor(known, now, notices));
    known = now;
    notices = [];
  };
  const stop = useApp.subscribe((now, before) => {
    const news = now.notices.filter((notice) => !before.notices.includes(notice));
    const isSame =
      now.design === before.design && now.opened === before.opened && now.preview === before.preview;
    if (isSame && news.length === 0) return;
    notices.push(...news.map((notice) => notice.text));
    clearTimeout(timer);
    timer = setTimeout(speak, QUIET_MS);
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}

/** What a preview would change; it is looked at and changes nothing. */
function previewWords({ title, design, document }: Preview, { report }: AppState): readonly string[] {
  return [previewSentence(title), receiversSentence(receiverTurns(document.report, report), design)];
}

function knownNow({ design, report, preview, opened }: AppState): Known {
  const { pastStates, futureStates } = useApp.temporal.getState();
  return {
    design,
    report: preview?.document.report ?? report,
    opened,
    preview,
    past: new Set(pastStates.map((state) => state.design)),
    future: new Set(futureStates.map((state) => state.design)),
  };
}

function wordsFor(known: Known, now: Known, notices: readonly string[]): string {
  const sentences = newsOf(known, now);
  const [first = "", ...rest] = sentences;
  // What a notice shows may be the very sentence that tells of the edit.
  return [first, ...notices.filter((text) => text !== first), ...rest]
    .filter((sentence) => sentence !== "")
    .join(" ");
}

function newsOf(known: Known, now: Known): readonly string[] {
  if (now.opened !== known.opened) return openedWords(now);
  if (now.preview && now.preview !== known.preview) return previewWords(now.preview, useApp.getState());
  return editWords(known, now);
}

function openedWords({ design, report }: Known): readonly string[] {
  return [openedSentence(design), receiversSentence(receiverTurns(report, report), design)];
}

function editWords(known: Known, now: Known): readonly string[] {
  const isUndone = known.past.has(now.design) && now.future.size > known.future.size;
  const isRedone = known.future.has(now.design);
  // Undoing a deletion is heard as that, not as something added.
  const facts = isUndone ? editFacts(now.design, known.design) : editFacts(known.design, now.design);
  if (!facts) return [];
  const done = editSentence(facts);
  const step = isUndone ? stepSentence("undone", done) : isRedone ? stepSentence("redone", done) : done;
  if (!touchesSignals(facts)) return [step];
  return [step, receiversSentence(receiverTurns(known.report, now.report), now.design)];
}
