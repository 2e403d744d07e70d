/**
 * The one store of the open design: document with history, what was worked out from it, selection and
 * notices. Actions are the only writers. The evaluation is renewed on every change of the design and
 * at no other time, so moving the pointer costs nothing here.
 */

import { temporal } from "zundo";
import { create } from "zustand";
import { type Design, EMPTY_DESIGN, type PortRef, wireId } from "../design/design.ts";
import type { Fragment } from "../design/edits/clipboard.ts";
import { done, type Edit } from "../design/edits/edit.ts";
import { withinSizeLimits } from "../design/sizeLimits.ts";
import { evaluate } from "../evaluate/evaluate.ts";
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { Report } from "../findings/finding.ts";
import { report as reportOf } from "../findings/report.ts";
import type { EvaluatedDesign } from "../remedies/faults/symptoms.ts";
import { HISTORY_LIMIT, type History, historyOf, presentOf } from "./documents/history.ts";
import { type Preview, type PreviewRequest, previewOf } from "./preview.ts";
import { evaluateAndReportNow } from "./trial.ts";

export type Selection = { readonly parts: readonly string[]; readonly wires: readonly string[] };
export const NOTHING_SELECTED: Selection = { parts: [], wires: [] };

export type NoticeTone = "info" | "warning" | "error";
export type Notice = {
  readonly id: number;
  readonly text: string;
  readonly tone: NoticeTone;
  /** The notice speaks of a change that one undo takes back. */
  readonly undoable: boolean;
  /** The design when it was told: once there is another, undo would take back something else. */
  readonly design: Design;
  /** It speaks of something else that can be taken back, by this. */
  readonly takeBack?: (() => void) | undefined;
};

/** Asks the canvas to bring parts and wires into view; the number makes a repeated wish a new one. */
export type Framing = Selection & { readonly nonce: number };

export type AppState = {
  /** The document at work: what is saved, shared and edited. */
  readonly design: Design;
  /** Of what is shown (`evaluation.design`): the document, or the preview while there is one. */
  readonly evaluation: Evaluation;
  readonly report: Report;
  readonly preview: Preview | null;
  /** Counts designs opened: the canvas shows the whole of each new one. */
  readonly opened: number;
  readonly selection: Selection;
  readonly clipboard: Fragment | null;
  readonly notices: readonly Notice[];
  readonly framing: Framing | null;
  /** The port from which a joint is being made. */
  readonly connecting: PortRef | null;

  /**
   * Applies an edit as one undo step; with the same `merge` key shortly after, as part of the last step. Under the
   * key of a visit to a field (`lasts`) however long after, until something else is changed.
   */
  readonly change: (edit: Edit, options?: { readonly merge?: string; readonly lasts?: boolean }) => boolean;
  /** Undoes the last step if it was made under this key, else does nothing and yields false. */
  readonly takeBack: (merge: string) => boolean;
  /**
   * `history`: its way back and forth, with the design as its present; none by default. `worked`: what was worked out of
   * it before, for a large design or one from outside.
   */
  readonly openDesign: (
    design: Design,
    known?: { readonly history?: History | undefined; readonly worked?: EvaluatedDesign | undefined },
  ) => void;
  /** Takes over what became of the open design elsewhere, with its way back and forth; selection and view stay. */
  readonly follow: (history: History) => void;
  /** While a preview is shown, undo closes it and does no more; redo waits. */
  readonly undo: () => void;
  readonly redo: () => void;
  /** Shows another design in the place of the document, to look at only: every edit is refused meanwhile. */
  readonly showPreview: (showing: PreviewRequest) => void;
  readonly closePreview: () => void;
  /** Takes the preview over as one undo step. */
  readonly applyPreview: () => boolean;
  readonly select: (selection: Partial<Selection>) => void;
  readonly frame: (target: Partial<Selection>) => void;
  readonly notify: (
    text: string,
    tone?: NoticeTone,
    options?: { readonly undoable?: boolean; readonly takeBack?: () => void },
  ) => void;
  readonly dismiss: (id: number) => void;
  readonly setClipboard: (fragment: Fragment) => void;
  readonly setConnecting: (from: PortRef | null) => void;
};

/** Edits of one field that follow each other faster than this are one step back [ms]. */
const MERGE_WINDOW_MS = 1200;
const NOTICE_LIMIT = 4;

const PREVIEW_REFUSAL = "This is a preview: apply it or close it first.";

const TOO_LARGE =
  "The change was not made: the design would be too large to calculate. Signals would meet in too many ways.";

/** Without a limit: for examples and whatever else is known to be small. */
function fullyWorkedOut(design: Design, former?: Evaluation): EvaluatedDesign {
  const evaluation = evaluate(design, former);
  return { evaluation, report: reportOf(evaluation) };
}

let lastMerge: { key: string; time: number } | null = null;
let counter = 0;

