/** Sizes and ports of what stands on the canvas. Sizes in the text: drawing guide of the canvas, at zoom 1. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Design, type Part, wireId } from "../../../src/design/design.ts";
import { EXAMPLES } from "../../../src/design/examples.ts";
import { portsOf } from "../../../src/design/lookup.ts";
import { CATALOGUE, defaultOptions } from "../../../src/parts/catalogue.ts";
import { frameOf } from "../../../src/ui/canvas/frames.ts";
import { GRID_PX } from "../../../src/ui/canvas/layout.ts";
import { draw } from "../../draw.ts";

const partOf = (design: Design, id: string): Part => {
  const part = design.parts.find((p) => p.id === id);
  if (!part) throw new Error(`no part ${id}`);
  return part;
};
const frame = (design: Design, id: string) => frameOf(design, partOf(design, id));

describe("a frame", () => {
  test.each(CATALOGUE.map((k) => [k.kind, k] as const))(
    "of %s keeps every port half a step off the grid",
    (_, kind) => {
      const part: Part = {
        id: "x",
        kind: kind.kind,
        label: kind.name,
        options: defaultOptions(kind),
        at: [0, 0],
      };
      const { ports, width, height } = frameOf({ title: "", parts: [part], wires: [] }, part);
      expect(ports.size).toBe(portsOf(part).length);
      for (const { x, y } of ports.values()) {
        expect(y % GRID_PX).toBe(GRID_PX / 2);
        expect(x === 0 || x === width).toBe(true);
        expect(y).toBeLessThan(height);
      }
    },
  );

  test("of a run of cable is a pill, of a receiver a tile, of anything else a card", () => {
    const design = draw(
      { uhf: ["aerial-uhf"], drop: ["cable"], plate: ["outlet-tv"], tv: ["receiver-tv"] },
      "uhf.out > drop.in, drop.out > plate.in, plate.tv > tv.in",
    );
    expect(["uhf", "drop", "plate", "tv"].map((id) => frame(design, id).look)).toEqual([
      "card",
      "pill",
      "card",
      "tile",
    ]);
    expect(frame(design, "drop").width).toBeLessThan(frame(design, "uhf").width / 2);
  });

  test("docks one strip to each connected output, one to the first of a part that feeds nothing yet", () => {
    const design = draw(
      { dish: ["dish"], lnb: ["lnb-quattro"], a: ["receiver-sat"], b: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.vl > a.sat, lnb.hh > b.sat",
    );
    expect(frame(design, "lnb").strips.map((s) => s.port)).toEqual(["vl", "hh"]);
    const alone = draw({ lnb: ["lnb-quattro"] }, "");
    expect(frame(alone, "lnb").strips.map((s) => s.port)).toEqual(["vl"]);
  });

  test("lets outputs that are alike by declaration share a strip, whatever is on them", () => {
    const design = draw(
      { uhf: ["aerial-uhf"], split: ["splitter", { ways: 4 }], a: ["receiver-tv"] },
      "uhf.out > split.in, split.out3 > a.in",
    );
    const { strips } = frame(design, "split");
    expect(strips.map((s) => [s.port, s.outputs])).toEqual([["out3", 4]]);
  });

  test("shows what arrives on the tile of a receiver whose cable begins no strip", () => {
    const design = draw(
      {
        uhf: ["aerial-uhf"],
        drop: ["cable"],
        tv: ["receiver-tv"],
        direct: ["receiver-tv"],
        split: ["splitter"],
      },
      "uhf.out > split.in, split.out1 > drop.in, drop.out > tv.in, split.out2 > direct.in",
    );
    expect(frame(design, "tv").strips.map((s) => [s.port, s.side])).toEqual([["in", "in"]]);
    expect(frame(design, "direct").strips).toEqual([]);
  });

  test("of more than five outputs has no strips: they stand at the far end", () => {
    const design = draw(
      { unit: ["multiswitch", { outputs: 8 }], sat: ["receiver-sat"] },
      "unit.out1 > sat.sat",
    );
    expect(frame(design, "unit").strips).toEqual([]);
    expect(frame(design, "sat").strips.map((s) => s.side)).toEqual(["in"]);
  });

  test("holds its strips without overlap, inside its edges", () => {
    for (const example of EXAMPLES) {
      const design = example.load();
      for (const part of design.parts) {
        const { strips, width, height } = frameOf(design, part);
        let bottom = 0;
        for (const strip of strips) {
          expect(strip.y).toBeGreaterThanOrEqual(bottom);
          expect(strip.x + strip.width).toBeLessThanOrEqual(width);
          bottom = strip.y + strip.height;
        }
        expect(bottom).toBeLessThanOrEqual(height);
      }
    }
  });

  test("is the same object while nothing about size and ports changed", () => {
    const design = EXAMPLES[0]?.load();
    if (!design) throw new Error("no example");
    const moved: Design = {
      ...design,
      parts: design.parts.map((p) => ({ ...p, at: [p.at[0] + 8, p.at[1]] })),
    };
    design.parts.forEach((part, i) => {
      const other = moved.parts[i];
      if (other) expect(frameOf(moved, other)).toBe(frameOf(design, part));
    });
  });

  test("does not move the ports of a part when its first wire comes, so that straight wires stay straight", () => {
    fc.assert(
      fc.property(fc.constantFrom(...CATALOGUE.filter((k) => !k.reception).map((k) => k.kind)), (kind) => {
        const alone = draw({ x: [kind], tv: ["receiver-tv"] }, "");
        const output = portsOf(partOf(alone, "x")).find((p) => p.side === "out" && p.medium === "coax");
        fc.pre(output !== undefined);
        const wire = { from: ["x", output?.id ?? ""] as const, to: ["tv", "in"] as const };
        const first = portsOf(partOf(alone, "x")).find((p) => p.side === "out")?.id === output?.id;
        fc.pre(first && wireId(wire) !== "");
        const joined: Design = { ...alone, wires: [wire] };
        expect([...frame(joined, "x").ports]).toEqual([...frame(alone, "x").ports]);
      }),
    );
  });
});
