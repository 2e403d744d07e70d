/**
 * What a pulled wire is led to. By the drawing: cards are 144 px wide and 68 px down their side lies the first port; what
 * may be joined is common practice: a dish shines into an LNB, an aerial does not, and nothing leads into itself.
 */
import { describe, expect, test } from "vitest";
import type { Design } from "../../../src/design/design.ts";
import { addPart, newPart } from "../../../src/design/edits/parts.ts";
import { takesWire, wireTargetAt } from "../../../src/ui/canvas/wireTarget.ts";
import { must } from "../../design/house.ts";

const design = (
  [
    ["dish", [0, 0]],
    ["lnb-universal", [400, 0]],
    ["aerial-uhf", [0, 320]],
  ] as const
).reduce(
  (now: Design, [kind, at]) => {
    const part = newPart(now, kind, at);
    if (!part) throw new Error(`no ${kind}`);
    return must(addPart(now, part));
  },
  { title: "", parts: [], wires: [] },
);
const SKY = ["dish1", "sky"] as const;
const AERIAL = ["aerial1", "out"] as const;
const MIDDLE_OF_LNB = { x: 472, y: 40 };

describe("a pulled wire", () => {
  test("is led to the card under it, from near and where the drawing is a plan", () => {
    for (const zoom of [1, 0.62, 0.35])
      expect(wireTargetAt(design, SKY, MIDDLE_OF_LNB, { fieldPx: 24, zoom })).toEqual({ card: "lnb1" });
  });

  test("is led to a port near it, on bare canvas at every zoom, over its card as long as ports lie apart", () => {
    const port = { port: { x: 400, y: 68, ref: ["lnb1", "sky"] } };
    for (const zoom of [1, 0.35])
      expect(wireTargetAt(design, SKY, { x: 400 - 9 / zoom, y: 68 }, { fieldPx: 24, zoom })).toEqual(port);
    expect(wireTargetAt(design, SKY, { x: 409, y: 68 }, { fieldPx: 24, zoom: 1 })).toEqual(port);
    expect(wireTargetAt(design, SKY, { x: 409, y: 68 }, { fieldPx: 44, zoom: 0.35 })).toEqual({
      card: "lnb1",
    });
  });

  test("is led nowhere beside everything", () => {
    expect(wireTargetAt(design, SKY, { x: 300, y: 250 }, { fieldPx: 44, zoom: 1 })).toBeNull();
  });

  test("is taken by a card with a free port that fits", () => {
    expect(takesWire(design, SKY, "lnb1")).toBe(true);
    expect(takesWire(design, AERIAL, "lnb1")).toBe(false);
    expect(takesWire(design, SKY, "dish1")).toBe(false);
    const joined = { ...design, wires: [{ from: SKY, to: ["lnb1", "sky"] as const }] };
    expect(takesWire(joined, AERIAL, "dish1")).toBe(false);
  });
});
