import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { setOption } from "../../../src/design/edits/options.ts";
import { rename } from "../../../src/design/edits/parts.ts";
import { replaceKind } from "../../../src/design/edits/replace.ts";
import { readDesign, writeDesign } from "../../../src/design/file.ts";
import { partById } from "../../../src/design/lookup.ts";
import { CATALOGUE, defaultOptions, kindOf } from "../../../src/parts/catalogue.ts";
import { anyDesign } from "../../arbitraries.ts";
import { drawn, must, wiring } from "../house.ts";

const twin = drawn(
  ["dish", ["lnb-universal", { outputs: "2" }], "cable", "cable"],
  ["dish1/sky > lnb1/sky", "lnb1/out1 > cable1/in", "lnb1/out2 > cable2/in"],
);

describe("Replacing a kind", () => {
  test("a universal twin becomes a wideband converter: both cables stay, V first", () => {
    const after = must(replaceKind(twin, "lnb1", "lnb-wideband"));
    expect(wiring(after)).toEqual(["dish1/sky > lnb1/sky", "lnb1/v > cable1/in", "lnb1/h > cable2/in"]);
    expect(partById(after, "lnb1")).toMatchObject({ label: "Wideband LNB 1", at: [200, 0] });
  });

  test("wires that find no port are taken off, each with a note", () => {
    const quad = drawn(
      ["dish", ["lnb-universal", { outputs: "4" }], "cable", "cable", "cable", "cable"],
      [1, 2, 3, 4].map((n) => `lnb1/out${n} > cable${n}/in`),
    );
    const edit = replaceKind(must(rename(quad, "cable3", "Bedroom")), "lnb1", "lnb-wideband");
    expect(wiring(must(edit))).toEqual(["lnb1/v > cable1/in", "lnb1/h > cable2/in"]);
    expect(edit.ok && edit.notes).toEqual([
      "The wire to “Bedroom” had no port left on “Wideband LNB 1” and was removed.",
      "The wire to “Cable 4” had no port left on “Wideband LNB 1” and was removed.",
    ]);
  });

  test("the single output “out” is the first of many", () => {
    const single = drawn(["lnb-universal", "cable"], ["lnb1/out > cable1/in"]);
    expect(wiring(must(setOption(single, "lnb1", "outputs", "4")))).toEqual(["lnb1/out1 > cable1/in"]);
  });

  test("ports of the same name stay where they are: TV to TV, satellite to satellite", () => {
    const plates = drawn(
      ["outlet-diplexed", "receiver-tv", "receiver-sat"],
      ["plate1/tv > tv1/in", "plate1/sat > sat1/sat"],
    );
    expect(wiring(must(replaceKind(plates, "plate1", "outlet-quad")))).toEqual(wiring(plates));
  });

  test("a label of the user's own stays", () => {
    const named = must(rename(twin, "lnb1", "On the chimney"));
    expect(partById(must(replaceKind(named, "lnb1", "lnb-quattro")), "lnb1")?.label).toBe("On the chimney");
  });

  test("a value the user has set is kept where the new kind has it; an untouched one becomes typical", () => {
    const set = must(setOption(twin, "lnb1", "gainDb", 60));
    const after = partById(must(replaceKind(set, "lnb1", "lnb-quattro")), "lnb1");
    const quattro = kindOf("lnb-quattro");
    if (!quattro) throw new Error("no quattro");
    expect(after?.options).toEqual({ ...defaultOptions(quattro), gainDb: 60 });
  });

  test("an untouched value becomes that of the new kind: 6 dB of an attenuator aren't a filter's loss", () => {
    const pad = drawn(["attenuator"]);
    const after = partById(must(replaceKind(pad, "pad1", "filter")), "pad1");
    const [attenuator, filter] = [kindOf("attenuator"), kindOf("filter")];
    if (!attenuator || !filter) throw new Error("kinds missing");
    expect(defaultOptions(filter).lossDb).not.toBe(defaultOptions(attenuator).lossDb);
    expect(after?.options.lossDb).toBe(defaultOptions(filter).lossDb);
  });

  test("outputs enough for the wires win over the typical number", () => {
    const outlets = Array.from({ length: 8 }, () => "outlet-sat");
    const block = drawn(
      ["multiswitch", ...outlets],
      outlets.map((_, i) => `switch1/out${i + 1} > plate${i + 1}/in`),
    );
    const stacker = kindOf("stacking-converter");
    expect(stacker && defaultOptions(stacker).outputs).toBeLessThan(8);
    expect(wiring(must(replaceKind(block, "switch1", "stacking-converter")))).toEqual(wiring(block));
  });

  test.each([
    { name: "an unknown kind", id: "lnb1", kind: "magic", reason: "There is no kind of part “magic”." },
    {
      name: "a part that is gone",
      id: "lnb9",
      kind: "cable",
      reason: "That part is no longer in the design.",
    },
  ])("is refused for $name", ({ id, kind, reason }) => {
    expect(replaceKind(twin, id, kind)).toEqual({ ok: false, reason });
  });

  test("by its own kind changes nothing", () => {
    expect(must(replaceKind(twin, "lnb1", "lnb-universal"))).toBe(twin);
  });

  test("any part by any kind leaves a design that a file can hold; each lost wire is noted", () => {
    fc.assert(
      fc.property(anyDesign({ maxParts: 12 }), fc.constantFrom(...CATALOGUE), fc.nat(), (design, kind, n) => {
        const part = design.parts[n % Math.max(1, design.parts.length)];
        fc.pre(part !== undefined && part.kind !== kind.kind);
        const edit = replaceKind(design, part?.id ?? "", kind.kind);
        const after = must(edit);
        expect(readDesign(writeDesign(after))).toEqual({ ok: true, design: after, notes: [] });
        expect(edit.ok && edit.notes.length).toBe(design.wires.length - after.wires.length);
      }),
      { numRuns: 300 },
    );
  });
});

