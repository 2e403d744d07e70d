/** The headline of a verdict, in number and in grammar; expected sentences written by hand. */
import { describe, expect, test } from "vitest";
import type { Verdict, VerdictState } from "../../src/findings/finding.ts";
import { workingSentence } from "../../src/sentences/verdict.ts";

const receiver = (state: VerdictState, i: number): Verdict => ({
  part: `r${i}`,
  role: "receiver",
  state,
  services: [],
  tuners: [],
});

test.each<readonly [string, readonly VerdictState[]]>([
  ["No receiver yet. Add one to see what it would get.", []],
  ["The receiver works.", ["works"]],
  ["The receiver works, on a knife’s edge.", ["edge"]],
  ["The receiver does not work as it should.", ["fails"]],
  ["Both receivers work. One of them works on a knife’s edge.", ["works", "edge"]],
  ["Both receivers work, both on a knife’s edge.", ["edge", "edge"]],
  ["Neither receiver works as it should.", ["fails", "fails"]],
  ["1 of 3 receivers works, on a knife’s edge.", ["fails", "edge", "fails"]],
  ["2 of 3 receivers work, both on a knife’s edge.", ["fails", "edge", "edge"]],
  ["2 of 3 receivers work. One of them works on a knife’s edge.", ["fails", "edge", "works"]],
  ["All 3 receivers work, all on a knife’s edge.", ["edge", "edge", "edge"]],
  ["All 4 receivers work. 2 of them work on a knife’s edge.", ["works", "edge", "edge", "works"]],
])("%s", (sentence, states) => {
  expect(workingSentence(states.map(receiver))).toBe(sentence);
});

// Who is off asks for nothing: nobody knows whether it would work.
describe("receivers that are off or in standby", () => {
  const asleep = (idle: "off" | "standby"): Verdict => ({ ...receiver("works", 9), idle });

  test.each<readonly [string, readonly Verdict[]]>([
    ["No receiver is on.", [asleep("off"), asleep("standby")]],
    [
      "The receiver that is on works. One more is off or in standby.",
      [receiver("works", 0), asleep("standby")],
    ],
    [
      "Neither receiver works as it should. 2 more are off or in standby.",
      [receiver("fails", 0), asleep("off"), receiver("fails", 1), asleep("standby")],
    ],
    [
      "1 of 2 receivers works, on a knife’s edge. One more is off or in standby.",
      [asleep("off"), receiver("edge", 0), receiver("fails", 1)],
    ],
  ])("%s", (sentence, verdicts) => {
    expect(workingSentence(verdicts)).toBe(sentence);
  });
});
