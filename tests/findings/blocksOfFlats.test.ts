/**
 * Blocks of flats: what is wrong is told once, at the part that a tradesman takes in hand first, however many flats suffer. Who
 * that is is common practice, no source.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Cause } from "../../src/findings/finding.ts";
import { report } from "../../src/findings/report.ts";
import { type Block, floors, joined, launch, roof, tapRiser, trunkAmplifier } from "../blocks.ts";
import { draw } from "../draw.ts";

const causesOf = ([parts, wires]: Block): readonly Cause[] => report(evaluate(draw(parts, wires))).causes;

/** What is said of levels, by culprit and misdeed, each once. */
const blamed = (causes: readonly Cause[]) => [
  ...new Set(
    causes.flatMap(({ findings }) =>
      findings.flatMap((f) =>
        f.rule === "level-limits" && f.facts.culprit
          ? [`${f.facts.culprit.part} ${f.facts.culprit.does}`]
          : [],
      ),
    ),
  ),
];

const GRADED = [22, 20, 18, 18, 16, 14, 12, 10];
const amp = { outputDbuv: 114 };

describe("a riser of eight taps", () => {
  // Graded for its length every flat gets about the same: 62 − 1.1 + 33 = 93.9 dBµV at the head of it.
  test("graded from most loss to least is in order", () => {
    expect(causesOf(joined(launch(62, { ...amp, gainDb: 33 }), tapRiser(GRADED)))).toEqual([]);
  });

  // 10 dB of loss to the first flat, 22 dB and all the line to the last.
  test.each([
    { name: "too much above", gainDb: 38 },
    { name: "too little below", gainDb: 20 },
  ])("the other way round is in the wrong order: $name", ({ gainDb }) => {
    const causes = causesOf(joined(launch(62, { ...amp, gainDb }), tapRiser(GRADED.toReversed())));
    expect(causes).toHaveLength(1);
    expect(blamed(causes)).toEqual(["t1 wrong order"]);
  });

  test("the other way round gives too much to some and too little to others, and is still told once", () => {
    const taps = [8, 8, 10, 10, 12, 12, 14, 16, 18, 18, 20, 22];
    const causes = causesOf(joined(launch(62, { ...amp, gainDb: 26 }), tapRiser(taps)));
    expect(causes).toHaveLength(1);
    expect(new Set(causes[0]?.findings.map((f) => f.at.side))).toEqual(new Set(["too much", "too little"]));
  });

  test("of which one alone is out of its place: that one", () => {
    const taps = [22, 20, 18, 10, 16, 14, 12, 18];
    expect(blamed(causesOf(joined(launch(62, { ...amp, gainDb: 33 }), tapRiser(taps))))).toEqual([
      "t4 low tap loss",
    ]);
  });

  test("all alike, which one knob puts right: the amplifier", () => {
    const causes = causesOf(joined(launch(62, { ...amp, gainDb: 38 }), tapRiser(GRADED.map(() => 12))));
    expect(blamed(causes)).toEqual(["launch high gain"]);
  });
});

describe("cascaded multiswitches", () => {
  const fromRoof = (trunk: string) => (trunk === "ter" ? "uhf.out" : `lnb.${trunk}`);
  const fromAmp = (trunk: string) => `amp.${trunk}-out`;

  // 64 dBµV less 15 m of cable and 15 dB of a passive terrestrial way are 47 before the cable of the flat.
  test("without amplifier get too little at the first of them, whichever flat lacks it", () => {
    const causes = causesOf(joined(roof(64), floors(2, 8, fromRoof)));
    expect(causes).toHaveLength(1);
    expect(causes[0]?.outlets).toHaveLength(16);
    expect(blamed(causes)).toEqual(["m1 gets too little"]);
  });

  test("of six floors, sets that receive nothing included", () => {
    const causes = causesOf(
      joined(
        roof(64),
        floors(6, 4, fromRoof, () => ({ build: "tap" })),
      ),
    );
    expect(blamed(causes)).toEqual(["m1 gets too little"]);
    const lost = causes
      .flatMap((c) => c.findings)
      .filter((f) => f.rule === "receiver-misses" && f.at.service === "tv");
    expect(lost.length).toBeGreaterThan(0);
    expect(new Set(lost.map((f) => f.parts[0]))).toEqual(new Set(["m1"]));
  });

  // A multiswitch has no knob: the one amplifier before all of them is turned down, for the second as for the first.
  test("driven too far hang on their amplifier, each of them", () => {
    const causes = causesOf(
      joined(roof(64), trunkAmplifier({ gainDb: 20, terrestrialGainDb: 22 }), floors(3, 8, fromAmp)),
    );
    expect(causes).toHaveLength(1);
    const driven = causes[0]?.findings.filter((f) => f.rule === "overload") ?? [];
    expect(driven.map((f) => f.at.part)).toEqual(["m1", "m2"]);
    expect(new Set(driven.map((f) => f.parts[0]))).toEqual(new Set(["amp"]));
  });
});