describe("Setting an option", () => {
  const split = drawn(
    [["splitter", { ways: 4 }], "receiver-tv", "receiver-tv"],
    ["split1/out1 > tv1/in", "split1/out4 > tv2/in"],
  );

  test("fewer ways take off the wires of the vanished ones, with a note", () => {
    const edit = setOption(split, "split1", "ways", 2);
    expect(wiring(must(edit))).toEqual(["split1/out1 > tv1/in"]);
    expect(edit.ok && edit.notes).toEqual([
      "The wire to “TV set 2” had no port left on “Splitter 1” and was removed.",
    ]);
  });

  test.each([
    { name: "too large", key: "ways", value: 99, says: "Outputs is 99; allowed is 2 to 8." },
    {
      name: "a fraction of a way",
      key: "ways",
      value: 2.5,
      says: "Outputs is 2.5; allowed is a whole number from 2 to 8.",
    },
    { name: "text for a number", key: "isolationDb", value: "much", says: "is “much”; allowed is 0 to" },
    { name: "not a number", key: "isolationDb", value: Number.NaN, says: "is not a number; allowed is 0 to" },
    {
      name: "infinite",
      key: "isolationDb",
      value: Number.POSITIVE_INFINITY,
      says: "is a number far too large; allowed is 0 to",
    },
    { name: "none of the choices", key: "dc", value: "sometimes", says: "is “sometimes”; allowed is “" },
    { name: "no such option", key: "magic", value: 1, says: "“Splitter” has no option “magic”." },
    {
      name: "a name that every object has",
      key: "constructor",
      value: 1,
      says: "has no option “constructor”",
    },
  ])("refuses $name with the label of the field", ({ key, value, says }) => {
    const edit = setOption(split, "split1", key, value);
    expect(edit.ok ? "" : edit.reason).toContain(says);
  });

  test("a wrong value in a row names the row", () => {
    const aerial = drawn(["aerial-uhf"]);
    const edit = setOption(aerial, "aerial1", "channels", [{ channel: 30 }, { channel: 5 }]);
    expect(edit.ok ? "" : edit.reason).toMatch(/^Channels.*, row 2: Channel is 5; allowed is 14 to 69\.$/);
  });

  test("takes minus zero for zero, as a file does", () => {
    const dish = must(setOption(drawn(["dish"]), "dish1", "orbitalPositionDegE", -0));
    expect(partById(dish, "dish1")?.options.orbitalPositionDegE).toBe(0);
  });

  test("the value it has already changes nothing; undefined goes back to the typical one", () => {
    expect(must(setOption(split, "split1", "ways", 4))).toBe(split);
    const typical = must(setOption(split, "split1", "ways", undefined));
    expect(partById(typical, "split1")?.options.ways).toBe(2);
  });
});
