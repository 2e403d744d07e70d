/** The glossary as a place, and the term that somebody wants to look up there. */
import { create } from "zustand";
import { openDialog } from "../panes.ts";

/** What is searched for; "" for all. */
export const useGlossary = create<{ readonly query: string }>(() => ({ query: "" }));

export function openGlossary(query = ""): void {
  useGlossary.setState({ query });
  openDialog("glossary");
}
