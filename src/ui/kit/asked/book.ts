/** The rule book as a place: which rule is open, and how an address leads to it. */
import { create } from "zustand";
import { openDialog, usePanes } from "../panes.ts";

/** `?rules=band-cut` opens the book at a rule, `?rules` at its first. */
const PARAMETER = "rules";

/** The rule that is read, as it was asked for; "" for none in particular. */
export const useBook = create<{ readonly rule: string }>(() => ({ rule: "" }));

export function openRuleBook(rule = ""): void {
  useBook.setState({ rule });
  openDialog("rules");
}

export function closeRuleBook(): void {
  if (usePanes.getState().dialog === "rules") openDialog(null);
}

/** The rule that an address asks for; null where it asks for none. */
export function ruleInAddress(href: string): string | null {
  try {
    return new URL(href).searchParams.get(PARAMETER);
  } catch {
    return null;
  }
}

/** The address with a rule in it, or, for null, without any; everything else stays. */
export function addressOfRule(href: string, rule: string | null): string {
  const url = new URL(href);
  if (rule === null) url.searchParams.delete(PARAMETER);
  else url.searchParams.set(PARAMETER, rule);
  return url.href;
}

/** Opens the book where the address of the page asks for it. */
export function openBookFromAddress(): void {
  const rule = ruleInAddress(window.location.href);
  if (rule !== null) openRuleBook(rule);
}
