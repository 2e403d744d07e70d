/** What the pane of faults is about: one thing that might fail, or the search for what did. */
import { create } from "zustand";

export type Subject =
  | { readonly type: "part"; readonly id: string }
  | { readonly type: "wire"; readonly id: string };

type FaultsView = {
  readonly mode: "find" | "what-if";
  readonly subject: Subject | null;
  /** Id of the fault that is looked at. */
  readonly chosen: string | null;
};

export const useFaultsView = create<FaultsView>(() => ({ mode: "find", subject: null, chosen: null }));
