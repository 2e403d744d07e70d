/** Numbers and foreign text inside the sentences of this layer. */
import { numeral } from "../words/numbers.ts";

/** "−5", "0.25", "5012"; words where digits would say nothing. */
export function shownNumber(value: number): string {
  const size = Math.abs(value);
  if (Number.isNaN(value)) return "not a number";
  if (size >= 1e15) return value < 0 ? "a number far below zero" : "a number far too large";
  if (size > 0 && size < 1e-9) return "almost 0";
  return numeral(value, 15);
}

const MOST_SIGNS = 40;

/**
 * A text that somebody else wrote, in quotes: short, on one line, without quotes of its own, without signs
 * that cannot be seen or that mean something to a machine.
 */
export function quotedText(text: string): string {
  // Whatever is longer is cut before the pattern looks at it; a sign may take two places.
  const plain = text
    .slice(0, 4 * MOST_SIGNS)
    .replace(/[\p{C}\p{Z}\\“”]+/gu, " ")
    .trim();
  const signs = [...plain];
  const isShort = signs.length <= MOST_SIGNS && text.length <= 4 * MOST_SIGNS;
  return `“${isShort ? plain : `${signs.slice(0, MOST_SIGNS).join("").trim()}…`}”`;
}

/** "a", "a and b", "a, b and c", "a, b, c and 14 more". */
export function someOf(words: readonly string[], of = words.length): string {
  const shown = words.slice(0, 3);
  const more = of - shown.length;
  const last = more > 0 ? `${shownNumber(more)} more` : shown.pop();
  return shown.length === 0 ? (last ?? "") : `${shown.join(", ")} and ${last}`;
}
