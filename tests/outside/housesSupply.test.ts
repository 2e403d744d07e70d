/**
 * Supply of drawn houses against ngspice: each circuit is written by hand from the drawing, as an electrician would, and
 * volts at what lives on them agree within 0.1 V. The solver alone is held to the simulator in directCurrent.test.ts.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { draw, type Sketch } from "../draw.ts";
import { hasNgspice, simulate } from "./ngspice.ts";

const isThere = hasNgspice("the supply of whole houses against a circuit simulator");

/** A junction with a hundredth of the usual emission coefficient: nearly without a drop. */
const SHARP = ".model sharp d(is=1e-12 n=0.01)";

/** A load of constant current; below 5 V its regulator takes less and less. */
const draws = (name: string, node: string, amperes: number) =>
  `b${name} ${node} 0 i=${amperes}*min(1,v(${node})/5)`;

const metres = (lengthM: number, loopOhmPerKm: number): Sketch[string] => [
  "cable",
  { lengthM, grade: "own", loopOhmPerKm },
];

const INPUTS = ["vl", "vh", "hl", "hh"] as const;

describe("a multiswitch that saves energy, with a quattro LNB and a masthead amplifier above it", () => {
  const LENGTHS = { vl: 30, vh: 30, hl: 30, hh: 60 };
  const house = (state: "on" | "standby") =>
    evaluate(
      draw(
        {
          l: ["lnb-quattro", { currentMa: 400 }],
          ...Object.fromEntries(INPUTS.map((x) => [`k${x}`, metres(LENGTHS[x], 130)])),
          h: ["amp-masthead", { milliamps: 80 }],
          kter: metres(40, 130),
          m: ["multiswitch", { energySaving: true, lnbLimitMa: 900, aerialSupply: "12", aerialLimitMa: 200 }],
          drop: metres(35, 36),
          r: ["receiver-sat", { polarisation: "H", state }],
        },
        `${INPUTS.map((x) => `l.${x} > k${x}.in, k${x}.out > m.${x}`).join(", ")},
         h.out > kter.in, kter.out > m.ter, m.out3 > drop.in, drop.out > r.sat`,
      ),
    );
  // Every supply of the unit hangs on a relay that the 18 V of the receiver pull.
  const circuit = (receiverVolts: number) =>
    [
      SHARP,
      ".model relay sw(vt=5 vh=0.5 ron=1e-3 roff=1e9)",
      `vr rx 0 ${receiverVolts}`,
      "rdrop rx wake 1.26",
      ...INPUTS.flatMap((x) => [
        `v${x} s${x} 0 ${x.startsWith("h") ? 18 : 13}`,
        `s${x} s${x} t${x} wake 0 relay`,
        `d${x} t${x} u${x} sharp`,
        `r${x} u${x} l${x} ${(LENGTHS[x] * 130) / 1000}`,
        `do${x} l${x} lnb sharp`,
        `rm${x} l${x} 0 1e6`,
      ]),
      draws("lnb", "lnb", 0.4),
      "vter ster 0 12",
      "ster ster tter wake 0 relay",
      "rter tter mast 5.2",
      draws("mast", "mast", 0.08),
      "rmlnb lnb 0 1e6",
    ].join("\n");

  test.runIf(isThere).each([
    { name: "awake", state: "on" as const, receiverVolts: 18 },
    { name: "asleep", state: "standby" as const, receiverVolts: 0 },
  ])("$name", ({ state, receiverVolts }) => {
    const evaluation = house(state);
    const read = ["v(lhl)", "v(lhh)", "v(mast)"];
    const [hl = 0, hh = 0, mast = 0] = simulate({ circuit: circuit(receiverVolts), commands: ["op"], read });
    const { hl: atHl, hh: atHh } = evaluation.record("l")?.feeds ?? {};
    expect(Math.abs((atHl?.[0]?.volts ?? 0) - hl)).toBeLessThan(0.1);
    expect(Math.abs((atHh?.[0]?.volts ?? 0) - hh)).toBeLessThan(0.1);
    expect(Math.abs((evaluation.record("h")?.feeds.out?.[0]?.volts ?? 0) - mast)).toBeLessThan(0.1);
    expect(evaluation.record("l")?.powered).toBe(state === "on");
    expect(evaluation.record("h")?.powered).toBe(state === "on");
  });
});

