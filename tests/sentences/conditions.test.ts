/** CW: what is said of a design under several conditions: the worst, with its condition. */
import { describe, expect, test } from "vitest";
import type { Verdict } from "../../src/findings/finding.ts";
import type { ConditionColumn, PlaceStandings, Standing } from "../../src/findings/underConditions.ts";
import { conditionSentence, conditionsHeadline } from "../../src/sentences/conditions.ts";

type States = Partial<Record<ConditionColumn, Verdict["state"] | "off">>;

/** Receivers by their states under each condition. */
function headline(...receivers: readonly States[]): string {
  const places = receivers.map((states, n): PlaceStandings => {
    const standings = Object.entries(states).map(([column, state]): [ConditionColumn, Standing] => {
      const verdict: Verdict = {
        part: `r${n}`,
        role: "receiver",
        state: state === "off" ? "works" : state,
        ...(state === "off" ? { idle: "off" } : {}),
        services: [],
        tuners: [],
      };
      // Only states are told of; whoever tells more has an evaluation.
      return [column as ConditionColumn, { verdict } as Standing];
    });
    return { part: `r${n}`, role: "receiver", standings: new Map(standings) };
  });
  const columns = [...new Set(receivers.flatMap((states) => Object.keys(states) as ConditionColumn[]))];
  return conditionsHeadline({ conditions: [], columns, places });
}

describe("the headline", () => {
  test.each<{ name: string; receivers: States[]; words: string }>([
    {
      name: "one that fails in rain",
      receivers: [{ "as drawn": "works", rain: "fails", lift: "works" }],
      words: "Works as drawn; fails in rain.",
    },
    {
      name: "one that fails twice and is near it once",
      receivers: [{ "as drawn": "works", rain: "fails", lift: "fails", "masts on": "edge" }],
      words:
        "Works as drawn; fails in rain and in a tropospheric lift; works on a knife’s edge with phone masts on.",
    },
    {
      name: "one that nothing troubles",
      receivers: [{ "as drawn": "works", rain: "works" }],
      words: "Works as drawn, and no other condition changes that.",
    },
    {
      name: "one without other conditions",
      receivers: [{ "as drawn": "edge" }],
      words: "Works on a knife’s edge as drawn.",
    },
    {
      name: "one that works with the masts off",
      receivers: [{ "as drawn": "fails", "masts off": "works" }],
      words: "Fails as drawn; works with phone masts off.",
    },
    {
      name: "three of which rain takes one and brings another near it",
      receivers: [
        { "as drawn": "works", rain: "fails" },
        { "as drawn": "works", rain: "edge" },
        { "as drawn": "works", rain: "works" },
      ],
      words: "As drawn, all 3 receivers work. In rain, 1 of 3 fails and 1 of 3 works on a knife’s edge.",
    },
    {
      name: "two that work alone only",
      receivers: [
        { "as drawn": "fails", "one on": "works" },
        { "as drawn": "fails", "one on": "works" },
      ],
      words: "As drawn, neither receiver works. Alone, 2 that fail as drawn work.",
    },
    {
      name: "two that nothing troubles",
      receivers: [
        { "as drawn": "works", rain: "works" },
        { "as drawn": "works", rain: "works" },
      ],
      words: "As drawn, both receivers work. No other condition changes that.",
    },
    { name: "one that is off", receivers: [{ "as drawn": "off" }], words: "No receiver is judged as drawn." },
  ])("CW1: $name", ({ receivers, words }) => {
    expect(headline(...receivers)).toBe(words);
  });
});

test("CW2: a condition says what it assumes", () => {
  expect(conditionSentence({ type: "rain", yearPercent: 0.1 })).toBe(
    "Rain on every dish that is exceeded for 0.1 % of a year.",
  );
  expect(conditionSentence({ type: "lift", riseDb: 15, fadeDb: 3 })).toBe(
    "Distant transmitters that nobody wants are 15 dB stronger, wanted ones 3 dB weaker.",
  );
});
