/** Which kinds of feed the receivers behind a part take: small jobs, counted by hand. */
import { expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { feedsTaken } from "../../src/findings/feedsTaken.ts";
import { draw } from "../draw.ts";

type Parts = Parameters<typeof draw>[0];

const taken = (parts: Parts, wires: string, part: string) =>
  [...feedsTaken(evaluate(draw(parts, wires)), part)].sort();

const house: Parts = {
  s: ["receiver-stacked"],
  w: ["receiver-hybrid"],
  tv: ["receiver-tv"],
  u: ["receiver-sat"],
  k: ["cable"],
  split: ["splitter", { ways: 4, dc: "all" }],
  lnb: ["lnb-universal"],
  d: ["dish"],
};
const wires =
  "d.sky > lnb.sky, lnb.out > k.in, k.out > split.in, split.out1 > u.sat, split.out2 > s.sat, split.out3 > tv.in, split.out4 > w.v";

test("each receiver that a way leads to counts with its kind of feed; a TV set takes none from a satellite", () => {
  const all = ["stacked", "switched", "wideband"];
  expect(taken(house, wires, "lnb")).toEqual(all);
  expect(taken(house, wires, "split")).toEqual(all);
  expect(taken(house, wires, "d")).toEqual(all);
});

test("a receiver itself takes its own, and one without a lead takes nothing", () => {
  expect(taken(house, wires, "u")).toEqual(["switched"]);
  expect(taken(house, "d.sky > lnb.sky", "u")).toEqual([]);
  expect(taken(house, "d.sky > lnb.sky", "lnb")).toEqual([]);
});

test("two receivers of one kind count twice, and one with two leads of one kind once", () => {
  const two: Parts = { ...house, v: ["receiver-sat"], twin: ["receiver-sat-twin"] };
  expect(taken(two, "lnb.out > split.in, split.out1 > u.sat, split.out2 > v.sat", "lnb")).toEqual([
    "switched",
    "switched",
  ]);
  expect(taken(two, "lnb.out > split.in, split.out1 > twin.sat1, split.out2 > twin.sat2", "lnb")).toEqual([
    "switched",
  ]);
});

// Two ways to one receiver, and a ring: each part is looked at once.
test("a ring of parts comes to an end", () => {
  const ring: Parts = { ...house, mix: ["combiner"] };
  expect(taken(ring, "mix.out > split.in, split.out1 > mix.in1, split.out2 > u.sat", "mix")).toEqual([
    "switched",
  ]);
});

test("what hangs on another source does not count", () => {
  const two: Parts = { ...house, lnb2: ["lnb-stacked"] };
  expect(taken(two, "lnb.out > u.sat, lnb2.out > s.sat", "lnb")).toEqual(["switched"]);
  expect(taken(two, "lnb.out > u.sat, lnb2.out > s.sat", "lnb2")).toEqual(["stacked"]);
  expect(taken(two, "lnb.out > u.sat, lnb2.out > s.sat", "nobody")).toEqual([]);
});
