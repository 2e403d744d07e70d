import { describe, expect, test } from "vitest";
import { type Design, type Part, wireId } from "../../../src/design/design.ts";
import { insertIntoWire } from "../../../src/design/edits/insert.ts";
import { newPart } from "../../../src/design/edits/parts.ts";
import { drawn, must, wiring } from "../house.ts";

const design = drawn(
  ["dish", "lnb-universal", "cable", "receiver-sat", "attenuator"],
  ["dish1/sky > lnb1/sky", "lnb1/out > cable1/in", "cable1/out > sat1/sat"],
);

function fresh(kind: string, options = {}): Part {
  const part = newPart(design, kind, [999, 999], options);
  if (!part) throw new Error(kind);
  return part;
}

function idOf(from: Design, index: number): string {
  const wire = from.wires[index];
  return wire ? wireId(wire) : "";
}

describe("Dropping a part on a wire", () => {
  test("leads the wire through it and puts it half-way", () => {
    const after = must(insertIntoWire(design, fresh("amp-if"), idOf(design, 2)));
    expect(wiring(after)).toEqual([
      "dish1/sky > lnb1/sky",
      "lnb1/out > cable1/in",
      "cable1/out > lineamp1/in",
      "lineamp1/out > sat1/sat",
    ]);
    // Cable 1 stands at 400, the receiver at 600.
    expect(after.parts.at(-1)).toMatchObject({ id: "lineamp1", at: [500, 0] });
  });

  test("takes a part that stands on the canvas unjoined", () => {
    const loose = design.parts.find((part) => part.id === "pad1");
    if (!loose) throw new Error("no attenuator");
    const after = must(insertIntoWire(design, loose, idOf(design, 1)));
    expect(wiring(after)).toContain("lnb1/out > pad1/in");
    expect(wiring(after)).toContain("pad1/out > cable1/in");
    expect(after.parts.length).toBe(design.parts.length);
  });

  test.each([
    {
      name: "the beam",
      part: "attenuator",
      wire: 0,
      reason: "Nothing can be put between “Dish 1” and “Universal LNB 1”: that is the dish’s beam.",
    },
    {
      name: "a part with several ways",
      part: "splitter",
      wire: 1,
      reason:
        "“Splitter” has no single way through, so it cannot be put into a wire. Connect its ports one by one.",
    },
    {
      name: "a part with one port",
      part: "load",
      wire: 1,
      reason:
        "“Terminator” has no single way through, so it cannot be put into a wire. Connect its ports one by one.",
    },
    {
      name: "a wire that is gone",
      part: "attenuator",
      wire: 9,
      reason: "That wire is no longer in the design.",
    },
  ])("is refused for $name", ({ part, wire, reason }) => {
    expect(insertIntoWire(design, fresh(part), idOf(design, wire))).toEqual({ ok: false, reason });
  });

  test("is refused for an end of that wire, and for a part that is joined elsewhere", () => {
    const cable = design.parts.find((part) => part.id === "cable1");
    if (!cable) throw new Error("no cable");
    expect(insertIntoWire(design, cable, idOf(design, 1))).toEqual({
      ok: false,
      reason: "“Cable 1” is an end of that wire already.",
    });
    const two = drawn(["cable", "receiver-tv", "aerial-uhf", "receiver-tv"], [], design);
    const wired = drawn([], ["aerial1/out > tv1/in", "cable2/out > tv2/in"], two);
    const busy = wired.parts.find((part) => part.id === "cable2");
    if (!busy) throw new Error("no cable 2");
    expect(insertIntoWire(wired, busy, idOf(wired, 3))).toEqual({
      ok: false,
      reason: "“Cable 2” has no free output. It is connected to “TV set 2” already.",
    });
  });
});