describe("an amplifier in every flat", () => {
  const house = (launchDb: number | null): Block => {
    const eight = Array.from({ length: 8 }, (_, k) => k + 1);
    const parts = Object.fromEntries(
      eight.flatMap((n) => [
        [`a${n}`, ["amp-distribution", { gainDb: 25 }] as const],
        [`p${n}`, ["outlet-tv", { dwelling: `Flat ${n}` }] as const],
        [`tv${n}`, ["receiver-tv"] as const],
      ]),
    );
    const wires = eight
      .map((n) => `s.out${n} > a${n}.in, a${n}.out > p${n}.in, p${n}.tv > tv${n}.in`)
      .join(", ");
    const s = ["splitter", { ways: 8, range: "tv" }] as const;
    const uhf = ["aerial-uhf", { levelDbuv: 60 }] as const;
    if (launchDb === null) return [{ uhf, s, ...parts }, `uhf.out > s.in, ${wires}`];
    const l = ["amp-distribution", { gainDb: launchDb, outputDbuv: 112 }] as const;
    return [{ uhf, l, s, ...parts }, `uhf.out > l.in, l.out > s.in, ${wires}`];
  };

  // 60 − 11 + 25 = 74 dBµV less the plate.
  test("alone is in order", () => {
    expect(causesOf(house(null))).toEqual([]);
  });

  test("behind one for all: that one is told, once", () => {
    const causes = causesOf(house(28));
    expect(causes).toHaveLength(1);
    expect(causes[0]?.receivers).toHaveLength(8);
    expect(new Set(causes[0]?.findings.map((f) => f.parts[0]))).toEqual(new Set(["l"]));
  });
});

describe("a short in the lead of one flat on a riser of single-cable receivers", () => {
  // The taps have diodes: the others keep what they get, and nobody but the short takes the messages of its flat.
  test("is named for all that the flat loses, and the plate with its diode is not", () => {
    const four = [1, 2, 3, 4];
    const bands = [1210, 1420, 1680, 2040];
    const parts = Object.fromEntries(
      four.flatMap((n) => [
        [`t${n}`, ["tap", { tapLossDb: 18 - 2 * n, dc: "all" }] as const],
        [`p${n}`, ["outlet-sat", { satelliteDc: "diode", dwelling: `Flat ${n}` }] as const],
        [
          `rx${n}`,
          [
            "receiver-stacked",
            { tuners: 1, userBands: [{ number: n, centreMHz: bands[n - 1] ?? 0 }] },
          ] as const,
        ],
      ]),
    );
    const wires = four.map((n) =>
      [
        n === 1 ? "lnb.out > t1.in" : `t${n - 1}.out > t${n}.in`,
        n === 2 ? "t2.tap1 > sh.in, sh.out > p2.in" : `t${n}.tap1 > p${n}.in`,
        `p${n}.sat > rx${n}.sat`,
      ].join(", "),
    );
    const causes = causesOf([
      {
        dish: ["dish", { diameterM: 1 }],
        lnb: ["lnb-stacked", { stackDbuv: 90 }],
        sh: ["bad-joint", { fault: "shorted" }],
        end: ["load"],
        ...parts,
      },
      `dish.sky > lnb.sky, ${wires.join(", ")}, t4.out > end.in`,
    ]);
    expect(causes).toHaveLength(1);
    expect(causes[0]?.receivers).toEqual(["rx2"]);
    const named = causes[0]?.findings.filter(
      (f) => f.rule === "receiver-misses" || f.rule === "plane-missing",
    );
    expect(named?.map((f) => f.parts[0])).toEqual(["sh"]);
  });
});

// A multiswitch of taps lives on the receivers behind it. Its terrestrial way and what goes on to the next one are passive: a set, or a
// receiver of the other floor, loses nothing while all others are off.
test("multiswitches that receivers feed take nothing from a set or from the other floor", () => {
  const causes = causesOf(
    joined(
      roof(64),
      trunkAmplifier({ gainDb: 14, terrestrialGainDb: 22 }),
      floors(
        2,
        4,
        (trunk) => `amp.${trunk}-out`,
        () => ({ supply: "receivers", build: "tap" }),
      ),
    ),
  );
  expect(causes.flatMap((c) => c.findings).filter((f) => f.rule === "no-supply")).toEqual([]);
});
