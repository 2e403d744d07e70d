/** The examples by what they teach. */
import { EXAMPLES, type Example } from "../../../design/examples.ts";

export type ExampleGroup = { readonly lesson: string; readonly examples: readonly Example[] };

/** In the order in which they teach; an example is in one group. */
const LESSONS: readonly (readonly [lesson: string, keys: readonly string[]])[] = [
  ["How one cable carries everything", ["house-universal"]],
  ["Why the combined feed fails", ["house-wideband-fails"]],
  ["What cures a combined feed", ["house-separate-cables", "house-stacked"]],
  ["Why two receivers cannot share an output", ["split-switched-output"]],
  ["How a block of flats is fed", ["block-multiswitch", "block-stacked"]],
  ["What a long cable takes", ["long-steel-drop"]],
];

export const EXAMPLE_GROUPS: readonly ExampleGroup[] = LESSONS.map(([lesson, keys]) => ({
  lesson,
  examples: EXAMPLES.filter(({ key }) => keys.includes(key)),
}));
