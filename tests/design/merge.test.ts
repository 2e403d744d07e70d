/**
 * What two windows made of one design becomes one. Expected values are the sides themselves: a change of one side
 * only must stand in the result as that side has it.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clashWords } from "../../src/design/clashWords.ts";
import type { Design } from "../../src/design/design.ts";
import { planJoin } from "../../src/design/edits/join.ts";
import { setOption } from "../../src/design/edits/options.ts";
import { moveParts, rename, retitle } from "../../src/design/edits/parts.ts";
import { removeParts } from "../../src/design/edits/remove.ts";
import { replaceKind } from "../../src/design/edits/replace.ts";
import { setSettings } from "../../src/design/edits/settings.ts";
import { addVariant, removeVariant, renameVariant, switchVariant } from "../../src/design/edits/variants.ts";
import { readDesign, writeDesign } from "../../src/design/file.ts";
import { LIMITS } from "../../src/design/limits.ts";
import { partById } from "../../src/design/lookup.ts";
import { mergeDesigns } from "../../src/design/merge.ts";
import { variantNames } from "../../src/design/variants.ts";
import { anyDesign, anyVariants } from "../arbitraries.ts";
import { afterWishes, anyPartWishes, anyWishes, editOf } from "./anyEdits.ts";
import { drawn, must, ref, wiring } from "./house.ts";

const NO_PARTS: ReadonlySet<string> = new Set();

/** Dish, LNB, cable, receiver in a row. */
const line = drawn(
  ["dish", "lnb-universal", "cable", "receiver-sat"],
  ["dish1/sky > lnb1/sky", "lnb1/out > cable1/in", "cable1/out > sat1/sat"],
);

const option = (design: Design, id: string, key: string, value: unknown) =>
  must(setOption(design, id, key, value));
const without = (design: Design, id: string) => must(removeParts(design, new Set([id]), NO_PARTS));

/** As another window has it: read from its text, so that no object is shared. */
function elsewhere(design: Design): Design {
  const reading = readDesign(writeDesign(design));
  if (!reading.ok) throw new Error(reading.problem);
  return reading.design;
}

