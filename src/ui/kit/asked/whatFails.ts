/** What the pane of faults is about: one thing that might fail, or the search for what did. */
import { create } from "zustand";
import { useApp } from "../../../store/app.ts";
import { showPane } from "../panes.ts";

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

export function askWhatFails(subject: Subject): void {
  useApp.getState().closePreview();
  useFaultsView.setState({ mode: "what-if", subject, chosen: null });
  showPane("faults");
}

export function findFault(): void {
  useFaultsView.setState({ mode: "find" });
  showPane("faults");
}
