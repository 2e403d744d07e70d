/** Rule by rule: what a finding takes from whatever lies behind it, and of what it may be a consequence. */
import type { RuleId } from "../facts.ts";
import type { Finding, FindingOf } from "../finding.ts";
import type { Why } from "../missing.ts";
import type { LossRule } from "../receiverLossRules.ts";

/** What a part can hand on to those behind it, and what they can lack. */
export type Good =
  /** Direct current on a line; all the others travel downstream. */
  | "supply"
  /** A switch that can be set from below. */
  | "command"
  /** All that comes this way. */
  | "signal"
  /** A polarisation or half of the sky band, or the right one in its place. */
  | "plane"
  /** Some carriers. */
  | "band"
  /** Strength that is enough. */
  | "level"
  /** Strength that is not too much. */
  | "moderation"
  /** Freedom from noise, products and other signals. */
  | "quality"
  /** A user band of one's own. */
  | "user band"
  /** A cable that suits what it carries. */
  | "suitable cable"
  /** A kind of satellite feed that those behind can use. */
  | "suitable feed";

/** What is the matter with a culprit. Findings that name the same culprit for a like reason have one cause. */
export type Nature = "does not pass" | "wiring" | "user bands" | "too weak" | "too strong" | "clash" | "own";

export type Mechanism = {
  /** A finding follows only from one of an earlier stage, or of the same stage and nearer to the source. */
  readonly stage: number;
  readonly natures: readonly Nature[];
  readonly takes: readonly Good[];
  readonly lacks: readonly Good[];
};

/** How the findings of a rule come about. */
export function mechanismOf(finding: Finding): Mechanism {
  // Rule and facts of a finding belong together, which a look-up by its rule does not tell.
  const declared = MECHANISMS[finding.rule] as Mechanism | ((finding: Finding) => Mechanism);
  return typeof declared === "function" ? declared(finding) : declared;
}

const ALL_SIGNAL = ["signal", "plane", "band", "level", "quality"] as const;

const TOO_WEAK: Mechanism = {
  stage: 9,
  natures: ["too weak"],
  takes: ["level", "quality"],
  lacks: ["level", "band"],
};
const TOO_STRONG: Mechanism = {
  stage: 9,
  natures: ["too strong"],
  takes: ["moderation"],
  lacks: ["moderation"],
};

/** What a receiver misses comes last: it follows from all that takes away what it lacks. */
function lossOf({ facts }: FindingOf<LossRule>): Mechanism {
  const { natures, lacks } = LOSSES[facts.missing.why];
  return { stage: 12, natures, takes: [], lacks };
}

/** A converter that suits nobody: whatever cuts its feed was not made for it. */
function wrongFeedOf(finding: FindingOf<"wrong-feed">): Mechanism {
  const loss = lossOf(finding);
  return finding.parts[0] === finding.at.part ? loss : { ...loss, stage: 6, takes: ["suitable feed"] };
}

const OUT_OF_REACH = ["wiring", "does not pass", "user bands"] as const;

/** Where carriers are missing in each way. */
const LOSSES: Readonly<Record<Why, Pick<Mechanism, "natures" | "lacks">>> = {
  absent: { natures: OUT_OF_REACH, lacks: [...ALL_SIGNAL, "command"] },
  cut: { natures: ["does not pass"], lacks: ["band"] },
  "out of range": { natures: OUT_OF_REACH, lacks: ["band", "plane"] },
  "wrong feed": { natures: OUT_OF_REACH, lacks: ["plane", "command", "user band"] },
  "not selectable": { natures: OUT_OF_REACH, lacks: ["command", "plane", "user band", "signal"] },
  disturbed: { natures: ["clash", "too strong"], lacks: ["quality"] },
  noisy: { natures: ["too weak", "too strong"], lacks: ["level", "quality", "signal"] },
  blocked: { natures: ["too strong"], lacks: ["moderation"] },
};

/** Nothing else leads to it, and it leads to nothing else. */
const BY_ITSELF: Mechanism = { stage: 13, natures: ["own"], takes: [], lacks: [] };

