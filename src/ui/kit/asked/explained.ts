/** Which findings stand explained: view state of this window. */
import { type RefObject, useEffect } from "react";
import { create } from "zustand";
import type { Finding } from "../../../findings/finding.ts";
import { afterLayout } from "../afterLayout.ts";

type Opened = {
  readonly keys: ReadonlySet<string>;
  /** The one to be brought into sight as soon as it is drawn. */
  readonly wanted: string | null;
};

const useOpened = create<Opened>(() => ({ keys: new Set(), wanted: null }));

export function useExplained(finding: Finding): boolean {
  return useOpened((s) => s.keys.has(finding.id));
}

export function setExplained(finding: Finding, open: boolean): void {
  const keys = new Set(useOpened.getState().keys);
  if (open) keys.add(finding.id);
  else keys.delete(finding.id);
  useOpened.setState({ keys });
}

/** Opens the explanation of a finding, and lets its row come into sight. */
export function revealExplained(finding: Finding): void {
  setExplained(finding, true);
  useOpened.setState({ wanted: finding.id });
}

/** Brings a row into sight once, when its finding is asked for. */
export function useScrollIntoSight(finding: Finding, row: RefObject<HTMLElement | null>): void {
  const isWanted = useOpened((s) => s.wanted === finding.id);
  useEffect(() => {
    if (!isWanted) return;
    useOpened.setState({ wanted: null });
    for (let fold = foldOf(row.current); fold; fold = foldOf(fold.parentElement)) fold.open = true;
    afterLayout(() => row.current && toTop(row.current));
  }, [isWanted, row]);
}

function foldOf(element: HTMLElement | null): HTMLDetailsElement | null {
  return element?.closest("details") ?? null;
}

/** Scrolls the pane of a row and nothing else: the browser's own way would move the page around it as well. */
function toTop(row: HTMLElement): void {
  const pane = row.closest("[data-pane-body]");
  if (pane) pane.scrollTop += row.getBoundingClientRect().top - pane.getBoundingClientRect().top;
}
