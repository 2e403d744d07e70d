/** What carriers on the sockets of an outlet have to spare: hand-made bands, worked by hand beside each figure. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { PartRecord } from "../../src/evaluate/evaluation.ts";
import type { Verdict } from "../../src/findings/finding.ts";
import { outletMargins } from "../../src/findings/outletMargin.ts";
import { outletVerdict } from "../../src/findings/verdict.ts";
import type { Band } from "../../src/signal/band.ts";
import type { Service } from "../../src/signal/carrier.ts";
import { draw } from "../draw.ts";
import { bandOf, gridOf } from "../signal/bands.ts";
import { recordOf, speaker, stackOf } from "./byHand.ts";

const evaluation = evaluate(draw({ o: ["outlet-quad"] }, ""));

/** The plate with these bands at its sockets: TV, SAT and a second SAT. */
const plate = (
  outputs: Readonly<Record<string, readonly Band[]>>,
  feeds: PartRecord["feeds"] = {},
): PartRecord => ({
  ...recordOf(evaluation, "o"),
  outputs: Object.fromEntries(Object.entries(outputs).map(([port, bands]) => [port, { bands }])),
  feeds,
});

/** A verdict that says so much of one service. */
const handed = (service: Service, got = 1, wanted = got): Verdict => ({
  part: "o",
  role: "outlet",
  state: "works",
  services: [{ service, wanted, got, missing: [] }],
  tuners: [],
});

const marginOf = (record: PartRecord, verdict: Verdict) => {
  const margins = outletMargins(evaluation, record, verdict);
  const service = verdict.services[0]?.service ?? "tv";
  return margins.get(service);
};

// EN 60728-1 as quoted: DVB-T 64 QAM between 45 and 74 dBµV; 64 QAM 2/3 needs 18.7 dB.
describe("the margin on a TV socket", () => {
  const tv = (level: number, noise = 1) => bandOf({ grid: gridOf([474]), level, noise });

  test("is the distance to the nearer limit of level", () => {
    // 74 − 60 = 14 dB.
    const high = marginOf(plate({ tv: [tv(60)] }), handed("tv"));
    expect(high?.marginDb).toBeCloseTo(14, 9);
    expect(high?.tightest).toEqual({ service: "tv", carrier: "474", by: "level high" });
    // 58 − 45 = 13 dB.
    const low = marginOf(plate({ tv: [tv(58)] }), handed("tv"));
    expect(low?.marginDb).toBeCloseTo(13, 9);
    expect(low?.tightest.by).toBe("level low");
  });

  // 60 dBµV over noise of 1000 (µV)², 30 dBµV: 30 − 18.7 = 11.3 dB.
  test("is that of C/N where there is less of it", () => {
    const margin = marginOf(plate({ tv: [tv(60, 1000)] }), handed("tv"));
    expect(margin?.marginDb).toBeCloseTo(11.3, 9);
    expect(margin?.tightest.by).toBe("C/N");
  });

  // Interference counts as noise does: 500 and 500 (µV)².
  test("counts what disturbs as well", () => {
    const band = bandOf({ grid: gridOf([474]), level: 60, noise: 500, interference: 500 });
    expect(marginOf(plate({ tv: [band] }), handed("tv"))?.marginDb).toBeCloseTo(11.3, 9);
  });

  // 60 dBµV over 30 dBµV and over 38 dBµV (10^3.8 = 6309.57 (µV)²): the better way leaves 11.3 dB, the worse 3.3 dB.
  test("is that of the best way where a carrier comes by two", () => {
    const [good, poor] = [tv(60, 1000), tv(60, 6309.573)];
    expect(marginOf(plate({ tv: [good, poor] }), handed("tv"))?.marginDb).toBeCloseTo(11.3, 6);
    expect(marginOf(plate({ tv: [poor, good] }), handed("tv"))?.marginDb).toBeCloseTo(11.3, 6);
  });

  test("names the carrier with the least", () => {
    const band = bandOf({ grid: gridOf([474, 482, 490]), level: [60, 50, 58] });
    const margin = marginOf(plate({ tv: [band] }), handed("tv", 3));
    expect(margin?.marginDb).toBeCloseTo(5, 9);
    expect(margin?.tightest.carrier).toBe("482");
  });

  // The same verdict may come of another signal: 74 − 60 = 14 dB, 74 − 64 = 10 dB.
  test("is worked out anew where the signal has changed", () => {
    const verdict = handed("tv");
    expect(marginOf(plate({ tv: [tv(60)] }), verdict)?.marginDb).toBeCloseTo(14, 9);
    expect(marginOf(plate({ tv: [tv(64)] }), verdict)?.marginDb).toBeCloseTo(10, 9);
  });

  test("is not told where something is missing, or nothing comes", () => {
    expect(marginOf(plate({ tv: [tv(60)] }), handed("tv", 1, 2))).toBeUndefined();
    expect(marginOf(plate({}), handed("tv", 0))).toBeUndefined();
  });
});

