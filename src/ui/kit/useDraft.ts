/**
 * What is being typed into a field. A text that can be taken counts at once or after a short pause, without ending
 * the editing; one that cannot is never taken, and the field says so. All keystrokes from coming to leaving are one
 * visit: one step back. Escape brings back what stood there before the visit.
 */
import { type ChangeEvent, type KeyboardEvent, useEffect, useRef, useState } from "react";

/** A text that can be taken counts no later than this after it was typed [ms]. */
const LONGEST_WAIT_MS = 2000;

export type DraftOptions = {
  /** What counts now, as the field shows it. */
  readonly value: string;
  /** Tries a text; null when it was taken, else why not. `visit` is the same for all tries of one visit. */
  readonly onTry: (text: string, visit: string) => string | null;
  /** Takes back what this visit has changed; false: it cannot, and the text from before is tried instead. */
  readonly onTakeBack?: (visit: string) => boolean;
  /** Hears whenever a try was taken (null) or not, for a message that stands elsewhere. */
  readonly onProblem?: (problem: string | null) => void;
  /** Pause after the last keystroke before the text is tried [ms]; 0: with every keystroke. */
  readonly pauseMs?: number;
};

export type FieldDraft = {
  /** Why the text that stands in the field is not taken yet. */
  readonly problem: string | null;
  /** Tries a text that was not typed, as a step of the arrow keys; part of the visit. */
  readonly put: (text: string) => void;
  /** Ends the visit: what can be taken is, and the field shows what counts. */
  readonly leave: () => void;
  /** For the input. */
  readonly input: {
    readonly value: string;
    readonly onChange: (event: ChangeEvent<HTMLInputElement>) => void;
    readonly onBlur: () => void;
    readonly onKeyDown: (event: KeyboardEvent<HTMLInputElement>) => void;
    readonly "aria-invalid": boolean;
    /** Present while Escape has something to bring back: a dialog around the field then stays open. */
    readonly "data-takes-escape"?: "";
  };
};

type Visit = { readonly key: string; readonly before: string; isChanged: boolean };
type Pending = { readonly text: string; readonly since: number; readonly timer: number };

let visits = 0;
/** Texts that wait for their pause, of all fields: they count at once when the page goes away. */
const waiting = new Set<() => void>();
let isListening = false;

export function useDraft(options: DraftOptions): FieldDraft {
  const [typed, setTyped] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const visit = useRef<Visit | null>(null);
  const pending = useRef<Pending | null>(null);
  const latest = useRef(options);
  latest.current = options;

  function visitNow(): Visit {
    visits += visit.current ? 0 : 1;
    visit.current ??= { key: `visit ${visits}`, before: latest.current.value, isChanged: false };
    return visit.current;
  }

  function tell(reason: string | null): void {
    setProblem(reason);
    latest.current.onProblem?.(reason);
  }

  function attempt(text: string): void {
    const now = visitNow();
    const reason = latest.current.onTry(text, now.key);
    if (reason === null) now.isChanged = true;
    tell(reason);
  }

  function drop(): string | null {
    const left = pending.current;
    if (left) clearTimeout(left.timer);
    pending.current = null;
    waiting.delete(commit.current);
    return left?.text ?? null;
  }

  const commit = useRef(() => {
    const text = drop();
    if (text !== null) attempt(text);
  });

  function wait(text: string, pauseMs: number): void {
    const now = performance.now();
    const since = pending.current?.since ?? now;
    drop();
    const rest = Math.max(0, Math.min(pauseMs, since + LONGEST_WAIT_MS - now));
    pending.current = { text, since, timer: window.setTimeout(() => commit.current(), rest) };
    waiting.add(commit.current);
    listen();
  }

  function restore(): void {
    const { onTry, onTakeBack } = latest.current;
    const now = visitNow();
    drop();
    if (now.isChanged && !onTakeBack?.(now.key)) onTry(now.before, now.key);
    now.isChanged = false;
    setTyped(null);
    tell(null);
  }

  function leave(): void {
    commit.current();
    setTyped(null);
    visit.current = null;
  }

  // A dialog may close over a field that still has the focus.
  useEffect(() => () => commit.current(), []);

  return {
    problem,
    leave,
    put: (text) => {
      drop();
      setTyped(text);
      attempt(text);
    },
    input: {
      value: typed ?? options.value,
      onChange: ({ target }) => {
        setTyped(target.value);
        visitNow();
        const { pauseMs = 0 } = latest.current;
        if (pauseMs === 0) attempt(target.value);
        else wait(target.value, pauseMs);
      },
      onBlur: leave,
      onKeyDown: (event) => {
        if (event.key === "Enter") commit.current();
        if (event.key === "Escape" && typed !== null) restore();
      },
      "aria-invalid": typed !== null && problem !== null,
      ...(typed === null ? {} : { "data-takes-escape": "" }),
    },
  };
}

/** Takes whatever still waits for its pause. */
export function takeWaitingDrafts(): void {
  for (const commit of [...waiting]) commit();
}

/** While capturing: before whoever saves hears that the page goes away. */
function listen(): void {
  if (isListening) return;
  isListening = true;
  window.addEventListener("pagehide", takeWaitingDrafts, { capture: true });
  window.addEventListener(
    "visibilitychange",
    () => document.visibilityState === "hidden" && takeWaitingDrafts(),
    { capture: true },
  );
}

/** What stands at a field whose text is not taken. `kept`: what still counts, as the field shows it. */
export function notTaken(problem: string, kept: string): string {
  return `${problem.replace(/[.\s]+$/, "")}. Not taken yet: still ${kept}.`;
}
