/** One design under several conditions, in words: names of the conditions, what they assume, and the headline. */
import type { OperatingCondition } from "../design/operatingConditions.ts";
import type { Verdict } from "../findings/finding.ts";
import { type ConditionColumn, countUnder, type UnderConditions } from "../findings/underConditions.ts";
import { numeral, numeralAsSet } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { capital } from "./explain/plainWords.ts";
import { list } from "./phrases.ts";

type Words = {
  /** Head of a column. */
  readonly name: string;
  /** Within a sentence: "in rain". */
  readonly phrase: string;
};

const WORDS: Readonly<Record<ConditionColumn, Words>> = {
  "as drawn": { name: "As drawn", phrase: "as drawn" },
  dry: { name: "Dry", phrase: "in dry weather" },
  rain: { name: "In rain", phrase: "in rain" },
  lift: { name: "In a lift", phrase: "in a tropospheric lift" },
  "masts on": { name: "Masts on", phrase: "with phone masts on" },
  "masts off": { name: "Masts off", phrase: "with phone masts off" },
  "all on": { name: "All on", phrase: "with all receivers on" },
  "one on": { name: "On alone", phrase: "when it is on alone" },
};

export function conditionName(column: ConditionColumn): string {
  return WORDS[column].name;
}

/** What a condition assumes, in a sentence. */
export function conditionSentence(condition: OperatingCondition): string {
  switch (condition.type) {
    case "as drawn":
      return "Every value as it stands in the design.";
    case "dry":
      return "No rain on any dish.";
    case "rain":
      return `Rain on every dish that is exceeded for ${numeral(condition.yearPercent, 3)} % of a year.`;
    case "lift":
      return `Distant transmitters that nobody wants are ${numeralAsSet(condition.riseDb)} dB stronger, wanted ones ${numeralAsSet(condition.fadeDb)} dB weaker.`;
    case "masts on":
      return "Phone masts are on the air wherever the design lets them in.";
    case "masts off":
      return "No phone mast is on the air.";
    case "all on":
      return "Every receiver is on.";
    case "one on":
      return "Each receiver by itself is on, while all others are unplugged.";
  }
}

/** How the receivers stand as the design is drawn, and under which conditions they stand worse. */
export function conditionsHeadline(under: UnderConditions): string {
  const { judged, working, onEdge } = countUnder(under, "as drawn");
  if (judged === 0) return "No receiver is judged as drawn.";
  const others = under.columns.filter((column) => column !== "as drawn");
  const turns = others.map((column) => turnUnder(under, column));
  return judged === 1
    ? ofOne({ working, onEdge }, turns)
    : [
        ofSeveral(judged, working),
        ...turns.flatMap((turn) => turnSentences(turn, judged)),
        ...unless(turns),
      ].join(" ");
}

/** How many receivers fail under a condition, and are on an edge, that do better as drawn; and how many it helps. */
type Turn = {
  readonly column: ConditionColumn;
  readonly failing: number;
  readonly onEdge: number;
  readonly mended: number;
};

function turnUnder({ places }: UnderConditions, column: ConditionColumn): Turn {
  const pairs = places
    .filter(({ role }) => role === "receiver")
    .flatMap(({ standings }) => {
      const drawn = standings.get("as drawn")?.verdict;
      const there = standings.get(column)?.verdict;
      return drawn && there && !drawn.idle && !there.idle ? [{ drawn: drawn.state, there: there.state }] : [];
    });
  const count = (fits: (drawn: Verdict["state"], there: Verdict["state"]) => boolean) =>
    pairs.filter((pair) => fits(pair.drawn, pair.there)).length;
  return {
    column,
    failing: count((drawn, there) => drawn !== "fails" && there === "fails"),
    onEdge: count((drawn, there) => drawn === "works" && there === "edge"),
    mended: count((drawn, there) => drawn === "fails" && there !== "fails"),
  };
}

function ofOne(drawn: { readonly working: number; readonly onEdge: number }, turns: readonly Turn[]): string {
  const state = drawn.working === 0 ? "Fails" : drawn.onEdge > 0 ? "Works on a knife’s edge" : "Works";
  const phrases = (fits: (turn: Turn) => number) =>
    list(turns.filter((turn) => fits(turn) > 0).map(({ column }) => WORDS[column].phrase));
  const [fails, edge, mended] = [
    phrases((t) => t.failing),
    phrases((t) => t.onEdge),
    phrases((t) => t.mended),
  ];
  const clauses = [
    ...(fails ? [`fails ${fails}`] : []),
    ...(edge ? [`works on a knife’s edge ${edge}`] : []),
    ...(mended ? [`works ${mended}`] : []),
  ];
  if (clauses.length === 0)
    return `${state} as drawn${turns.length === 0 ? "" : ", and no other condition changes that"}.`;
  return `${state} as drawn; ${clauses.join("; ")}.`;
}

function ofSeveral(judged: number, working: number): string {
  if (working === judged)
    return judged === 2
      ? "As drawn, both receivers work."
      : `As drawn, all ${numeral(judged)} receivers work.`;
  return plural(working, {
    zero:
      judged === 2
        ? "As drawn, neither receiver works."
        : `As drawn, none of ${numeral(judged)} receivers works.`,
    one: (n) => `As drawn, ${n} of ${numeral(judged)} receivers works.`,
    other: (n) => `As drawn, ${n} of ${numeral(judged)} receivers work.`,
  });
}

function turnSentences({ column, failing, onEdge, mended }: Turn, judged: number): readonly string[] {
  const where = capital(column === "one on" ? "alone" : WORDS[column].phrase);
  const of = numeral(judged);
  const told = [
    plural(failing, {
      zero: "",
      one: (n) => `${n} of ${of} fails`,
      other: (n) => `${n} of ${of} fail`,
    }),
    plural(onEdge, {
      zero: "",
      one: (n) => `${n} of ${of} works on a knife’s edge`,
      other: (n) => `${n} of ${of} work on a knife’s edge`,
    }),
    plural(mended, {
      zero: "",
      one: (n) => `${n} that fails as drawn works`,
      other: (n) => `${n} that fail as drawn work`,
    }),
  ].filter((words) => words !== "");
  return told.length === 0 ? [] : [`${where}, ${list(told)}.`];
}

function unless(turns: readonly Turn[]): readonly string[] {
  const isQuiet = turns.every((t) => t.failing + t.onEdge + t.mended === 0);
  return isQuiet && turns.length > 0 ? ["No other condition changes that."] : [];
}
