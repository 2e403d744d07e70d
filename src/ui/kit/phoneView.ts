/** What a phone shows in its main view, and whose chain: view state of this window. */
import { create } from "zustand";

export type PhoneView = "chain" | "overview" | "drawing";

type State = {
  readonly view: PhoneView;
  /** Receiver or outlet whose chain is shown; null: the first. */
  readonly place: string | null;
  /** The sheet of what has no tab of its own. */
  readonly isMoreOpen: boolean;
};

export const usePhoneView = create<State>(() => ({ view: "chain", place: null, isMoreOpen: false }));

export function showPhoneView(view: PhoneView): void {
  usePhoneView.setState({ view });
}

/** Chooses whose chain is shown, without turning to it. */
export function choosePlace(place: string): void {
  usePhoneView.setState({ place });
}

export function showChainOf(place: string): void {
  usePhoneView.setState({ view: "chain", place });
}
