/**
 * What no text for people may contain. English number agreement (one: singular, all else plural) and the usual rules
 * of typesetting; nothing here is taken from the texts of the program.
 */

const PLURALS =
  "carriers|channels|receivers|tuners|parts|wires|bands|blocks|stations|multiplexes|transponders|outputs|inputs|ways|legs|" +
  "errors|warnings|notes|findings|places|faults|cables|loads|steps|rows|settings|positions|points|hints|measurements|minutes|" +
  "hours|days|kinds|connections|feeds|outlets|users";
const SINGULARS =
  "carrier|channel|receiver|tuner|part|wire|user band|block|station|multiplex|transponder|leg|error|warning|finding|place|" +
  "fault|cable|measurement|minute|hour|day|connection|outlet|satellite transponder|TV channel|DAB block|FM station";
const VERBS_OF_MANY = "are|have|do|were|come|need|lose|gain|work|fail|stay|arrive|stand|draw|hang";
const VERBS_OF_ONE = "is|has|does|was|comes|needs|loses|gains|works|fails|stays|arrives|stands|draws|hangs";

/** A number on its own, neither part of another one nor the name of something ("user band 3 is …"). */
const ONE = "(?<![A-Za-z\\d.,–−-])1";
const MANY = "(?<![A-Za-z\\d.,–−-])(?:[02-9]|\\d+\\d|\\d+\\.\\d+)";
/** Where a clause begins. */
const START = "(?:^|[.:;,] |\\band )";

export const BAD: readonly (readonly [what: string, pattern: RegExp])[] = [
  ["plural after 1", new RegExp(`${ONE} (?:[A-Za-z]+ ){0,2}(?:${PLURALS})\\b(?<!1 of .*)`)],
  ["singular after many", new RegExp(`${MANY} (?:${SINGULARS})\\b(?!-)`)],
  ["verb of many after 1", new RegExp(`${START}1 (?:${VERBS_OF_MANY})\\b`)],
  ["verb of many after 1 of many", new RegExp(`\\b1 of \\d+ (?:[A-Za-z]+ ){1,3}(?:${VERBS_OF_MANY})\\b`)],
  ["verb of one after many", new RegExp(`${START}(?:[02-9]|\\d+\\d) (?:${VERBS_OF_ONE})\\b`)],
  [
    "verb of many after the only one",
    new RegExp(`\\bthe (?:one|only) (?:[A-Za-z]+ ){0,2}(?:${VERBS_OF_MANY})\\b`),
  ],
  ["the one", /\bthe one (?:TV|DAB|FM|satellite|user|carrier)/],
  ["1 of 1", /(?<!\d)1 of 1(?![\d.])/],
  ["all 2", /\b[Aa]ll [12] [A-Za-z]/],
  ["0 of", /(?<![\d.,])0 of \d/],
  ["quantity of one with a verb of many", new RegExp(`${ONE} (?:dB|V|mA|dBµV) (?:are|arrive)\\b`)],
  ["not the …", /\bnot the (?:one|only)\b/],
  ["formula of one carrier", /10·log(?:10|₁₀)\([12]\/2\)|7\.5·log(?:10|₁₀)\(1\)|\([12] − 1\)/],
  ["optional letter", /\(s\)|\(es\)/],
  ["two spaces", /\s{2}|\u00a0\s/],
  ["space before a stop", / [,.;:!?)]|\( /],
  ["two stops", /\.\.|,,|;;|::|,\.|:\.|;\.|\.;|\.,/],
  ["nothing in brackets", /\(\)|“”|\[\]/],
  ["a value of the machine", /undefined|NaN|\bnull\b|\[object|Infinity|\bfalse\b|\btrue\b/],
  ["an unfilled mark", /[⟦⟧]|\$\{|\{n\}/],
  ["a word twice", /\b([a-z]{2,}) \1\b/i],
  // "input A of a switch" and "the leads on A and B" are names, and no articles.
  [
    "an for a or a for an",
    /\b[Aa]n (?:[bcdfgjklmnpqrstvwxyz]|U|univ|use)|(?<!\b(?:inputs?|leads on) )\b[Aa] (?:[aeio]|un(?!i))/,
  ],
  ["a straight quotation mark", /"/],
  ["a contraction", /n't\b|\bit's\b|\bthat's\b|'(?:ll|re|ve)\b/],
];

/** What is wrong with a text; labels in their marks are the user's own. */
export function wrongIn({
  words,
  isSentence,
}: {
  readonly words: string;
  readonly isSentence: boolean;
}): string[] {
  const bare = words.replace(/“[^”]+”/g, "“L”");
  return [
    ...BAD.filter(([, pattern]) => pattern.test(bare)).map(([what]) => what),
    ...(isSentence && !/^[A-Z0-9“]/.test(bare) ? ["a small letter at the start"] : []),
    ...(isSentence && !/[.!?]$/.test(bare) ? ["no stop at the end"] : []),
  ];
}
