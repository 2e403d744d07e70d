/** Patches between designs. What must hold follows from the words: forth, back, and nothing else is touched. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { addVariant, renameVariant, switchVariant } from "../../src/design/edits/variants.ts";
import { writeDesign } from "../../src/design/file.ts";
import { applyPatch, invertPatch, type Patch, patchBetween } from "../../src/design/patch.ts";
import { readPatch } from "../../src/design/patchReading.ts";
import { anyDesign, anyVariants } from "../arbitraries.ts";
import { afterWishes, anyWishes } from "./anyEdits.ts";
import { drawn, must } from "./house.ts";

function between(before: Design, after: Design): Patch {
  const patch = patchBetween(before, after);
  if (!patch) throw new Error("both say the same");
  return patch;
}

/** What a patch is after it lay in a storage. */
const stored = (patch: Patch): Patch | null => readPatch(JSON.parse(JSON.stringify(patch)));

const chain = drawn(
  ["aerial-uhf", "cable", "receiver-tv"],
  ["aerial1/out > cable1/in", "cable1/out > tv1/in"],
);

function expectBothWays(before: Design, after: Design): void {
  const patch = patchBetween(before, after);
  if (!patch) {
    expect(writeDesign(after)).toBe(writeDesign(before));
    return;
  }
  // The text of the file names the order of parts, wires and variants too.
  for (const each of [patch, stored(patch)]) {
    if (!each) throw new Error("not readable once stored");
    const forth = applyPatch(each, before);
    expect(forth && writeDesign(forth)).toBe(writeDesign(after));
    const back = applyPatch(invertPatch(each), after);
    expect(back && writeDesign(back)).toBe(writeDesign(before));
  }
}

describe("A patch", () => {
  test("leads from one to the other and back, along any edits", () => {
    fc.assert(
      fc.property(anyVariants(), anyWishes, (start, wishes) => {
        let before = start;
        for (const wish of wishes) {
          const after = afterWishes(before, [wish]);
          expectBothWays(before, after);
          before = after;
        }
        expectBothWays(start, before);
      }),
      { numRuns: 50 },
    );
  });

  test("leads between any two designs, and restores any order of parts", () => {
    const shuffled = (design: Design) =>
      fc
        .shuffledSubarray([...design.parts], { minLength: design.parts.length })
        .map((parts) => ({ ...design, parts }));
    fc.assert(fc.property(anyVariants(), anyVariants(), expectBothWays), { numRuns: 30 });
    fc.assert(
      fc.property(
        anyDesign({ maxParts: 8 }).chain((design) => fc.tuple(fc.constant(design), shuffled(design))),
        ([before, after]) => expectBothWays(before, after),
      ),
      { numRuns: 30 },
    );
  });

  test("is nothing between designs that say the same", () => {
    expect(patchBetween(chain, structuredClone(chain))).toBeNull();
  });

  test("is small: it holds what changed, and not the rest", () => {
    const patch = between(chain, { ...chain, title: "Other" });
    expect(patch).toEqual({ title: [chain.title, "Other"] });
  });

  test("leaves whatever it does not touch the same object", () => {
    const larger = drawn(["receiver-tv"], [], chain);
    // As another window reads it from its text: all objects are new.
    const theirs = structuredClone(larger);
    const followed = applyPatch(between(chain, theirs), chain);
    expect(followed).toEqual(larger);
    expect(followed?.parts.slice(0, 3).every((part, i) => part === chain.parts[i])).toBe(true);
    expect(followed?.wires).toBe(chain.wires);
  });

  test("of switching variants names no parts", () => {
    const added = must(addVariant(chain, "Plan A"));
    const back = must(switchVariant(added, "As built"));
    for (const sheet of between(added, back).sheets ?? []) {
      expect([sheet.parts, sheet.wires]).toEqual([undefined, undefined]);
    }
    const renamed = must(renameVariant(added, "As built", "Old"));
    expect(between(added, renamed).sheets?.map(({ parts }) => parts)).toEqual([undefined]);
  });
});

describe("A patch that does not fit", () => {
  const without = (id: string): Design => ({
    ...chain,
    parts: chain.parts.filter((part) => part.id !== id),
    wires: chain.wires.filter(({ from, to }) => from[0] !== id && to[0] !== id),
  });

  test("is refused: a part that it changes or takes away is not there, one that it brings is", () => {
    const [first] = chain.parts;
    if (!first) throw new Error("no part");
    const moved = { ...chain, parts: [{ ...first, at: [8, 8] as const }, ...chain.parts.slice(1)] };
    expect(applyPatch(between(chain, moved), without("aerial1"))).toBeNull();
    expect(applyPatch(between(chain, without("aerial1")), without("aerial1"))).toBeNull();
    expect(applyPatch(between(without("tv1"), chain), chain)).toBeNull();
  });

  test("is refused where the title was another one", () => {
    expect(applyPatch({ title: ["Other", "New"] }, chain)).toBeNull();
  });

  test("is refused where a wire would end at nothing", () => {
    const cut = { ...chain, wires: chain.wires.slice(0, 1) };
    const wired = between(cut, chain);
    expect(applyPatch(wired, { ...cut, parts: without("tv1").parts })).toBeNull();
  });

  test.each([
    { name: "nothing", value: undefined },
    { name: "another thing", value: { title: "A" } },
    { name: "a kind that is not in the catalogue", value: withPart({ kind: "teleporter" }) },
    { name: "an option out of its range", value: withPart({ options: { lengthM: -4 } }) },
  ])("$name is not read", ({ value }) => {
    expect(readPatch(value)).toBeNull();
  });

  test("options that it lacks are filled in, as they are for a file", () => {
    const patch = readPatch(withPart({ options: { lengthM: 12 } }));
    const part = patch?.sheets?.[0]?.parts?.in[0]?.[1];
    expect(part?.options).toEqual({ ...chain.parts[1]?.options, lengthM: 12 });
  });
});

function withPart(change: object): unknown {
  const part = { id: "cable1", kind: "cable", label: "", options: {}, at: [0, 0], ...change };
  const parts = { out: [], in: [[0, part]], changed: [] };
  return { sheets: [{ was: 0, is: 0, name: [null, null], parts }] };
}
