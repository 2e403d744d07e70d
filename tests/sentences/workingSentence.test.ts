/** The headline of a verdict, in number and in grammar; expected sentences written by hand. */
import { expect, test } from "vitest";
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

// A receiver that is switched off asks for nothing: it neither works nor fails.
test.each<readonly [string, readonly (VerdictState | "off")[]]>([
  ["The receiver is off.", ["off"]],
  ["Both receivers are off.", ["off", "off"]],
  ["All 3 receivers are off.", ["off", "off", "off"]],
  ["The receiver that is on works. One more is off.", ["off", "works"]],
  ["The receiver that is on does not work as it should. 2 more are off.", ["off", "fails", "off"]],
  ["1 of 2 receivers works, on a knife’s edge. One more is off.", ["off", "edge", "fails"]],
])("%s", (sentence, states) => {
  const verdicts = states.map(
    (state, i): Verdict => (state === "off" ? { ...receiver("works", i), idle: "off" } : receiver(state, i)),
  );
  expect(workingSentence(verdicts)).toBe(sentence);
});
