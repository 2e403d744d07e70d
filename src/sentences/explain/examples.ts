/** For every rule a tiny design where it speaks and one where it stays silent: for the rule book, and its own test. */
import type { Design } from "../../design/design.ts";
import type { Settings } from "../../design/settings.ts";
import { CONTROL_EXAMPLES } from "./examples/control.ts";
import { ENDS_EXAMPLES } from "./examples/ends.ts";
import { FREQUENCIES_EXAMPLES } from "./examples/frequencies.ts";
import { LEVELS_EXAMPLES } from "./examples/levels.ts";
import { type Sketch, sketch } from "./sketch.ts";

/** Title, parts and wires as `sketch` reads them. */
type Sketched = readonly [title: string, parts: Sketch, wires: string];

export type RuleSketch = {
  readonly rule: string;
  readonly speaks: Sketched;
  readonly silent: Sketched;
  /** Where it speaks as well, of something else. */
  readonly more?: readonly Sketched[];
  /** Where the usual settings would not do. */
  readonly settings?: Settings;
};

export type RuleExample = { readonly title: string; readonly load: () => Design };

export type RuleExamples = {
  readonly rule: string;
  readonly speaks: RuleExample;
  readonly silent: RuleExample;
  /** Further designs where it speaks. */
  readonly more: readonly RuleExample[];
};

export const RULE_EXAMPLES: readonly RuleExamples[] = [
  ...ENDS_EXAMPLES,
  ...CONTROL_EXAMPLES,
  ...FREQUENCIES_EXAMPLES,
  ...LEVELS_EXAMPLES,
].map(({ rule, speaks, silent, more = [], settings }) => ({
  rule,
  speaks: example(speaks, settings),
  silent: example(silent, settings),
  more: more.map((each) => example(each, settings)),
}));

function example([words, parts, wires]: Sketched, settings: Settings | undefined): RuleExample {
  const title = words.charAt(0).toUpperCase() + words.slice(1);
  return { title, load: () => sketch(title, parts, wires, settings) };
}
