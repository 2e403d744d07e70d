/** The question now on the screen: view state of this window, not of the design. */
import { create } from "zustand";
import { useApp } from "../../../store/app.ts";
import { type SheetPane, showPane, usePanes } from "../../kit/panes.ts";
import type { Question } from "./question.ts";

type Asked = {
  readonly question: Question;
  /** Which of the designs opened so far it is about. */
  readonly opened: number;
  /** How the panes stood before, to return to. */
  readonly sheet: SheetPane | null;
  readonly spectrumOpen: boolean;
  /** What had the focus. */
  readonly asker: Element | null;
};

const useAsked = create<{ readonly asked: Asked | null }>(() => ({ asked: null }));

/** The question about the open design; null when none is asked. */
export function useQuestion(): Question | null {
  const opened = useApp((s) => s.opened);
  return useAsked(({ asked }) => (asked?.opened === opened ? asked.question : null));
}

export function currentQuestion(): Question | null {
  const { asked } = useAsked.getState();
  return asked?.opened === useApp.getState().opened ? asked.question : null;
}

/** Shows how a level came about, in the place of the spectrum. */
export function showOrigin(question: Question): void {
  const { sheet, spectrumOpen } = usePanes.getState();
  const before = currentQuestion() ? useAsked.getState().asked : null;
  useAsked.setState({
    asked: {
      question,
      opened: useApp.getState().opened,
      sheet: before ? before.sheet : sheet,
      spectrumOpen: before ? before.spectrumOpen : spectrumOpen,
      asker: document.activeElement,
    },
  });
  showPane("spectrum");
}

/** Puts the question away and the panes back as they were. */
export function closeQuestion(): void {
  const { asked } = useAsked.getState();
  useAsked.setState({ asked: null });
  if (!asked) return;
  usePanes.setState({ sheet: asked.sheet, spectrumOpen: asked.spectrumOpen });
  if (asked.asker instanceof HTMLElement && asked.asker.isConnected) asked.asker.focus();
}

/** Puts the question away because something else was chosen: the panes stay. */
export function clearQuestion(): void {
  if (useAsked.getState().asked) useAsked.setState({ asked: null });
}
