/**
 * Numbers as people read them, in one form everywhere: digits and decimal sign of one language, a true minus sign, and
 * from five digits on a narrow gap before every third (SI Brochure, 9th edition, 5.4.4): "62.5", "−4", "2150", "11 778".
 */

let locale = "en";
let formats = new Map<string, Intl.NumberFormat>();

/** Stands where there is no number. */
export const NO_FIGURE = "–";

const GAP = "\u202f";

/** From now on numbers are written as in this language, where the browser knows it. Digits stay 0 to 9. */
export function writeNumbersAs(language: string): void {
  locale = isKnown(language) ? language : "en";
  formats = new Map();
}

function isKnown(language: string): boolean {
  try {
    return Intl.NumberFormat.supportedLocalesOf(language).length > 0;
  } catch {
    // Some systems hand out a name that is no language at all: "C", "POSIX".
    return false;
  }
}

/** A number with at most and at least so many decimals; "–" where there is none. */
export function numeral(value: number | undefined, most = 1, least = 0): string {
  if (value === undefined || !Number.isFinite(value)) return NO_FIGURE;
  // Most numbers are short: nothing is grouped in them, and a large drawing writes thousands.
  if (Math.abs(value) < SHORT) {
    const text = formatOf(most, least).format(Math.abs(value));
    return value < 0 && /[1-9]/.test(text) ? `−${text}` : text;
  }
  return formatOf(most, least)
    .formatToParts(value)
    .map((part) => (part.type === "group" ? GAP : part.type === "minusSign" ? "−" : part.value))
    .join("")
    .replace(DIRECTION, "");
}

/** Below this no rounding leads to five digits. */
const SHORT = 9999;

/** A value as somebody set it: with the decimals that it has, at most four. */
export function numeralAsSet(value: number): string {
  return numeral(value, 4);
}

/** Marks of writing direction that some languages put around a sign: the page runs from left to right. */
const DIRECTION = /[\u061c\u200e\u200f]/g;

function formatOf(most: number, least: number): Intl.NumberFormat {
  const key = `${most} ${least}`;
  const known = formats.get(key);
  if (known) return known;
  const made = new Intl.NumberFormat(locale, {
    maximumFractionDigits: most,
    minimumFractionDigits: least,
    // Four digits stay together, and what rounds to zero has no sign.
    useGrouping: "min2",
    signDisplay: "negative",
    numberingSystem: "latn",
  });
  formats.set(key, made);
  return made;
}