const MECHANISMS: { readonly [R in RuleId]: Mechanism | ((finding: FindingOf<R>) => Mechanism) } = {
  loop: { stage: 0, natures: ["wiring"], takes: ALL_SIGNAL, lacks: [] },
  "blocked-view": { stage: 2, natures: ["too weak", "does not pass"], takes: ALL_SIGNAL, lacks: [] },
  "supply-overloaded": { stage: 1, natures: ["does not pass"], takes: ["supply"], lacks: [] },
  "over-voltage": BY_ITSELF,
  "no-supply": ({ facts }) =>
    facts.kind === "only with others"
      ? // Nobody suffers yet; whoever does has another cause, which this follows from.
        { stage: 6, natures: ["does not pass"], takes: [], lacks: ["supply", "command"] }
      : { stage: 2, natures: ["does not pass"], takes: [...ALL_SIGNAL, "command"], lacks: ["supply"] },
  "not-connected": (finding) => ({
    stage: 3,
    natures: ["wiring"],
    // One open input among others is no fault as long as nobody is missing what belongs there.
    takes: finding.severity === "note" ? [] : ALL_SIGNAL,
    // A wideband receiver on a shared cable has one lead only.
    lacks: ["suitable cable"],
  }),
  "open-end": { stage: 3, natures: ["own"], takes: [], lacks: [] },
  "user-band-conflict": { stage: 4, natures: ["user bands"], takes: ["user band", "command"], lacks: [] },
  "switched-output-shared": { stage: 4, natures: ["wiring"], takes: ["command", "plane"], lacks: [] },
  "command-lost": {
    stage: 5,
    natures: ["does not pass"],
    takes: ["command", "plane"],
    lacks: ["supply", "command"],
  },
  "wrong-quadrant": ({ facts }) => ({
    stage: 4,
    natures: ["wiring"],
    takes: facts.kind === "no quattro" ? ["plane", "band", "command"] : ["plane", "command"],
    lacks: [],
  }),
  "wrong-feed": wrongFeedOf,
  "plane-missing": lossOf,
  "too-many-tuners": { stage: 6, natures: ["user bands"], takes: [], lacks: ["user band"] },
  "band-cut": {
    stage: 7,
    natures: ["does not pass"],
    takes: ["band", "level"],
    lacks: ["suitable cable", "suitable feed"],
  },
  // What comes in from a source too strongly is too strong behind the part as well.
  overload: ({ facts }) => ({
    stage: 7,
    natures: ["too strong"],
    takes: facts.because === "input" ? ["quality", "moderation"] : ["quality"],
    lacks: ["moderation"],
  }),
  // The gain control holds the level behind it only within its window.
  "stacking-input": (finding) =>
    finding.at.side === "too much"
      ? { stage: 7, natures: ["too strong"], takes: ["quality"], lacks: ["moderation"] }
      : { stage: 7, natures: ["too weak"], takes: ["level", "quality"], lacks: ["level", "band"] },
  "wideband-shared": { stage: 2, natures: ["wiring"], takes: ["suitable cable"], lacks: [] },
  "shared-frequencies": { stage: 8, natures: ["clash"], takes: ["quality"], lacks: ["suitable cable"] },
  "same-signal-twice": { stage: 8, natures: ["clash"], takes: [], lacks: [] },
  "tuner-blocked": ({ facts, value = 0, limit = 0 }) => {
    if (facts.kind === "beside")
      return { stage: 8, natures: ["clash", "too strong"], takes: [], lacks: ["moderation"] };
    // Of an amplifier and a tuner behind it the one comes first that gets more too much; what is not wanted at all is told
    // where it first does harm.
    const isFirst = facts.culprit?.does !== "overdriven" && (facts.drivenDb ?? 0) < value - limit;
    return isFirst
      ? { stage: 6, natures: ["too strong"], takes: ["moderation", "quality"], lacks: [] }
      : { stage: 8, natures: ["too strong"], takes: ["moderation"], lacks: ["moderation"] };
  },
  "level-limits": (finding) => {
    const mechanism = finding.at.side === "too much" ? TOO_STRONG : TOO_WEAK;
    // Taps in the wrong order give too much to some and too little to others.
    return finding.facts.culprit?.does === "wrong order" ? { ...mechanism, natures: ["wiring"] } : mechanism;
  },
  "level-difference": { stage: 10, natures: ["too weak", "too strong"], takes: [], lacks: ["level"] },
  slope: { stage: 10, natures: ["too weak", "too strong"], takes: [], lacks: ["level"] },
  "low-carrier-to-noise": {
    stage: 11,
    natures: ["too weak", "too strong", "clash"],
    takes: ["quality"],
    lacks: ["quality", "level"],
  },
  intermodulation: {
    stage: 11,
    natures: ["too strong"],
    takes: ["quality"],
    lacks: ["quality", "moderation"],
  },
  "receiver-misses": lossOf,
  "many-alternatives": BY_ITSELF,
  "motor-line": BY_ITSELF,
  "above-band-edge": BY_ITSELF,
  // An outlet on the line itself, where the legs of its tap are mixed up, gets too much as well.
  "dwelling-isolation": (finding) =>
    finding.parts[0] === finding.at.part ? BY_ITSELF : { ...BY_ITSELF, lacks: ["moderation"] },
  "dead-stub": { stage: 8, natures: ["too weak"], takes: ["level", "quality"], lacks: [] },
};
