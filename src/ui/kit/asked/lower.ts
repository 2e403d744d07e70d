/**
 * What stands below the canvas in place of the spectrum, since somebody asked: one value for what is shown, how the
 * panes stood before, and where the focus returns. View state of this window, not of the design.
 */
import { create } from "zustand";
import { useApp } from "../../../store/app.ts";
import { type SheetPane, showPane, usePanes } from "../panes.ts";
import type { Question } from "./question.ts";
import type { WalkState } from "./walking.ts";

export type Lower =
  | { readonly type: "walk"; readonly walking: WalkState }
  | { readonly type: "origin"; readonly question: Question };

type Entry = {
  readonly shown: Lower;
  readonly before: { readonly sheet: SheetPane | null; readonly spectrumOpen: boolean };
  /** What had the focus. */
  readonly asker: Element | null;
};

type State = {
  /** Which of the designs opened so far it is about. */
  readonly opened: number;
  /** The last one is shown; closing it leads back to the one below, and at last to the spectrum. */
  readonly entries: readonly Entry[];
};

const NOTHING: readonly Entry[] = [];
const useState = create<State>(() => ({ opened: 0, entries: NOTHING }));

function present(): readonly Entry[] {
  const { opened, entries } = useState.getState();
  return opened === useApp.getState().opened ? entries : NOTHING;
}

/** What is shown below the canvas; null: the spectrum. */
export function useLower(): Lower | null {
  const opened = useApp((s) => s.opened);
  return useState((s) => (s.opened === opened ? (s.entries.at(-1)?.shown ?? null) : null));
}

/** What was asked of one type about the open design, also while something else lies over it. */
export function useAsked<T extends Lower["type"]>(type: T): Extract<Lower, { type: T }> | null {
  const opened = useApp((s) => s.opened);
  return useState((s) => (s.opened === opened ? shownOf(s.entries, type) : null));
}

export function currentAsked<T extends Lower["type"]>(type: T): Extract<Lower, { type: T }> | null {
  return shownOf(present(), type);
}

function shownOf<T extends Lower["type"]>(
  entries: readonly Entry[],
  type: T,
): Extract<Lower, { type: T }> | null {
  const isOf = (shown: Lower): shown is Extract<Lower, { type: T }> => shown.type === type;
  for (const { shown } of entries) if (isOf(shown)) return shown;
  return null;
}

/** Shows something in place of the spectrum. In the place of another of its type, the way back stays that one's. */
export function showLower(shown: Lower): void {
  const { sheet, spectrumOpen } = usePanes.getState();
  const former = present().find((e) => e.shown.type === shown.type);
  const entry: Entry = {
    shown,
    before: former?.before ?? { sheet, spectrumOpen },
    asker: document.activeElement,
  };
  useState.setState({ opened: useApp.getState().opened, entries: [...without(shown.type), entry] });
  showPane("spectrum");
}

/** Changes what is shown where it stands. */
export function changeLower(shown: Lower): void {
  useState.setState({
    entries: present().map((entry) => (entry.shown.type === shown.type ? { ...entry, shown } : entry)),
  });
}

/** Puts it away, the panes back as they were, and the focus back to where it was asked. */
export function closeLower(type: Lower["type"]): void {
  const closed = present().find((e) => e.shown.type === type);
  useState.setState({ entries: without(type) });
  if (!closed) return;
  usePanes.setState(closed.before);
  if (closed.asker instanceof HTMLElement && closed.asker.isConnected) closed.asker.focus();
}

/** Puts it away because something else was chosen: the panes stay. */
export function dropLower(type: Lower["type"]): void {
  if (present().some((e) => e.shown.type === type)) useState.setState({ entries: without(type) });
}

function without(type: Lower["type"]): readonly Entry[] {
  const rest = present().filter((e) => e.shown.type !== type);
  return rest.length === 0 ? NOTHING : rest;
}
