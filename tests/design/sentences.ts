/** What every sentence about a file or a link must be, whoever broke it. */

/** Traces of the schema library, of code and of paths: none may stand in what a user reads. */
const TRACES = [
  "Invalid input",
  "expected ",
  "ZodError",
  "undefined",
  "NaN",
  "[object",
  "options.",
  "parts[",
  "wires[",
  "variants[",
  "\\",
];

/** What is wrong with a sentence; null for a good one. */
export function sentenceTrouble(sentence: string): string | null {
  if (!/^[\p{Lu}“]/u.test(sentence)) return "does not begin like a sentence";
  if (!/[^.]\.$/.test(sentence)) return "does not end with one full stop";
  if (sentence.length > 300) return "is longer than 300 characters";
  if (/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/u.test(sentence)) return "holds a sign that cannot be seen";
  const trace = TRACES.find((each) => sentence.includes(each));
  if (trace !== undefined) return `holds “${trace}”`;
  if (/\b(?:true|false|null)\b/.test(sentence.replace(/“[^”]*”/g, ""))) return "holds a word of code";
  if (/ {2}|“ | ”|\?\?|\.\./.test(sentence)) return "is not typed well";
  return null;
}
