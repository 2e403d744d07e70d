/** Open inputs that somebody suffers from, and the note about all that is still open. Common practice, no source. */
import { describe, expect, test } from "vitest";
import { draw } from "../../draw.ts";
import { backwards, foundBy } from "./foundBy.ts";

describe("an input by which a receiver would get what it is without", () => {
  // FM comes in by its own input of the amplifier, DAB by another one: nobody listens to that.
  const design = draw(
    {
      y: ["receiver-fm"],
      x: ["receiver-fm"],
      s: ["splitter", { ways: 3 }],
      t: ["receiver-tv"],
      v: ["amp-distribution", { inputs: "three" }],
      a: ["aerial-uhf"],
    },
    "a.out > v.in, v.out > s.in, s.out1 > y.in, s.out2 > x.in, s.out3 > t.in",
  );

  test("is an error at its part, with them in the order of the signal", () => {
    for (const drawn of [design, backwards(design)]) {
      const [missed, note, ...more] = foundBy("not-connected", drawn);
      expect(more).toEqual([]);
      expect(missed).toMatchObject({
        severity: "error",
        at: { part: "v", port: "fm" },
        wires: [],
        facts: { kind: "missed", ports: ["fm"] },
      });
      expect(missed?.parts[0]).toBe("v");
      expect([...(missed?.parts ?? [])].sort()).toEqual(["v", "x", "y"]);
      expect(missed).not.toHaveProperty("value");
      expect(note).toMatchObject({
        severity: "note",
        at: { part: "v" },
        parts: ["v"],
        wires: [],
        value: 1,
        facts: { kind: "still open", ends: [{ part: "v", port: "dab" }] },
      });
    }
  });

  test("is one finding for a part with several of them", () => {
    const both = draw(
      {
        d: ["receiver-dab"],
        f: ["receiver-fm"],
        s: ["splitter"],
        v: ["amp-distribution", { inputs: "three" }],
        a: ["aerial-uhf"],
      },
      "a.out > v.in, v.out > s.in, s.out1 > d.in, s.out2 > f.in",
    );
    const [missed, ...more] = foundBy("not-connected", both);
    expect(more).toEqual([]);
    expect(missed?.at.part).toBe("v");
    expect(missed?.facts).toMatchObject({ kind: "missed" });
    expect([...(missed?.parts ?? [])].sort()).toEqual(["d", "f", "v"]);
  });
});

describe("what is merely open", () => {
  test("is one note, in the order of the signal and of the ports", () => {
    const design = draw(
      { z: ["receiver-tv"], j: ["combiner", { ways: 3 }], c: ["cable"], a: ["aerial-uhf"] },
      "a.out > c.in, j.out > z.in, c.out > j.in2",
    );
    for (const drawn of [design, backwards(design)])
      expect(foundBy("not-connected", drawn)).toMatchObject([
        {
          severity: "note",
          at: { part: "j" },
          parts: ["j"],
          wires: [],
          value: 2,
          facts: {
            kind: "still open",
            ends: [
              { part: "j", port: "in1" },
              { part: "j", port: "in3" },
            ],
          },
        },
      ]);
  });

  test("names each part once", () => {
    const design = draw({ t: ["receiver-tv"], j: ["combiner"], a: ["aerial-uhf"] }, "");
    const [note, ...more] = foundBy("not-connected", design);
    expect(more).toEqual([]);
    // The aerial's output, two inputs and the output of the combiner, the input of the set.
    expect(note?.value).toBe(5);
    expect([...(note?.parts ?? [])].sort()).toEqual(["a", "j", "t"]);
    expect(note?.at).toEqual({ part: note?.parts[0] });
  });

  test("is nothing where all is joined", () => {
    expect(foundBy("not-connected", draw({ t: ["receiver-tv"], a: ["aerial-uhf"] }, "a.out > t.in"))).toEqual(
      [],
    );
  });
});