describe("two multiswitches that a head end feeds over four trunks, with a resistor at the end of one", () => {
  const UPPER = { vl: 30, vh: 30, hl: 60, hh: 60 };
  const LOWER_M = 25;
  const OHM_PER_KM = 60;

  test.runIf(isThere)("at both of them", () => {
    const evaluation = evaluate(
      draw(
        {
          t: ["amp-trunks", { terrestrial: false, trunkSupply: "15", trunkLimitMa: 2000 }],
          ...Object.fromEntries(INPUTS.map((x) => [`k${x}`, metres(UPPER[x], OHM_PER_KM)])),
          m1: ["multiswitch", { supply: "head", cascade: true, terrestrial: false, ownMa: 350 }],
          ...Object.fromEntries(INPUTS.map((x) => [`j${x}`, metres(LOWER_M, OHM_PER_KM)])),
          m2: ["multiswitch", { supply: "head", cascade: true, terrestrial: false, ownMa: 450 }],
          end: ["load", { dcBlocked: false }],
          r1: ["receiver-sat"],
          r2: ["receiver-sat"],
        },
        `${INPUTS.map((x) => `t.${x}-out > k${x}.in, k${x}.out > m1.${x}, m1.${x}-thru > j${x}.in, j${x}.out > m2.${x}`).join(", ")},
         m2.vl-thru > end.in, m1.out1 > r1.sat, m2.out1 > r2.sat`,
      ),
    );
    const circuit = [
      SHARP,
      ...INPUTS.flatMap((x) => [
        `v${x} s${x} 0 15`,
        `d${x} s${x} t${x} sharp`,
        `rk${x} t${x} a${x} ${(UPPER[x] * OHM_PER_KM) / 1000}`,
        `da${x} a${x} one sharp`,
        `rj${x} a${x} b${x} ${(LOWER_M * OHM_PER_KM) / 1000}`,
        `db${x} b${x} two sharp`,
      ]),
      draws("one", "one", 0.35),
      draws("two", "two", 0.45),
      "rend bvl 0 75",
    ].join("\n");
    const read = ["v(avl)", "v(ahh)", "v(bvl)", "v(bhh)", "i(vvl)*-1000", "i(vhh)*-1000"];
    const [avl = 0, ahh = 0, bvl = 0, bhh = 0, vlMa = 0, hhMa = 0] = simulate({
      circuit,
      commands: ["op"],
      read,
    });
    const [one, two] = ["m1", "m2"].map((id) => evaluation.record(id)?.feeds);
    expect(Math.abs((one?.vl?.[0]?.volts ?? 0) - avl)).toBeLessThan(0.1);
    expect(Math.abs((one?.hh?.[0]?.volts ?? 0) - ahh)).toBeLessThan(0.1);
    expect(Math.abs((two?.vl?.[0]?.volts ?? 0) - bvl)).toBeLessThan(0.1);
    expect(Math.abs((two?.hh?.[0]?.volts ?? 0) - bhh)).toBeLessThan(0.1);
    const given = evaluation.record("t")?.demands;
    expect(Math.abs((given?.["vl-out"]?.milliamps ?? 0) - vlMa)).toBeLessThan(3);
    expect(Math.abs((given?.["hh-out"]?.milliamps ?? 0) - hhMa)).toBeLessThan(3);
  });
});

describe("a single-cable LNB that a power inserter and three receivers feed together", () => {
  test.runIf(isThere)("at the LNB, and who gives how much", () => {
    const volts = { r1: 14.9, r2: 14.7, r3: 13 };
    const box = (n: 1 | 2 | 3): Sketch[string] => [
      "receiver-stacked",
      { tuners: 1, userBands: [{ number: n, centreMHz: 1210 }], volts13: volts[`r${n}`] },
    ];
    const evaluation = evaluate(
      draw(
        {
          l: ["lnb-stacked", { currentMa: 350 }],
          up: metres(40, 52),
          i: ["power-inserter", { volts: 14, limitMa: 500, receiver: "passed" }],
          below: metres(10, 52),
          s: ["splitter", { ways: 3, dc: "all" }],
          c1: metres(10, 52),
          c2: metres(25, 52),
          c3: metres(40, 52),
          r1: box(1),
          r2: box(2),
          r3: box(3),
        },
        `l.out > up.in, up.out > i.in, i.out > below.in, below.out > s.in, s.out1 > c1.in, c1.out > r1.sat,
         s.out2 > c2.in, c2.out > r2.sat, s.out3 > c3.in, c3.out > r3.sat`,
      ),
    );
    // Diodes of 0.5 V in the splitter, one without a drop in the inserter.
    const circuit = [
      SHARP,
      "vi si 0 14",
      "di si mid sharp",
      "rup mid lnb 2.08",
      draws("lnb", "lnb", 0.35),
      "dpass low mid sharp",
      "rbelow split low 0.52",
      ...[1, 2, 3].flatMap((n) => [
        `v${n} s${n} 0 ${[14.9, 14.7, 13][n - 1]}`,
        `d${n} s${n} p${n} sharp`,
        `r${n} p${n} q${n} ${[0.52, 1.3, 2.08][n - 1]}`,
        `vd${n} q${n} w${n} 0.5`,
        `ds${n} w${n} split sharp`,
        `rm${n} w${n} 0 1e6`,
      ]),
    ].join("\n");
    const read = ["v(lnb)", "i(v1)*-1000", "i(v2)*-1000", "i(v3)*-1000"];
    const [lnb = 0, ...milliamps] = simulate({ circuit, commands: ["op"], read });
    expect(Math.abs((evaluation.record("l")?.feeds.out?.[0]?.volts ?? 0) - lnb)).toBeLessThan(0.1);
    ["r1", "r2", "r3"].forEach((id, n) => {
      const given = evaluation.record(id)?.demands.sat?.milliamps ?? 0;
      expect(Math.abs(given - (milliamps[n] ?? 0)), id).toBeLessThan(3);
    });
  });
});