describe("Any two sides of a design", () => {
  test("merge into a design that the reader takes", () => {
    fc.assert(
      fc.property(anyVariants({ maxParts: 7 }), anyWishes, anyWishes, (base, left, right) => {
        const [ours, theirs] = [afterWishes(base, left), afterWishes(base, right)];
        const { design } = mergeDesigns(base, ours, elsewhere(theirs));
        expect(readDesign(writeDesign(design))).toEqual({ ok: true, design, notes: [] });
      }),
      { numRuns: 150 },
    );
  });

  test("merge the same way each time", () => {
    fc.assert(
      fc.property(anyVariants({ maxParts: 7 }), anyWishes, anyWishes, (base, left, right) => {
        const [ours, theirs] = [afterWishes(base, left), afterWishes(base, right)];
        expect(mergeDesigns(base, ours, theirs)).toEqual(
          mergeDesigns(elsewhere(base), elsewhere(ours), elsewhere(theirs)),
        );
      }),
      { numRuns: 50 },
    );
  });

  test("are the changed one where the other changed nothing", () => {
    fc.assert(
      fc.property(anyVariants({ maxParts: 8 }), anyWishes, (base, wishes) => {
        const changed = afterWishes(base, wishes);
        const kept = mergeDesigns(base, changed, elsewhere(base));
        expect(kept.design).toBe(changed);
        const taken = mergeDesigns(base, base, elsewhere(changed));
        expect(taken.design).toEqual(changed);
        expect([...kept.clashes, ...taken.clashes]).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test("are that very object where both changed the same", () => {
    fc.assert(
      fc.property(anyVariants({ maxParts: 8 }), anyWishes, (base, wishes) => {
        const changed = afterWishes(base, wishes);
        const merged = mergeDesigns(base, changed, elsewhere(changed));
        expect(merged).toEqual({ design: changed, clashes: [] });
        expect(merged.design).toBe(changed);
      }),
      { numRuns: 100 },
    );
  });

  test("both survive where they changed different parts, whichever comes first", () => {
    fc.assert(
      fc.property(anyDesign({ maxParts: 10 }), anyPartWishes, anyPartWishes, (base, left, right) => {
        const even = base.parts.filter((_, i) => i % 2 === 0).map((part) => part.id);
        const odd = base.parts.filter((_, i) => i % 2 === 1).map((part) => part.id);
        // An option that takes a wire off changes the part at its other end too.
        const keepsWires = (design: Design) => design.wires.length === base.wires.length;
        const [ours, theirs] = [afterWishes(base, left, even), afterWishes(base, right, odd)];
        fc.pre(keepsWires(ours) && keepsWires(theirs));
        // An only output is named otherwise than the first of several: its wire goes with it, in place.
        const wires = base.wires.map((wire, i) => {
          const moved = [ours, theirs].flatMap((side) => side.wires[i] ?? []).filter((now) => now !== wire);
          fc.pre(moved.length < 2);
          return moved[0] ?? wire;
        });
        const merged = mergeDesigns(base, ours, theirs);
        expect(merged.clashes).toEqual([]);
        expect(merged.design.wires).toEqual(wires);
        expect(merged.design.parts.map((part) => part.id)).toEqual(base.parts.map((part) => part.id));
        for (const id of even) expect(partById(merged.design, id)).toBe(partById(ours, id));
        for (const id of odd) expect(partById(merged.design, id)).toEqual(partById(theirs, id));
        expect(mergeDesigns(base, theirs, ours).design).toEqual(merged.design);
      }),
      { numRuns: 100 },
    );
  });

  test("are not all without effect: the edits of these properties do change designs", () => {
    const counts = { changed: 0, refused: 0 };
    for (const base of fc.sample(anyVariants({ maxParts: 7 }), { numRuns: 40, seed: 1 })) {
      for (const each of fc.sample(anyWishes, { numRuns: 5, seed: 2 }).flat()) {
        const edit = editOf(base, each);
        if (edit?.ok && edit.design !== base) counts.changed += 1;
        else counts.refused += 1;
      }
    }
    expect(counts.changed).toBeGreaterThan(counts.refused / 2);
  });
});

describe("One part changed in both windows", () => {
  test("takes a value from one and another value from the other", () => {
    const ours = option(line, "cable1", "lengthM", 30);
    const theirs = must(rename(option(line, "cable1", "temperatureC", 35), "cable1", "Loft run"));
    const { design, clashes } = mergeDesigns(line, ours, theirs);
    expect(clashes).toEqual([]);
    expect(partById(design, "cable1")).toMatchObject({
      label: "Loft run",
      options: { ...partById(theirs, "cable1")?.options, lengthM: 30 },
    });
  });

  test.each([
    { what: "lengthM", change: (d: Design, n: number) => option(d, "cable1", "lengthM", 20 + n) },
    { what: "label", change: (d: Design, n: number) => must(rename(d, "cable1", `Run ${n}`)) },
    { what: "place", change: (d: Design, n: number) => must(moveParts(d, new Map([["cable1", [n, n]]]))) },
    {
      what: "kind",
      change: (d: Design, n: number) => must(replaceKind(d, "cable1", n === 1 ? "attenuator" : "dc-block")),
    },
  ])("clashes in its $what, where theirs stands", ({ what, change }) => {
    const theirs = change(line, 2);
    const { design, clashes } = mergeDesigns(line, change(line, 1), theirs);
    expect(clashes).toContainEqual({ part: "cable1", what });
    expect(partById(design, "cable1")).toEqual(partById(theirs, "cable1"));
  });

  test("clashes where one exchanged it and the other set a value that only the old kind has", () => {
    const ours = option(line, "cable1", "lengthM", 30);
    const theirs = must(replaceKind(line, "cable1", "attenuator"));
    expect(mergeDesigns(line, ours, theirs).clashes).toEqual([{ part: "cable1", what: "kind" }]);
  });

  test("clashes in a list as a whole: two rows typed in two windows are not mixed", () => {
    const aerial = drawn(["aerial-uhf"]);
    const key = Object.entries(partById(aerial, "aerial1")?.options ?? {}).find(([, v]) =>
      Array.isArray(v),
    )?.[0];
    if (key === undefined) throw new Error("an aerial has a list of channels");
    const rows = partById(aerial, "aerial1")?.options[key];
    if (!Array.isArray(rows)) throw new Error("no rows");
    const ours = option(aerial, "aerial1", key, rows.slice(1));
    const theirs = option(aerial, "aerial1", key, rows.slice(0, -1));
    const { design, clashes } = mergeDesigns(aerial, ours, theirs);
    expect(clashes).toEqual([{ part: "aerial1", what: key }]);
    expect(partById(design, "aerial1")?.options[key]).toEqual(rows.slice(0, -1));
  });
});

describe("A part taken out in one window", () => {
  test("is gone where the other only moved it", () => {
    const ours = must(moveParts(line, new Map([["cable1", [1, 1]]])));
    const theirs = without(line, "cable1");
    expect(mergeDesigns(line, ours, theirs)).toEqual({ design: theirs, clashes: [] });
    expect(mergeDesigns(line, theirs, ours)).toEqual({ design: theirs, clashes: [] });
  });

  test("clashes and stays where the other worked on it", () => {
    const ours = option(line, "cable1", "lengthM", 30);
    const { design, clashes } = mergeDesigns(line, ours, without(line, "cable1"));
    expect(clashes).toEqual([{ part: "cable1", what: "removed" }]);
    expect(partById(design, "cable1")).toBe(partById(ours, "cable1"));
  });

  test("clashes where the other connected something to it", () => {
    const base = drawn(["aerial-uhf", "receiver-tv"]);
    const ours = must(planJoin(base, ref("aerial1/out"), ref("tv1/in")));
    const { design, clashes } = mergeDesigns(base, ours, without(base, "tv1"));
    expect(wiring(design)).toEqual([]);
    expect(clashes).toEqual([{ part: "aerial1", what: "wire" }]);
  });
});

describe("Wires", () => {
  const many = drawn(["aerial-uhf", "receiver-tv", "receiver-tv", "aerial-uhf"]);
  const join = (from: string, to: string) => must(planJoin(many, ref(from), ref(to)));

  test("to different ports are all there", () => {
    const { design, clashes } = mergeDesigns(
      many,
      join("aerial1/out", "tv1/in"),
      join("aerial2/out", "tv2/in"),
    );
    expect(wiring(design).sort()).toEqual(["aerial1/out > tv1/in", "aerial2/out > tv2/in"]);
    expect(clashes).toEqual([]);
  });

  test("from one output to two inputs clash, and theirs stands", () => {
    const { design, clashes } = mergeDesigns(
      many,
      join("aerial1/out", "tv1/in"),
      join("aerial1/out", "tv2/in"),
    );
    expect(wiring(design)).toEqual(["aerial1/out > tv2/in"]);
    expect(clashes).toEqual([{ part: "aerial1", what: "wire" }]);
  });

  test("to an output that the other window did away with clash", () => {
    const base = drawn([["splitter", { ways: 4 }], "receiver-tv"]);
    const ours = must(planJoin(base, ref("split1/out4"), ref("tv1/in")));
    const { design, clashes } = mergeDesigns(base, ours, option(base, "split1", "ways", 2));
    expect(wiring(design)).toEqual([]);
    expect(clashes).toEqual([{ part: "split1", what: "wire" }]);
  });

  test("connected anew here and taken off there clash: the port is one value", () => {
    const base = join("aerial1/out", "tv1/in");
    const off = must(removeParts(base, new Set(), new Set(["aerial1.out>tv1.in"])));
    const ours = must(planJoin(off, ref("aerial1/out"), ref("tv2/in")));
    expect(mergeDesigns(base, ours, off).clashes).toEqual([{ part: "aerial1", what: "wire" }]);
  });
});

describe("New parts of the same id in both windows", () => {
  const base = drawn(["aerial-uhf", "aerial-uhf"]);
  const ours = drawn(["receiver-tv"], ["aerial1/out > tv1/in"], base);
  const moved = must(moveParts(ours, new Map([["tv1", [800, 0]]])));
  const theirs = drawn(["receiver-tv"], ["aerial2/out > tv1/in"], base);

  test("are both there, ours under the next free id and name, with its wires", () => {
    const { design, clashes } = mergeDesigns(base, moved, theirs);
    expect(design.parts.map(({ id, label }) => [id, label]).slice(2)).toEqual([
      ["tv1", partById(theirs, "tv1")?.label],
      ["tv2", partById(theirs, "tv1")?.label.replace("1", "2")],
    ]);
    expect(partById(design, "tv2")?.at).toEqual([800, 0]);
    expect(wiring(design).sort()).toEqual(["aerial1/out > tv2/in", "aerial2/out > tv1/in"]);
    expect(clashes).toEqual([]);
  });

  test("keep a name of the user's own", () => {
    const named = must(rename(moved, "tv1", "Bedroom"));
    expect(partById(mergeDesigns(base, named, theirs).design, "tv2")?.label).toBe("Bedroom");
  });
});

describe("The design itself", () => {
  test("takes title and settings field by field", () => {
    const ours = must(setSettings(must(retitle(line, "Flat 3")), "limits", "practice"));
    const theirs = must(setSettings(line, "derating", "power"));
    const { design, clashes } = mergeDesigns(line, ours, theirs);
    expect(clashes).toEqual([]);
    expect(design).toMatchObject({ title: "Flat 3", settings: { limits: "practice", derating: "power" } });
  });

  test("clashes in title and setting", () => {
    const ours = must(setSettings(must(retitle(line, "Flat 3")), "limits", "practice"));
    const theirs = must(setSettings(must(retitle(line, "Flat 4")), "limits", "rd346"));
    expect(mergeDesigns(line, ours, theirs).clashes).toEqual([
      { part: null, what: "title" },
      { part: null, what: "limits" },
    ]);
  });

  test("stays within what a design may hold", () => {
    const half = Array.from({ length: LIMITS.parts / 2 + 1 }, (_, i) => i);
    const filled = (prefix: string): Design => ({
      ...line,
      parts: half.map((i) => ({ id: `${prefix}${i}`, kind: "load", label: `${i}`, options: {}, at: [0, 0] })),
      wires: [],
    });
    const empty = { ...line, parts: [], wires: [] };
    const { design, clashes } = mergeDesigns(empty, filled("a"), filled("b"));
    expect(clashes).toEqual([{ part: null, what: "size" }]);
    expect(design.parts.every((part) => part.id.startsWith("b"))).toBe(true);
  });
});

describe("Variants", () => {
  const planned = must(addVariant(line, "Plan A"));

  test("added in both windows are all there, and ours stays at work", () => {
    const { design, clashes } = mergeDesigns(
      line,
      must(addVariant(line, "Plan A")),
      must(addVariant(line, "Plan B")),
    );
    expect(variantNames(design)).toEqual(["As built", "Plan A", "Plan B"]);
    expect(design.variant).toBe("Plan A");
    expect(clashes).toEqual([]);
  });

  test("changed in different windows both change, also where one is at work here and rests there", () => {
    const ours = option(planned, "cable1", "lengthM", 30);
    const theirs = option(must(switchVariant(planned, "As built")), "cable1", "lengthM", 40);
    const { design, clashes } = mergeDesigns(planned, ours, theirs);
    expect(clashes).toEqual([]);
    expect(design.variant).toBe("Plan A");
    expect(partById(design, "cable1")?.options.lengthM).toBe(30);
    expect(design.variants?.[0]?.parts.find((part) => part.id === "cable1")?.options.lengthM).toBe(40);
  });

  test("renamed here and changed there are changed under the new name", () => {
    const ours = must(renameVariant(planned, "As built", "Before the storm"));
    const theirs = option(must(switchVariant(planned, "As built")), "cable1", "lengthM", 40);
    const { design, clashes } = mergeDesigns(planned, ours, theirs);
    expect(clashes).toEqual([]);
    expect(design.variants?.map(({ name }) => name)).toEqual(["Before the storm"]);
    expect(design.variants?.[0]?.parts.find((part) => part.id === "cable1")?.options.lengthM).toBe(40);
  });

  test("dropped here and changed there stay, and clash", () => {
    const ours = must(removeVariant(planned, "As built"));
    const theirs = option(must(switchVariant(planned, "As built")), "cable1", "lengthM", 40);
    const { design, clashes } = mergeDesigns(planned, ours, theirs);
    expect(clashes).toEqual([{ part: null, what: "variant" }]);
    expect(variantNames(design)).toEqual(["As built", "Plan A"]);
  });

  test("of one name but different contents keep it in theirs, and ours takes another", () => {
    const ours = option(must(addVariant(line, "Plan A")), "cable1", "lengthM", 30);
    const theirs = option(must(addVariant(line, "Plan A")), "cable1", "lengthM", 40);
    const { design } = mergeDesigns(line, ours, theirs);
    expect(design.variant).toBe("Plan A 2");
    expect(partById(design, "cable1")?.options.lengthM).toBe(30);
    expect(design.variants?.map(({ name }) => name)).toEqual(["As built", "Plan A"]);
  });

  test("dropped one by each leave theirs, and clash", () => {
    const ours = must(removeVariant(planned, "As built"));
    const theirs = must(removeVariant(planned, "Plan A"));
    expect(mergeDesigns(planned, ours, theirs)).toEqual({
      design: theirs,
      clashes: [{ part: null, what: "variant" }],
    });
  });
});

describe("Clashes in words", () => {
  test("name parts and fields by their labels", () => {
    const design = must(rename(line, "cable1", "Loft run"));
    expect(
      clashWords(
        [
          { part: "cable1", what: "lengthM" },
          { part: null, what: "title" },
        ],
        design,
      ),
    ).toBe("“Loft run” (Length) and the title");
    expect(clashWords([{ part: null, what: "limits" }], design)).toBe("the setting “Limits at outlets”");
    expect(clashWords([], design)).toBe("");
  });

  test("give three examples and count the rest", () => {
    const clashes = Array.from({ length: 17 }, (_, i) => ({ part: `p${i}`, what: "label" }));
    expect(clashWords(clashes, line)).toBe("“p0” (name), “p1” (name), “p2” (name) and 14 more");
  });
});
