import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { EMPTY_DESIGN, type Part } from "../../../src/design/design.ts";
import { align, distribute } from "../../../src/design/edits/arrange.ts";
import { copyParts, pasteFragment } from "../../../src/design/edits/clipboard.ts";
import { addPart, moveParts, newPart, rename, retitle } from "../../../src/design/edits/parts.ts";
import { readDesign, writeDesign } from "../../../src/design/file.ts";
import { partById } from "../../../src/design/lookup.ts";
import { anyDesign, someOf } from "../../arbitraries.ts";
import { cpuMs } from "../../cpuTime.ts";
import { drawn, must, wiring } from "../house.ts";

describe("A new part", () => {
  test("takes the next number of its prefix and of its name", () => {
    const design = drawn(["cable", "cable"]);
    expect(newPart(design, "cable", [8, 16])).toMatchObject({ id: "cable3", label: "Cable 3", at: [8, 16] });
    expect(newPart(design, "dish", [0, 0])).toMatchObject({ id: "dish1", label: "Dish 1" });
  });

  test("counts on from the highest, so that a removed part's name isn't given to another at once", () => {
    const design = drawn(["cable", "cable", "cable"]);
    const gap = { ...design, parts: design.parts.filter((part) => part.id !== "cable1") };
    expect(newPart(gap, "cable", [0, 0])?.id).toBe("cable4");
  });

  test("takes options where they are valid, and isn't made where they aren't, or for an unknown kind", () => {
    expect(newPart(EMPTY_DESIGN, "cable", [0, 0], { lengthM: 7 })?.options.lengthM).toBe(7);
    expect(newPart(EMPTY_DESIGN, "cable", [0, 0], { lengthM: -7 })).toBeUndefined();
    expect(newPart(EMPTY_DESIGN, "constructor", [0, 0])).toBeUndefined();
  });

  test("is refused a second time", () => {
    const part = newPart(EMPTY_DESIGN, "cable", [0, 0]);
    if (!part) throw new Error("no cable");
    expect(addPart(must(addPart(EMPTY_DESIGN, part)), part)).toEqual({
      ok: false,
      reason: "There is a part with the id “cable1” already.",
    });
  });

  test("is refused beyond 5,000", () => {
    const part = newPart(EMPTY_DESIGN, "cable", [0, 0]);
    if (!part) throw new Error("no cable");
    const parts = Array.from({ length: 5000 }, (_, i) => ({ ...part, id: `c${i}` }));
    expect(addPart({ ...EMPTY_DESIGN, parts }, part)).toMatchObject({ ok: false });
  });
});

describe("Names and places", () => {
  const design = drawn(["cable", "cable"]);

  test("rename trims, and refuses an empty or endless name", () => {
    expect(partById(must(rename(design, "cable1", "  Loft ")), "cable1")?.label).toBe("Loft");
    expect(rename(design, "cable1", " ")).toEqual({ ok: false, reason: "“Cable 1” needs a name." });
    expect(rename(design, "cable1", "x".repeat(201))).toMatchObject({ ok: false });
  });

  test("retitle does the same for the design", () => {
    expect(must(retitle(design, " Cottage ")).title).toBe("Cottage");
    expect(retitle(design, "")).toEqual({ ok: false, reason: "A design needs a title." });
  });

  test.each([
    { name: "within reach", to: [-8, 4.5], at: [-8, 4.5] },
    { name: "out of reach", to: [2e6, -2e6], at: [1e6, -1e6] },
    { name: "not a number", to: [Number.NaN, Number.POSITIVE_INFINITY], at: [0, 0] },
    { name: "minus zero", to: [-0, 8], at: [0, 8] },
  ] as const)("a move to a place $name ends where a file can hold it", ({ to, at }) => {
    expect(partById(must(moveParts(design, new Map([["cable2", to]]))), "cable2")?.at).toEqual(at);
  });

  test("parts that don't move stay the same objects", () => {
    const moved = must(moveParts(design, new Map([["cable2", [5, 5]]])));
    expect(moved.parts[0]).toBe(design.parts[0]);
    expect(must(moveParts(design, new Map([["cable1", [0, 0]]])))).toBe(design);
  });
});

describe("Arranging", () => {
  const scattered = must(
    moveParts(
      drawn(["cable", "cable", "cable"], ["cable1/out > cable2/in"]),
      new Map([
        ["cable1", [0, 30]],
        ["cable2", [50, 10]],
        ["cable3", [400, 20]],
      ]),
    ),
  );
  const all = new Set(["cable1", "cable2", "cable3"]);
  const places = (edit: ReturnType<typeof align>) => must(edit).parts.map((part) => part.at);

  test("align brings the chosen to the leftmost or the topmost", () => {
    expect(places(align(scattered, all, "left"))).toEqual([
      [0, 30],
      [0, 10],
      [0, 20],
    ]);
    expect(places(align(scattered, all, "top"))).toEqual([
      [0, 10],
      [50, 10],
      [400, 10],
    ]);
    expect(places(align(scattered, new Set(["cable2", "cable3"]), "left"))).toEqual([
      [0, 30],
      [50, 10],
      [50, 20],
    ]);
  });

  test("distribute spaces them evenly between the outermost", () => {
    expect(places(distribute(scattered, all, "across"))).toEqual([
      [0, 30],
      [200, 10],
      [400, 20],
    ]);
    expect(places(distribute(scattered, all, "down"))).toEqual([
      [0, 30],
      [50, 10],
      [400, 20],
    ]);
  });

  test("align and distribute leave nothing, one and two parts alone", () => {
    expect(must(align(scattered, new Set(), "left"))).toBe(scattered);
    expect(must(distribute(scattered, new Set(["cable1"]), "across"))).toBe(scattered);
    expect(must(distribute(scattered, new Set(["cable1", "cable3"]), "across"))).toBe(scattered);
  });
});

