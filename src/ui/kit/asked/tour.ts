/** The way into the tour, and how far it is: view state of this window. */
import { create } from "zustand";

type TourState = {
  /** Step that is shown, counted from 0; null: no tour. */
  readonly step: number | null;
  /** What had the focus when the tour began, to go back to. */
  readonly opener: HTMLElement | null;
};

export const useTour = create<TourState>(() => ({ step: null, opener: null }));

export function startTour(): void {
  useTour.setState({ step: 0, opener: null });
}

/** Takes the focus; to be told when a dialog that the tour was asked for in has gone and given the focus back. */
export function focusTour(card: HTMLElement | null): void {
  const { activeElement } = document;
  const opener =
    activeElement instanceof HTMLElement && activeElement !== document.body ? activeElement : null;
  useTour.setState({ opener });
  card?.focus();
}

/** Ends it; the focus goes back to where it came from, or to the drawing where that is gone. */
export function endTour(): void {
  const { opener } = useTour.getState();
  useTour.setState({ step: null, opener: null });
  const isThere = opener?.isConnected && opener.getClientRects().length > 0;
  const back = isThere ? opener : document.querySelector<HTMLElement>('[data-region="drawing"]');
  back?.focus();
}
