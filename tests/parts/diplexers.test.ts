/**
 * Edges and flanks of diplexers. Published by an aerial dealer for a diplexer between TV channels: 1 dB through, about 4 dB
 * one channel beside the edge, 1 dB five channels beside it. Clearance edges 694 and 790 MHz (EU Decision 2017/899, from memory).
 */
import { describe, expect, test } from "vitest";
import { gainBetween, signalOf } from "./walk.ts";

const EDGE = 598;
/** A diplexer between C36 and C37: lower branch to 598 MHz, upper from there. */
const between = (flankMHz: number) =>
  signalOf("diplexer-split", {
    split: "own",
    tvToMHz: EDGE,
    satFromMHz: EDGE,
    tvLossDb: 1,
    satLossDb: 1,
    flankMHz,
  });

describe("a diplexer between two TV channels", () => {
  test.each(["tv", "sat"])("the branch %s loses as published with flanks of 40 MHz", (branch) => {
    const side = branch === "tv" ? -1 : 1;
    const loss = (channels: number) => -gainBetween(between(40), "in", branch, EDGE + side * 8 * channels);
    expect(Math.abs(loss(1) - 4)).toBeLessThan(0.5);
    expect(Math.abs(loss(5) - 1)).toBeLessThan(0.1);
    // No more than half the power goes each way at the edge itself: 3 dB at least, and 1 dB through.
    expect(loss(0)).toBeGreaterThanOrEqual(4);
  });

  test("the other side is stopped the more the further away, at last by the whole rejection", () => {
    const loss = (f: number) => -gainBetween(between(40), "in", "tv", f);
    const along = [600, 610, 620, 638, 700, 800].map(loss);
    expect(along).toEqual([...along].sort((a, b) => a - b));
    expect(loss(800)).toBeCloseTo(31, 1);
  });

  test("sharp as long as no flank is set", () => {
    const loss = (f: number) => -gainBetween(between(0), "in", "tv", f);
    expect(loss(590)).toBeCloseTo(1, 6);
    expect(loss(606)).toBeGreaterThan(20);
  });
});

test.each([
  { split: "tv", passes: 850, stops: 900 },
  { split: "tv-790", passes: 780, stops: 800 },
  { split: "tv-694", passes: 690, stops: 770 },
])("the TV branch of “$split” passes $passes MHz and stops $stops", ({ split, passes, stops }) => {
  const treatment = signalOf("diplexer-split", { split });
  expect(-gainBetween(treatment, "in", "tv", passes)).toBeLessThan(2);
  expect(-gainBetween(treatment, "in", "tv", stops)).toBeGreaterThan(15);
  expect(-gainBetween(treatment, "in", "sat", 1500)).toBeLessThan(3);
});

test.each([
  { kind: "outlet-tv", to: "tv" },
  { kind: "outlet-through", to: "tv" },
  { kind: "outlet-end", to: "tv" },
])("the TV socket of $kind ends where its edge is", ({ kind, to }) => {
  const loss = (tvTo: string, f: number) => -gainBetween(signalOf(kind, { tvTo }), "in", to, f);
  expect(loss("694", 690)).toBeCloseTo(loss("862", 690), 6);
  for (const f of [770, 800]) expect(loss("694", f) - loss("862", f)).toBeGreaterThan(15);
  expect(loss("790", 770)).toBeCloseTo(loss("862", 770), 6);
});