// EN 60728-1 as quoted: satellite IF between 47 and 77 dBµV.
describe("the margin of two satellite sockets", () => {
  const sat = (level: number) => bandOf({ from: "d", service: "satellite", grid: gridOf([1500], 30), level });

  test("is that of the poorer one, whichever it is", () => {
    // 50 − 47 = 3 dB; 60 has 13 dB to the foot.
    const at = (first: number, second: number) =>
      marginOf(plate({ sat: [sat(first)], sat2: [sat(second)] }), handed("satellite"))?.marginDb;
    expect(at(50, 60)).toBeCloseTo(3, 9);
    expect(at(60, 50)).toBeCloseTo(3, 9);
  });
});

describe("the margin of a single-cable socket", () => {
  /** Two transponders before the converter, 30 dB and 25 dB over their noise. */
  const held = (cut = Uint16Array.of(0, 0)) =>
    bandOf({
      from: "d",
      service: "satellite",
      grid: gridOf([11_000, 11_040], 30),
      level: 40,
      noise: [10, 31.6228],
      more: { cut, cuts: [{ part: "f", reason: "filter" }] },
    });
  /** User bands 1 and 2 at these levels, nothing lost to the line. */
  const line = (level: readonly number[], holds: readonly Band[]) => {
    const stack = stackOf([1, 2], holds, 10 ** -2.5);
    return bandOf({
      from: "lnb",
      service: "satellite",
      grid: gridOf([1210, 1420], 30),
      level,
      more: { stack },
    });
  };
  const used = (...userBands: readonly number[]) => ({
    sat: [speaker("rx", { request: { polarisation: "V" as const, half: "low" as const, userBands } })],
  });

  // The second transponder: 25 − 18.7 = 6.3 dB; the user band at 62 dBµV has 15 dB to either limit.
  test("is that of the poorest transponder that can be asked for", () => {
    const margin = marginOf(plate({ sat: [line([62, 62], [held()])] }), handed("satellite", 2));
    expect(margin?.marginDb).toBeCloseTo(6.3, 3);
    expect(margin?.tightest).toEqual({ service: "satellite", carrier: "11040", by: "C/N" });
  });

  // Without it the first one is left: 30 − 18.7 = 11.3 dB.
  test("leaves out transponders that do not get to the converter", () => {
    const margin = marginOf(
      plate({ sat: [line([62, 62], [held(Uint16Array.of(0, 1))])] }),
      handed("satellite", 2),
    );
    expect(margin?.marginDb).toBeCloseTo(11.3, 3);
    expect(margin?.tightest.carrier).toBe("11000");
  });

  // User band 2 at 75 dBµV: 77 − 75 = 2 dB. Of one carrier on two user bands the better C/N counts; both are alike, so
  // the first does: 15 dB of level, and C/N decides.
  test("looks at the user bands in use alone", () => {
    const at = (...userBands: readonly number[]) =>
      marginOf(plate({ sat: [line([62, 75], [held()])] }, used(...userBands)), handed("satellite"));
    expect(at(2)?.tightest.by).toBe("level high");
    expect(at(2)?.marginDb).toBeCloseTo(2, 9);
    expect(at(1)?.tightest.by).toBe("C/N");
    expect(at(1)?.marginDb).toBeCloseTo(6.3, 3);
  });

  test("is none where the converter has nothing", () => {
    expect(marginOf(plate({ sat: [line([62, 62], [])] }), handed("satellite", 2))).toBeUndefined();
  });
});

describe("a satellite socket in the rain", () => {
  const socket = (rainRateMmPerH: number) => {
    const transponders = [{ frequencyMHz: 11_300, polarisation: "V", mode: "dvbs-qpsk-3/4" }];
    const wet = evaluate(
      draw(
        {
          rx: ["receiver-sat"],
          o: ["outlet-sat", { lossDb: 0 }],
          lnb: ["lnb-universal"],
          dish: ["dish", { eirpDbw: 46, rainRateMmPerH, transponders }],
        },
        "dish.sky > lnb.sky, lnb.out > o.in, o.sat > rx.sat",
      ),
    );
    const record = recordOf(wet, "o");
    const verdict = outletVerdict(record);
    return verdict && outletMargins(wet, record, verdict).get("satellite");
  };

  // Few decibels of C/N to spare: a rain of 60 mm/h (tropical storms) takes them for more than 0.1 % of a year,
  // which are 526 minutes; no rain never does.
  test("is on a knife's edge where storms are heavy, and not where it never rains", () => {
    const { edge } = socket(60) ?? {};
    expect(edge?.kind).toBe("rain");
    expect(edge?.kind === "rain" ? edge.minutesAYear : 0).toBeGreaterThan(526);
    expect(socket(0)).toBeDefined();
    expect(socket(0)?.edge).toBeUndefined();
  });
});
