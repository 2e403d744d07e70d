/** VA: variants of a design in one document. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { pasteFragment } from "../../src/design/edits/clipboard.ts";
import type { Edit } from "../../src/design/edits/edit.ts";
import { addPart, newPart } from "../../src/design/edits/parts.ts";
import { addVariant, removeVariant, renameVariant, switchVariant } from "../../src/design/edits/variants.ts";
import { readDesign, writeDesign } from "../../src/design/file.ts";
import { decodeLink, encodeLink } from "../../src/design/link.ts";
import { variantDesign, variantNames } from "../../src/design/variants.ts";
import { anyVariants } from "../arbitraries.ts";
import { drawn, typicalHouse } from "./house.ts";

function made(edit: Edit): Design {
  if (!edit.ok) throw new Error(edit.reason);
  return edit.design;
}

function refusal(edit: Edit): string {
  if (edit.ok) throw new Error("the edit was done");
  return edit.reason;
}

const built = drawn(["dish", "lnb-universal"], ["dish1/sky > lnb1/sky"]);
const planned = made(addVariant(built, "Plan A"));
const changed: Design = { ...planned, parts: planned.parts.slice(0, 1), wires: [] };

describe("A variant", () => {
  test("VA1: is added as a copy at work, while what was there rests as built", () => {
    expect(variantNames(planned)).toEqual(["As built", "Plan A"]);
    expect(planned).toMatchObject({ variant: "Plan A", parts: built.parts, wires: built.wires });
    expect(planned.variants).toEqual([{ name: "As built", parts: built.parts, wires: built.wires }]);
  });

  test("VA2: keeps its own parts and wires through a change to another and back", () => {
    const back = made(switchVariant(changed, "As built"));
    expect([back.parts, back.wires]).toEqual([built.parts, built.wires]);
    const again = made(switchVariant(back, "Plan A"));
    expect(again).toEqual(changed);
  });

  test("VA3: can be begun with given parts and wires", () => {
    const empty = made(addVariant(built, "From scratch", { parts: [], wires: [] }));
    expect(empty.parts).toEqual([]);
    expect(variantDesign(empty, "As built")?.parts).toBe(built.parts);
  });

  test("VA4: is seen as a design of its own, without the others", () => {
    expect(variantDesign(changed, "Plan A")).toEqual({
      ...built,
      parts: changed.parts,
      wires: [],
      variant: "Plan A",
    });
    expect(variantDesign(changed, "Plan Z")).toBeUndefined();
  });

  test("VA5: bears one name only, which can be changed at work and at rest", () => {
    const both = made(renameVariant(made(renameVariant(changed, "Plan A", "Best plan")), "As built", "Old"));
    expect(variantNames(both)).toEqual(["Best plan", "Old"]);
    expect(refusal(renameVariant(both, "Old", "Best plan"))).toContain("already");
    expect(refusal(addVariant(both, " Old "))).toContain("already");
    expect(refusal(addVariant(both, "  "))).toContain("needs a name");
    expect(refusal(renameVariant(both, "Nobody", "Somebody"))).toContain("no variant “Nobody”");
  });

  test("VA6: is dropped; in place of the one at work another is taken up, and the last one stays", () => {
    expect(made(removeVariant(changed, "As built"))).toEqual({
      ...built,
      parts: changed.parts,
      wires: [],
      variant: "Plan A",
    });
    const left = made(removeVariant(changed, "Plan A"));
    expect(left).toEqual({ ...built, variant: "As built" });
    expect(refusal(removeVariant(left, "As built"))).toContain("only variant");
  });
});

describe("Limits hold for all variants together", () => {
  const cables = (count: number): Design => {
    const [cable] = drawn(["cable"]).parts;
    if (!cable) throw new Error("no cable");
    return {
      ...built,
      wires: [],
      parts: Array.from({ length: count }, (_, i) => ({ ...cable, id: `c${i}` })),
    };
  };

  test("VA7: at most 5000 parts: a copy, a part and a paste beyond it are refused", () => {
    expect(refusal(addVariant(cables(2501), "Plan A"))).toContain(
      "at most 5000 parts, all variants together; this would make 5002.",
    );
    const full = made(addVariant(cables(2500), "Plan A"));
    const part = newPart(full, "cable", [0, 0]);
    if (!part) throw new Error("no part");
    expect(refusal(addPart(full, part))).toContain("this would make 5001.");
    expect(refusal(pasteFragment(full, { parts: [part], wires: [] }))).toContain("this would make 5001.");
    expect(readDesign(writeDesign(full)).ok).toBe(true);
  });

  test("VA8: at most 20 beside the one at work", () => {
    let design = built;
    for (let i = 1; i <= 20; i++) design = made(addVariant(design, `Plan ${i}`));
    expect(refusal(addVariant(design, "Plan 21"))).toContain("20 variants");
    expect(readDesign(writeDesign(design))).toMatchObject({ ok: true });
  });
});

describe("File and link", () => {
  test("VA9: give back every variant exactly, for any design", async () => {
    await fc.assert(
      fc.asyncProperty(anyVariants({ loops: true }), async (design) => {
        const whole = { ok: true, design, notes: [] };
        expect(readDesign(writeDesign(design))).toEqual(whole);
        expect(await decodeLink(await encodeLink(design))).toEqual(whole);
      }),
      { numRuns: 100 },
    );
  });

  test("VA10: a second variant that differs little makes a link little longer", async () => {
    const house = typicalHouse();
    const two = made(addVariant(house, "Plan A"));
    expect((await encodeLink(two)).length).toBeLessThan((await encodeLink(house)).length * 1.5);
  });

  const fileWith = (variants: unknown): string =>
    JSON.stringify({ ...JSON.parse(writeDesign(changed)), variants });
  const wrong = { id: "x1", kind: "magic", label: "x", options: {}, at: [0, 0] };

  test.each([
    {
      name: "two of one name",
      variants: [
        { name: "B", parts: [], wires: [] },
        { name: "B", parts: [], wires: [] },
      ],
      says: "Two variants have the name “B”; each needs its own.",
    },
    {
      name: "one that bears the name of the one at work",
      variants: [{ name: "Plan A", parts: [], wires: [] }],
      says: "Two variants have the name “Plan A”; each needs its own.",
    },
    {
      name: "an unknown kind",
      variants: [{ name: "B", parts: [wrong], wires: [] }],
      says: "Variant “B”, “x”: this edition does not know the kind of part “magic”.",
    },
    {
      name: "a dangling wire",
      variants: [{ name: "B", parts: [], wires: [{ from: ["a", "out"], to: ["b", "in"] }] }],
      says: "Variant “B”, wire 1: it starts at the part “a”, which is not in the design.",
    },
    {
      name: "no name",
      variants: [{ name: " ", parts: [], wires: [] }],
      says: "Variant 1: the name is an empty text; allowed is a text that is not empty.",
    },
    {
      name: "too many",
      variants: Array.from({ length: 21 }, (_, i) => ({ name: `P${i}`, parts: [], wires: [] })),
      says: "There are 21 variants beside the active one; a design holds at most 20.",
    },
    {
      name: "too many parts in all",
      variants: [{ name: "B", parts: Array(5_000).fill(wrong), wires: [] }],
      says: "There are 5001 parts; a design holds at most 5000.",
    },
  ])("VA11: a file with $name is refused, with the place", ({ variants, says }) => {
    const reading = readDesign(fileWith(variants));
    expect(reading.ok ? "" : reading.problem).toContain(says);
  });
});
