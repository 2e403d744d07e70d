/** What a strip shows of a spectrum. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Design, wireId } from "../../../src/design/design.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import type { Band, Spectrum } from "../../../src/signal/band.ts";
import { makeGrid } from "../../../src/signal/grid.ts";
import { bandLook } from "../../../src/ui/canvas/bandLook.ts";
import { carrierState } from "../../../src/ui/canvas/carrierState.ts";
import { stripDrawing } from "../../../src/ui/canvas/stripGeometry.ts";
import { placeTags, type WishedTag } from "../../../src/ui/canvas/stripTags.ts";
import { wireSummary } from "../../../src/ui/canvas/wireSummary.ts";
import { spectrumWords } from "../../../src/ui/canvas/words.ts";
import { draw } from "../../draw.ts";

function on(design: Design, id: string): Spectrum {
  const wire = design.wires.find((w) => wireId(w) === id);
  if (!wire) throw new Error(`no wire ${id}`);
  return evaluate(design).spectrum(wire);
}

/** A plot 20 px high. */
const plot = (width: number) => ({ width, height: 20 });

const count = (spectrum: Spectrum, state: string): number =>
  spectrum.bands.reduce(
    (sum, band) =>
      sum + Array.from(band.level, (_, i) => carrierState(band, i)).filter((s) => s === state).length,
    0,
  );

/** One TV carrier on channel 21 with a C/N need of `requiredDb` and an interferer so far below it. */
function disturbed(ciAboveNeedDb: number): Band {
  const plan = [{ name: "C21", airMHz: 474, widthMHz: 8, noiseMHz: 7.6, mode: "dvbt-64qam-2/3" }];
  const grid = makeGrid(plan);
  const levelDbuv = 60;
  const interferenceDbuv = levelDbuv - ((grid.required[0] ?? 0) + ciAboveNeedDb);
  return {
    origin: { key: "uhf", service: "tv", part: "uhf" },
    grid,
    level: Float64Array.of(levelDbuv),
    noise: Float64Array.of(1),
    interference: Float64Array.of(10 ** (interferenceDbuv / 10)),
    cut: new Uint16Array(1),
    cuts: [],
    shifts: [],
    conditions: [],
    selected: true,
  };
}

describe("a carrier under interference", () => {
  // Spare C/N that it then needs: −10·log10(1 − 10^(−x/10)) dB for C/I x above the need, by power addition:
  // none is enough at 0; 3.02 dB at 3; 1.26 dB at 6; 0.14 dB at 15. That 3 dB and more is red is our choice.
  test.each([
    { aboveDb: -5, state: "hit" },
    { aboveDb: 0, state: "hit" },
    { aboveDb: 2.9, state: "hit" },
    { aboveDb: 6, state: "touched" },
    { aboveDb: 15, state: "live" },
  ])("$aboveDb dB above what it needs is $state", ({ aboveDb, state }) => {
    expect(carrierState(disturbed(aboveDb), 0)).toBe(state);
  });

  test.each(["distant", "mobile"] as const)("is not red where nobody wants it: %s", (service) => {
    // A far transmitter that drowns under the wanted one is what one hopes for.
    const band = disturbed(-40);
    expect(carrierState({ ...band, origin: { ...band.origin, service } }, 0)).toBe("live");
  });

  test("is red on the strip and marks its wire; cut, it no longer matters", () => {
    const band = disturbed(-5);
    expect(stripDrawing({ bands: [band] }, "coax", plot(128)).shapes.map((s) => s.state)).toEqual(["hit"]);
    expect(wireSummary({ bands: [band] }).worst).toBe("hit");
    const cut = { ...band, cut: Uint16Array.of(1) };
    expect(wireSummary({ bands: [cut] })).toEqual({ worst: "clear", colour: null });
  });
});

