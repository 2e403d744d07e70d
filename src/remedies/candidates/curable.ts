/**
 * Rules that some idea of their own exists for. Apart from the ideas, so that whoever only asks whether there are any
 * needs none of them; the table of ideas has exactly these.
 */
import type { RuleId } from "../../findings/facts.ts";

export const CURABLE_RULES = [
  "loop",
  "blocked-view",
  "supply-overloaded",
  "no-supply",
  "not-connected",
  "wideband-shared",
  "shared-frequencies",
  "overload",
  "stacking-input",
  "band-cut",
  "switched-output-shared",
  "wrong-quadrant",
  "command-lost",
  "motor-line",
  "user-band-conflict",
  "wrong-feed",
  "too-many-tuners",
  "plane-missing",
  "receiver-misses",
  "tuner-blocked",
  "level-limits",
  "low-carrier-to-noise",
  "intermodulation",
  "level-difference",
  "slope",
  "same-signal-twice",
  "open-end",
  "dwelling-isolation",
  "dead-stub",
] as const satisfies readonly RuleId[];

export type CurableRule = (typeof CURABLE_RULES)[number];
