/**
 * The style sheet of the project's texts: one thing has one term, and it is that of the trade. Sources: EN 50494 and
 * EN 50607 (SCR, dSCR), EN 60728-1 (loop-through and terminated outlets, isolation, attenuator), common practice in
 * Britain for the rest. Nothing here is taken from the texts of the program.
 */
import type { Phrase } from "./phrases.ts";

/** A word that no text uses, and what it says instead. */
const BANNED: readonly (readonly [found: RegExp, instead: string])[] = [
  [/\bjoin(?:ed|s|ing)?\b/i, "connect, or combine for signals"],
  [/\bconverters?\b/i, "LNB or multiswitch"],
  [/\blets? go\b/i, "deselect, drop"],
  [/\banew\b/i, "again"],
  [/\bstands? (?:otherwise|at)\b/i, "in another position, set to"],
  [/\b(?:dwellings?|homes)\b/i, "flat"],
  [/\breckon/i, "calculate"],
  [/\bwork(?:ed|s|ing)? (?:it )?out\b/i, "calculate"],
  [/\bcomput(?:e|ed|es|ing)\b/i, "calculate"],
  [/\bpads?\b/i, "attenuator"],
  [/\bdirect current\b/i, "DC"],
  [/\bsupply and tone pass\b/i, "DC and 22 kHz pass"],
  [/\bdecoupl/i, "isolation"],
  [/\bmultiplex(?:es)?\b/i, "TV channel"],
  [/\b(?:wall )?plates?\b/i, "outlet"],
  [/\bterminating loads?\b|75 Ω loads?\b/i, "terminator"],
  [/\bbad joints?\b/i, "faulty joint"],
  [/\b(?:unwanted )?pick-up\b/i, "ingress"],
  [/\bmobile phone filters?\b/i, "4G/5G filter"],
  [/\bchannel-stack/i, "single-cable"],
  [/\bsingle-cable (?:LNB|receiver|unit)s?\b/i, "SCR/dSCR LNB, receiver, multiswitch"],
  [/\bhangs?\b|\bhanging\b/i, "connect, be connected"],
  [/^Gone\b/, "removed, lost"],
  [/\bbroke off\b/i, "stopped"],
  [/\btaken away\b/i, "removed"],
  [/\bmends?\b|\bmended\b/i, "repair, cure"],
  [/\bat work now\b/i, "active"],
  [/\bscatters?\b/i, "spread"],
  [/"/, "curly quotation marks"],
  [/\p{L}'\p{L}/u, "a curly apostrophe"],
  [/n[’']t\b|\b(?:it|that|there|who|what|let)[’']s\b|[’'](?:ll|re|ve|m)\b/i, "no contraction"],
];

/**
 * Words of the trade that somebody outside it does not know: whichever of them a text uses stands in the glossary of the
 * app. Sources: terms of EN 60728-1, EN 50494, EN 50607, EN 61319-1, and common practice in Britain.
 */
export const TRADE_WORDS: readonly string[] = [
  "13/18 V",
  "22 kHz",
  "4G/5G filter",
  "attenuator",
  "azimuth",
  "band edge",
  "BER",
  "bonding",
  "C/I",
  "C/N",
  "copper-clad steel",
  "cross-polarisation",
  "dBµV",
  "DC and 22 kHz pass",
  "DC block",
  "derating",
  "diplexer",
  "DiSEqC",
  "dSCR",
  "EIRP",
  "elevation",
  "equaliser",
  "faulty joint",
  "headend",
  "high band",
  "ingress",
  "in-line IF amplifier",
  "intermodulation",
  "isolation",
  "legacy (switched) output",
  "LNB",
  "LNB skew",
  "loop resistance",
  "loop-through outlet",
  "low band",
  "masthead amplifier",
  "MER",
  "modulation",
  "multiswitch",
  "noise figure",
  "oscillator",
  "pointing loss",
  "polarisation",
  "position command",
  "position switch",
  "power inserter",
  "quad",
  "quadrant",
  "quattro",
  "rated output",
  "return loss",
  "ripple",
  "riser",
  "satellite IF",
  "SCR",
  "slope",
  "splitter",
  "switched output",
  "symbol rate",
  "terminated outlet",
  "terminator",
  "tilt",
  "transponder",
  "triplexer",
  "trunk",
  "universal LNB",
  "user band",
  "wideband LNB",
];

/** Values that the program tells apart, of types that the compiler holds: nobody reads them. */
const KEYS: ReadonlySet<string> = new Set([
  "bad joint",
  "converter feed",
  "direct current block",
  "input pad",
  "riser plate",
  "Home",
]);

/** What a part was called before: links leave out a label that is made of it. And words by which parts are searched for. */
const FORMER_NAMES: ReadonlySet<string> = new Set([
  "Bad joint",
  "Channel-stacking LNB",
  "Mobile phone filter",
  "Single-cable receiver",
  "Stacking converter",
  "Terminating load",
  "Unwanted pick-up",
  "low-noise block converter",
  "wall plate",
]);

/** The plate of a unit is what its maker prints its values on. */
const MAKERS_PLATE = /see the unit’s plate/;

/** Sketches of example designs, JSON, selectors, how a command is called: syntax. */
const SYNTAX = /^Usage: |\w\.\w+ > \w|^[[{"]|": |\[[\w-]+[~^|*$]?="/;

function isRead({ words, file }: Phrase): boolean {
  if (file.startsWith("src/build/") || KEYS.has(words) || FORMER_NAMES.has(words)) return false;
  return !MAKERS_PLATE.test(words) && !SYNTAX.test(words);
}

/** What the style sheet says against a text: "src/a.ts:3 “Join two parts”: connect". */
export function against(phrase: Phrase): readonly string[] {
  if (!isRead(phrase)) return [];
  const { file, line, words } = phrase;
  return [
    ...BANNED.filter(([found]) => found.test(words)).map(([, instead]) => instead),
    ...sentencesIn(words)
      .filter((sentence) => wordsIn(sentence) > MOST_WORDS)
      .map((sentence) => `${wordsIn(sentence)} words`),
  ].map((what) => `${file}:${line} “${words}”: ${what}`);
}

export const MOST_WORDS = 25;

/** Sentences of a text; a stop within a number or an abbreviation of the trade ends none. */
export function sentencesIn(words: string): readonly string[] {
  return words.split(/(?<=[.!?]) +(?=[\p{Lu}\d“…])/u);
}

/** Words of a sentence: whatever holds a letter or a digit, so a part's name of two words counts as two; a number is one. */
export function wordsIn(sentence: string): number {
  return sentence.split(/[^\S\u202f]+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
}
