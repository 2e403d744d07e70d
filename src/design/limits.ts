/**
 * How large a document may be. What comes from outside is held to it before any costly work, so that no file or
 * link can freeze the page; edits are held to it too (`sizeLimits.ts`), so that all that the app allows can be
 * written and opened again. What the app itself has stored is opened whatever its size.
 */

export const LIMITS = {
  /**
   * Length of a file's text [characters]. More than the largest design that edits allow comes to when it is
   * written without typical values.
   */
  textLength: 30_000_000,
  /** Values of all kinds in a text: numbers, texts, lists, groups. Reading one takes longer than skipping a space. */
  values: 1_500_000,
  /** Unpacked size of a link [bytes]. */
  linkBytes: 2_000_000,
  /** Of all variants together. */
  parts: 5_000,
  wires: 20_000,
  /** Rows in the lists of all parts of all variants; a list that stands at its typical value does not count. */
  rows: 60_000,
  /** Beside the one at work. */
  variants: 20,
  variantNameLength: 60,
  /** Nesting of brackets and braces. */
  depth: 20,
  labelLength: 200,
  titleLength: 200,
  lessonLength: 500,
  idLength: 40,
  /** Entries of a list inside the options of one part. */
  listLength: 1_000,
  /** Distance of a part from the canvas origin [px]. */
  reach: 1_000_000,
} as const;

/** Letters, digits, "-" and "_"; and no name that every JavaScript object answers to. */
export function isUsableId(id: string): boolean {
  return id.length <= LIMITS.idLength && /^[A-Za-z0-9_-]+$/.test(id) && !(id in Object.prototype);
}
