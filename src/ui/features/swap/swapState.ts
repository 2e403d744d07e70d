/** The swap that is asked about: view state of this window. */
import { create } from "zustand";

export type SwapQuestion = { readonly part: string; readonly kind: string };

export const useSwapAsked = create<{ readonly question: SwapQuestion | null }>(() => ({ question: null }));

export function askSwap(question: SwapQuestion | null): void {
  useSwapAsked.setState({ question });
}