/** Drawn in this order. */
function dishes(as: readonly Pick<Part, "label" | "at">[]): readonly Part[] {
  const [dish] = drawn(["dish"]).parts;
  return dish ? as.map((own, n) => ({ ...dish, id: `dish${n + 1}`, ...own })) : [];
}

describe("Copy and paste", () => {
  const design = must(
    rename(
      drawn(["aerial-uhf", "cable", "receiver-tv"], ["aerial1/out > cable1/in", "cable1/out > tv1/in"]),
      "tv1",
      "Kitchen",
    ),
  );

  test("keeps the wires among the copied, under new ids and names", () => {
    const paste = pasteFragment(design, copyParts(design, new Set(["cable1", "tv1"])));
    expect(wiring(must(paste)).slice(2)).toEqual(["cable2/out > tv2/in"]);
    expect(
      must(paste)
        .parts.slice(3)
        .map((part) => part.label),
    ).toEqual(["Cable 2", "Kitchen 2"]);
    expect(paste.ok && paste.added).toEqual(new Set(["cable2", "tv2"]));
  });

  test("puts the top left corner where it is told, and else a step further each time", () => {
    const fragment = copyParts(design, new Set(["cable1", "tv1"]));
    const placed = must(pasteFragment(design, fragment, [1000, 500]));
    expect(placed.parts.slice(3).map((part) => part.at)).toEqual([
      [1000, 500],
      [1200, 500],
    ]);
    const once = must(pasteFragment(design, fragment));
    const twice = must(pasteFragment(once, fragment));
    expect(twice.parts.slice(3).map((part) => part.at)).toEqual([
      [232, 32],
      [432, 32],
      [264, 64],
      [464, 64],
    ]);
  });

  test("a name of the user's own goes on counting", () => {
    const once = must(pasteFragment(design, copyParts(design, new Set(["tv1"]))));
    const twice = must(pasteFragment(once, copyParts(once, new Set(["tv2"]))));
    expect(twice.parts.slice(3).map((part) => part.label)).toEqual(["Kitchen 2", "Kitchen 3"]);
  });

  // Each paste goes on from the last number, and the copy of the second stays behind that of the first.
  test.each([
    { name: "named by hand, the second stands first", labels: ["Plate 2", "Plate"], step: 200 },
    { name: "named by hand, the second stands lower", labels: ["Plate 2", "Plate"], step: -200 },
    { name: "with typical names", labels: ["Dish 2", "Dish 1"], step: 200 },
  ])("copies count in the order of their originals, time after time: $name", ({ labels, step }) => {
    const parts = dishes(labels.map((label, n) => ({ label, at: [0, n * step] })));
    let now = EMPTY_DESIGN;
    for (let times = 0; times < 3; times += 1) now = must(pasteFragment(now, { parts, wires: [] }));
    const numbers = now.parts.map(({ label }) => Number(/\d+$/.exec(label)?.[0] ?? 1));
    expect(numbers).toEqual([2, 1, 4, 3, 6, 5]);
  });

  test("copies of parts with one and the same name are numbered as one reads: down, then to the right", () => {
    const parts = dishes([
      { label: "Flat", at: [300, 400] },
      { label: "Flat", at: [0, 400] },
      { label: "Flat", at: [500, 0] },
      { label: "Flat", at: [100, 0] },
    ]);
    const pasted = must(pasteFragment(EMPTY_DESIGN, { parts, wires: [] }));
    expect(pasted.parts.map(({ label }) => label)).toEqual(["Flat 4", "Flat 3", "Flat 2", "Flat"]);
  });

  test("nothing pasted changes nothing", () => {
    const paste = pasteFragment(design, { parts: [], wires: [] });
    expect(must(paste)).toBe(design);
    expect(paste.ok && paste.added.size).toBe(0);
  });

  test("of any choice of any design gives a design that a file can hold", () => {
    fc.assert(
      fc.property(
        anyDesign().chain((any) => fc.tuple(fc.constant(any), someOf(any))),
        ([any, chosen]) => {
          const paste = pasteFragment(any, copyParts(any, chosen.parts));
          const after = must(paste);
          expect(readDesign(writeDesign(after))).toEqual({ ok: true, design: after, notes: [] });
          expect(paste.ok && paste.added.size).toBe(chosen.parts.size);
        },
      ),
      { numRuns: 100 },
    );
  });

  test("2,000 parts are pasted in well under a second", () => {
    const many = drawn(["cable"]);
    const [cable] = many.parts;
    if (!cable) throw new Error("no cable");
    const parts = Array.from({ length: 2000 }, (_, i) => ({
      ...cable,
      id: `cable${i + 1}`,
      label: `Loft ${i}`,
    }));
    const start = cpuMs();
    expect(must(pasteFragment({ ...many, parts }, { parts, wires: [] })).parts.length).toBe(4000);
    expect(cpuMs() - start).toBeLessThan(1000);
  });
});