export const useApp = create<AppState>()(
  temporal(
    (set, get) => {
      /** A design with all that follows from it, as one change of state. */
      const settled = (
        design: Design,
        worked: EvaluatedDesign,
      ): Pick<AppState, "design" | "evaluation" | "report" | "selection"> => ({
        design,
        ...worked,
        selection: stillThere(get().selection, design),
      });
      /** What follows from a design, or null and a notice where that would be beyond the budget. */
      const workedOut = (design: Design): EvaluatedDesign | null => {
        const worked = evaluateAndReportNow(design, { former: get().evaluation });
        if (!worked) get().notify(TOO_LARGE, "warning");
        return worked;
      };
      const step = (direction: "undo" | "redo") => {
        lastMerge = null;
        if (get().preview) {
          if (direction === "undo") get().closePreview();
          return;
        }
        const history = useApp.temporal.getState();
        history[direction]();
        const worked = workedOut(get().design);
        if (worked) set(settled(get().design, worked));
        else history[direction === "undo" ? "redo" : "undo"]();
      };

      return {
        design: EMPTY_DESIGN,
        ...fullyWorkedOut(EMPTY_DESIGN),
        preview: null,
        opened: 0,
        selection: NOTHING_SELECTED,
        clipboard: null,
        notices: [],
        framing: null,
        connecting: null,

        change: (asked, options) => {
          // Whoever thought of the change: what could not be opened again is not made.
          const edit = withinSizeLimits(get().design, asked);
          if (!edit.ok) {
            get().notify(edit.reason, "warning");
            return false;
          }
          if (get().preview) {
            get().notify(PREVIEW_REFUSAL, "warning");
            return false;
          }
          if (edit.design === get().design) return true;
          const worked = workedOut(edit.design);
          if (!worked) return false;
          const history = useApp.temporal.getState();
          const merged = joinsLastStep(options?.merge, options?.lasts ?? false);
          if (merged) history.pause();
          set(settled(edit.design, worked));
          if (merged) history.resume();
          if (edit.notes.length > 0) get().notify(edit.notes.join(" "), "info", { undoable: true });
          return true;
        },

        takeBack: (merge) => {
          if (lastMerge?.key !== merge || get().preview) return false;
          step("undo");
          return true;
        },

        openDesign: (design, { history = historyOf(design), worked } = {}) => {
          lastMerge = null;
          set((s) => ({
            ...settled(design, worked ?? fullyWorkedOut(design, get().evaluation)),
            preview: null,
            opened: s.opened + 1,
            selection: NOTHING_SELECTED,
            framing: null,
            connecting: null,
          }));
          setWay(history);
        },

        follow: (history) => {
          lastMerge = null;
          get().closePreview();
          const { pause, resume } = useApp.temporal.getState();
          pause();
          set(settled(presentOf(history), fullyWorkedOut(presentOf(history), get().evaluation)));
          resume();
          setWay(history);
        },

        undo: () => step("undo"),
        redo: () => step("redo"),

        showPreview: (showing) => {
          const { preview, evaluation, report, selection } = get();
          const worked = workedOut(showing.design);
          if (!worked) return;
          set({
            preview: previewOf(showing, preview?.document ?? { evaluation, report }),
            ...worked,
            selection: stillThere(selection, showing.design),
            connecting: null,
          });
        },
        closePreview: () => {
          const { preview } = get();
          if (!preview) return;
          set((s) => ({ ...preview.document, preview: null, selection: stillThere(s.selection, s.design) }));
        },
        applyPreview: () => {
          const { preview, closePreview, change } = get();
          if (!preview?.canApply) return false;
          closePreview();
          if (!preview.take) return change(done(preview.design));
          preview.take();
          return true;
        },

        select: (selection) => {
          const next = { ...NOTHING_SELECTED, ...selection };
          if (!sameSelection(get().selection, next)) set({ selection: next });
        },
        frame: (target) => set({ framing: { ...NOTHING_SELECTED, ...target, nonce: ++counter } }),

        notify: (text, tone = "info", options) =>
          set((s) => ({
            notices: [
              // A refusal tried again replaces its earlier notice instead of piling up.
              ...s.notices.filter((n) => n.text !== text).slice(1 - NOTICE_LIMIT),
              {
                id: ++counter,
                text,
                tone,
                undoable: options?.undoable ?? false,
                design: s.design,
                takeBack: options?.takeBack,
              },
            ],
          })),
        dismiss: (id) => set((s) => ({ notices: s.notices.filter((n) => n.id !== id) })),
        setClipboard: (clipboard) => set({ clipboard }),
        setConnecting: (connecting) => set((s) => ({ connecting: s.preview ? null : connecting })),
      };
    },
    {
      partialize: ({ design }) => ({ design }),
      equality: (a, b) => a.design === b.design,
      limit: HISTORY_LIMIT,
    },
  ),
);

/** The open design with what undo and redo lead to. */
export function openHistory(): History {
  const { pastStates, futureStates } = useApp.temporal.getState();
  const past = pastStates.flatMap(({ design }) => design ?? []);
  const future = futureStates.flatMap(({ design }) => design ?? []);
  return { states: [...past, useApp.getState().design, ...future.reverse()], at: past.length };
}

function setWay({ states, at }: History): void {
  const way = states.map((design) => ({ design }));
  useApp.temporal.setState({ pastStates: way.slice(0, at), futureStates: way.slice(at + 1).reverse() });
}

function joinsLastStep(key: string | undefined, lasts: boolean): boolean {
  const time = Date.now();
  const isSame = key !== undefined && lastMerge?.key === key;
  const joins = isSame && (lasts || time - (lastMerge?.time ?? 0) < MERGE_WINDOW_MS);
  lastMerge = key === undefined ? null : { key, time };
  return joins;
}

/** What of a selection exists in the design; the same object when all of it does. */
function stillThere(selection: Selection, design: Design): Selection {
  if (selection.parts.length === 0 && selection.wires.length === 0) return selection;
  const parts = new Set(design.parts.map((p) => p.id));
  const wires = new Set(design.wires.map(wireId));
  const next = {
    parts: selection.parts.filter((id) => parts.has(id)),
    wires: selection.wires.filter((id) => wires.has(id)),
  };
  return sameSelection(selection, next) ? selection : next;
}

function sameSelection(a: Selection, b: Selection): boolean {
  const same = (x: readonly string[], y: readonly string[]) =>
    x.length === y.length && x.every((id, i) => id === y[i]);
  return same(a.parts, b.parts) && same(a.wires, b.wires);
}