describe("a strip", () => {
  const aerial = draw({ uhf: ["aerial-uhf"], tv: ["receiver-tv"] }, "uhf.out > tv.in");

  test("shows a channel where the axis says: channel 21 from 470 MHz (306 + 8·21 = 474 MHz centre)", () => {
    const spectrum: Spectrum = { bands: [{ ...disturbed(40), interference: new Float64Array(1) }] };
    const [shape] = stripDrawing(spectrum, "coax", plot(100)).shapes;
    // 470 MHz lies at 32 % and 694 MHz at 50 % of the axis; 8 of those 224 MHz are 0.64 %, less than the
    // least width of 1.2 px.
    expect(shape?.area).toMatch(/^M32,/);
    expect(shape?.area).toContain("33.2,");
  });

  test("is worked out once for each spectrum and size", () => {
    const spectrum = on(aerial, "uhf.out>tv.in");
    expect(stripDrawing(spectrum, "coax", plot(120))).toBe(stripDrawing(spectrum, "coax", plot(120)));
    expect(stripDrawing(spectrum, "coax", plot(128))).not.toBe(stripDrawing(spectrum, "coax", plot(120)));
  });

  test("stands higher for a stronger signal", () => {
    const top = (levelDbuv: number): number => {
      const band = { ...disturbed(40), level: Float64Array.of(levelDbuv), interference: new Float64Array(1) };
      const path = stripDrawing({ bands: [band] }, "coax", plot(100)).shapes[0]?.profile ?? "";
      return Number(/,([\d.]+)/.exec(path)?.[1]);
    };
    expect(top(75)).toBeLessThan(top(60));
    expect(top(60)).toBeLessThan(top(45));
    // Far below anything useful it is still to be seen, above the ground at 20 px.
    expect(top(-30)).toBeLessThan(20);
  });

  test("shows one quadrant of a universal converter solid and three as outlines (EN 61319-1: 13/18 V, 22 kHz)", () => {
    const design = draw(
      { dish: ["dish"], lnb: ["lnb-universal"], sat: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > sat.sat",
    );
    const { shapes, tags } = stripDrawing(on(design, "lnb.out>sat.sat"), "coax", plot(128));
    const states = shapes.map((s) => s.state);
    expect(states.filter((s) => s === "live")).toHaveLength(1);
    expect(states.filter((s) => s === "idle")).toHaveLength(3);
    expect(tags.map((t) => t.text)).toEqual(["V low"]);
  });

  test("outlines what a plate for 950–2150 MHz takes from a wideband feed", () => {
    const design = draw(
      {
        dish: ["dish"],
        lnb: ["lnb-wideband"],
        plate: ["outlet-diplexed"],
        sat: ["receiver-hybrid"],
      },
      "dish.sky > lnb.sky, lnb.v > plate.in, plate.sat > sat.v",
    );
    const before = on(design, "lnb.v>plate.in");
    const after = on(design, "plate.sat>sat.v");
    // Arithmetic: a carrier of which less than nine tenths of its width lie between the edges counts as lost.
    const [band] = before.bands;
    if (!band) throw new Error("no band");
    const lost = [...band.grid.centre].filter((mhz, i) => {
      const half = (band.grid.width[i] ?? 0) / 2;
      const inside = Math.min(mhz + half, 2150) - Math.max(mhz - half, 950);
      return inside < 0.9 * 2 * half;
    }).length;
    expect(lost).toBeGreaterThan(10);
    expect(count(before, "cut")).toBe(0);
    expect(count(after, "cut")).toBe(lost);
    expect(stripDrawing(after, "coax", plot(128)).shapes.map((s) => s.state)).toEqual(["live", "cut"]);
  });

  test("shows both polarisations of the sky one above the other", () => {
    const design = draw({ dish: ["dish"], lnb: ["lnb-quattro"] }, "dish.sky > lnb.sky");
    const { shapes } = stripDrawing(on(design, "dish.sky>lnb.sky"), "sky", plot(100));
    expect(shapes).toHaveLength(2);
    const grounds = shapes.map((s) =>
      Math.max(...[...s.area.matchAll(/,([\d.]+)/g)].map((m) => Number(m[1]))),
    );
    expect(grounds.toSorted((a, b) => a - b)).toEqual([10, 20]);
  });

  test("numbers the user bands of a stacked feed in their order", () => {
    const design = draw(
      { dish: ["dish"], lnb: ["lnb-stacked"], sat: ["receiver-stacked"] },
      "dish.sky > lnb.sky, lnb.out > sat.sat",
    );
    const id = design.wires.map(wireId).find((w) => w.startsWith("lnb.")) ?? "";
    const spectrum = on(design, id);
    const stacked = spectrum.bands.find((b) => b.stack);
    const { blocks } = stripDrawing(spectrum, "coax", plot(128));
    expect(blocks.length).toBeGreaterThan(0);
    expect(blocks.map((b) => b.number)).toEqual([...(stacked?.stack?.numbers ?? [])]);
  });

  test("never yields a path with something that is not a number, whatever is on the wire", () => {
    const odd: Band = {
      ...disturbed(3),
      level: Float64Array.of(Number.NEGATIVE_INFINITY),
      interference: Float64Array.of(Number.MAX_VALUE),
    };
    const { shapes } = stripDrawing({ bands: [odd] }, "coax", plot(128));
    for (const shape of shapes) expect(shape.area + shape.profile).not.toMatch(/NaN|Infinity|undefined/);
    expect(stripDrawing({ bands: [] }, "coax", plot(128))).toEqual({
      shapes: [],
      blocks: [],
      tags: [],
      lost: [],
    });
  });
});

const ROOM = { widthPx: 100, sizePx: 11 };

describe("tags", () => {
  const tag = fc.record({
    text: fc.constantFrom("TV", "DAB", "FM", "V low", "H high", "UB ×8"),
    x: fc.double({ min: 0, max: 144, noNaN: true }),
  });

  test("keep their order and never lie over each other while they fit", () => {
    fc.assert(
      fc.property(fc.uniqueArray(tag, { maxLength: 4, selector: (t) => t.text }), (wishes) => {
        const wished = wishes.map(
          (t): WishedTag => ({ ...t, shortText: t.text.slice(0, 2), colour: "", struck: false, hit: false }),
        );
        const placed = placeTags(wished, { widthPx: 200, sizePx: 11 });
        for (let i = 1; i < placed.length; i++) {
          const [a, b] = [placed[i - 1], placed[i]];
          if (!a || !b) throw new Error("gap");
          // Half of each width at the least character width that a narrow sans-serif has at 11 px, about 4.5 px.
          expect(b.x - a.x).toBeGreaterThanOrEqual(((a.text.length + b.text.length) / 2) * 4.5);
        }
        expect(placed.every((t) => t.x >= 0 && t.x <= 200)).toBe(true);
      }),
    );
  });

  test("of two aerials of one service are one, struck out only when both are lost", () => {
    const one = (struck: boolean): WishedTag => ({
      text: "TV",
      shortText: "TV",
      colour: "",
      x: 40,
      struck,
      hit: false,
    });
    expect(placeTags([one(true), one(false)], ROOM).map((t) => t.struck)).toEqual([false]);
    expect(placeTags([one(true), one(true)], ROOM).map((t) => t.struck)).toEqual([true]);
  });
});

describe("tags without room", () => {
  const wish = (text: string, x: number, hit = false): WishedTag => ({
    text: `${text} in full`,
    shortText: text,
    colour: "",
    x,
    struck: false,
    hit,
  });

  test("become short, then fewer; what collides keeps its name", () => {
    const wished = [wish("FM", 5), wish("DAB", 15), wish("TV", 40, true), wish("V", 90)];
    expect(placeTags(wished, { widthPx: 140, sizePx: 10 }).map((t) => t.text)).toEqual([
      "FM",
      "DAB",
      "TV",
      "V",
    ]);
    const crowded = placeTags(wished, { widthPx: 36, sizePx: 10 }).map((t) => t.text);
    expect(crowded).toContain("TV");
    expect(crowded.length).toBeLessThan(4);
  });
});

describe("what is lost", () => {
  test("has a span over the whole height, wide enough to be seen from afar; what only costs margin has none", () => {
    // One channel of 8 MHz is 0.64 px wide on a plot of 100 px: by itself nobody would see it.
    const { lost } = stripDrawing({ bands: [disturbed(-5)] }, "coax", plot(100));
    expect(lost).toHaveLength(1);
    expect(lost[0]?.width).toBeGreaterThanOrEqual(5);
    // 474 MHz lies 4 of 224 MHz into the stretch from 32 % to 50 %: at 32.3 px.
    expect((lost[0]?.x ?? 0) + (lost[0]?.width ?? 0) / 2).toBeCloseTo(32.6, 0);
    expect(stripDrawing({ bands: [disturbed(6)] }, "coax", plot(100)).lost).toEqual([]);
  });
});

describe("in words", () => {
  test("a wire tells its services, levels and troubles", () => {
    expect(spectrumWords({ bands: [] })).toBe("nothing");
    expect(spectrumWords({ bands: [disturbed(-5)] })).toBe("TV 60 dBµV (its only carrier is lost)");
    expect(spectrumWords({ bands: [{ ...disturbed(40), cut: Uint16Array.of(1) }] })).toBe("TV filtered away");
    expect(spectrumWords({ bands: [{ ...disturbed(40), selected: false }] })).toBe("1 more on request");
  });

  test("every band has a tag beside its colour", () => {
    const design = draw(
      { dish: ["dish"], lnb: ["lnb-universal"], sat: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > sat.sat",
    );
    const looks = on(design, "lnb.out>sat.sat").bands.map(bandLook);
    expect(looks.map((l) => l.words).toSorted()).toEqual([
      "Satellite H high",
      "Satellite H low",
      "Satellite V high",
      "Satellite V low",
    ]);
    expect(new Set(looks.map((l) => l.colour)).size).toBe(4);
  });
});
