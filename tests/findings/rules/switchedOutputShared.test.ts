/**
 * Receivers that share an output which can stand one way only. 18 V win over 13 V on one line, so horizontal does
 * (EN 61319-1, from memory). Who is named is common practice, no source.
 */
import { expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { backwards, foundBy } from "./foundBy.ts";

const shared = (more: Sketch, wires: string) =>
  draw({ ...more, l: ["lnb-universal"], k: ["dish"] }, `k.sky > l.sky, ${wires}`);

test("the part that joins them is named, then they in the order of their legs", () => {
  const design = shared(
    { b: ["receiver-sat", { polarisation: "H" }], a: ["receiver-sat"], s: ["splitter"], c: ["cable"] },
    "l.out > c.in, c.out > s.in, s.out1 > a.sat, s.out2 > b.sat",
  );
  for (const drawn of [design, backwards(design)])
    expect(foundBy("switched-output-shared", drawn)).toMatchObject([
      {
        severity: "error",
        at: { part: "l", port: "out" },
        parts: ["s", "a", "b", "l"],
        wires: ["l.out>c.in"],
        value: 2,
        limit: 1,
        unit: "receivers",
        facts: { receivers: ["a", "b"], inputs: 2, joins: "s", setting: "HL" },
      },
    ]);
});

test("three are counted", () => {
  const [found, ...more] = foundBy(
    "switched-output-shared",
    shared(
      { c: ["receiver-sat"], b: ["receiver-sat"], a: ["receiver-sat"], s: ["splitter", { ways: 3 }] },
      "l.out > s.in, s.out1 > c.sat, s.out2 > a.sat, s.out3 > b.sat",
    ),
  );
  expect(more).toEqual([]);
  expect(found).toMatchObject({
    value: 3,
    parts: ["s", "c", "a", "b", "l"],
    facts: { receivers: ["c", "a", "b"], inputs: 3, setting: "VL" },
  });
});

test("two inputs of one receiver count as one receiver that speaks twice", () => {
  expect(
    foundBy(
      "switched-output-shared",
      shared({ t: ["receiver-sat-twin"], s: ["splitter"] }, "l.out > s.in, s.out1 > t.sat1, s.out2 > t.sat2"),
    ),
  ).toMatchObject([
    { value: 1, parts: ["s", "t", "l"], facts: { receivers: ["t"], inputs: 2, joins: "s", setting: "HH" } },
  ]);
});

test("a receiver in standby, or one whose supply does not get through, shares nothing", () => {
  const two = (b: Sketch[string], dc: string) =>
    foundBy(
      "switched-output-shared",
      shared(
        { b, a: ["receiver-sat"], s: ["splitter", { dc }] },
        "l.out > s.in, s.out1 > a.sat, s.out2 > b.sat",
      ),
    );
  expect(two(["receiver-sat", { state: "standby" }], "all")).toEqual([]);
  expect(two(["receiver-sat"], "one")).toEqual([]);
  expect(two(["receiver-sat"], "all")).toHaveLength(1);
});
