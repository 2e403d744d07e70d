/** Phrases of sentences about faults: what is counted, and what is wrong with a text that should be JSON. */
import { type Forms, plural } from "../words/plural.ts";
import type { LimitedThing, SyntaxFault } from "./fault.ts";
import { quotedText } from "./shown.ts";

const COUNTED: Readonly<Record<LimitedThing, Forms>> = {
  parts: { one: (n) => `${n} part`, other: (n) => `${n} parts` },
  wires: { one: (n) => `${n} wire`, other: (n) => `${n} wires` },
  rows: {
    one: (n) => `${n} row in the lists of its parts`,
    other: (n) => `${n} rows in the lists of its parts`,
  },
  variants: {
    one: (n) => `${n} variant beside the active one`,
    other: (n) => `${n} variants beside the active one`,
  },
};

/** "1 part", "5,012 parts". */
export function countWords(count: number, what: LimitedThing): string {
  return plural(count, COUNTED[what]);
}

/** Follows "at line 3, column 7, ". */
export function syntaxWords(fault: SyntaxFault): string {
  switch (fault.type) {
    case "empty":
      return "the text is empty";
    case "unclosed text":
      return "a text in quotes is never closed";
    case "break in text":
      return "a line break or control character stands inside quotes";
    case "escape":
      return "an unknown escape follows a backslash";
    case "ends":
      return `the text ends where ${fault.awaited} should follow`;
    case "instead":
      return `${fault.awaited} should stand instead of ${signWords(fault.found)}`;
    case "too deep":
      return `brackets are nested more than ${fault.most} deep`;
  }
}

function signWords(sign: string): string {
  if (sign === "\\") return "a backslash";
  const shown = quotedText(sign);
  return shown === "“”" ? "an invisible character" : shown;
}
