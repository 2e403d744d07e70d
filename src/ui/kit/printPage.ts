/** What comes out on paper next, where it is not the sheet of the design. */
import type { ReactNode } from "react";

let asked: (() => ReactNode) | null = null;

/** Prints one page of its own; afterwards printing means the design again. */
export function printPage(page: () => ReactNode): void {
  asked = page;
  window.addEventListener("afterprint", () => (asked = null), { once: true });
  window.print();
}

/** The page asked for; null for the usual sheet. */
export function pageAsked(): ReactNode | null {
  return asked?.() ?? null;
}
