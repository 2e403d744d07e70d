/** Verdicts on receivers and outlets: small jobs, the outcome known beforehand. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Verdict } from "../../src/findings/finding.ts";
import { handedOn } from "../../src/findings/handedOn.ts";
import { report } from "../../src/findings/report.ts";
import { outletVerdict } from "../../src/findings/verdict.ts";
import { draw } from "../draw.ts";

type Parts = Parameters<typeof draw>[0];

function verdictOf(parts: Parts, wires: string, part: string): Verdict | undefined {
  return report(evaluate(draw(parts, wires))).verdicts.find((v) => v.part === part);
}

const aerial = (...offsets: readonly number[]): Parts[string] => [
  "aerial-uhf",
  {
    levelDbuv: 60,
    channels: offsets.map((levelOffsetDb, n) => ({
      channel: 30 + 3 * n,
      mode: "dvbt-64qam-2/3",
      levelOffsetDb,
    })),
  },
];

describe("a receiver with nothing to judge", () => {
  test("has nothing connected: it fails", () => {
    const verdict = verdictOf({ tv: ["receiver-tv"], a: aerial(0) }, "", "tv");
    expect(verdict).toMatchObject({ state: "fails", idle: "nothing connected" });
  });

  test("hangs on a lead that leads to no aerial: it fails", () => {
    const verdict = verdictOf({ tv: ["receiver-tv"], k: ["cable"] }, "k.out > tv.in", "tv");
    expect(verdict).toMatchObject({ state: "fails", idle: "no source" });
  });

  test("is in standby: nobody minds", () => {
    const parts: Parts = { rx: ["receiver-sat", { state: "standby" }], lnb: ["lnb-universal"], d: ["dish"] };
    const verdict = verdictOf(parts, "d.sky > lnb.sky, lnb.out > rx.sat", "rx");
    expect(verdict).toMatchObject({ state: "works", idle: "standby" });
    const unplugged: Parts = { ...parts, rx: ["receiver-sat", { state: "unplugged" }] };
    expect(verdictOf(unplugged, "d.sky > lnb.sky, lnb.out > rx.sat", "rx")).toMatchObject({
      state: "works",
      idle: "off",
    });
  });

  test("is not what one is that gets all", () => {
    const verdict = verdictOf({ tv: ["receiver-tv"], a: aerial(0) }, "a.out > tv.in", "tv");
    expect(verdict?.state).toBe("works");
    expect(verdict?.idle).toBeUndefined();
    expect(verdict?.services[0]).toMatchObject({ wanted: 1, got: 1, missing: [] });
  });
});

describe("the tuners of a receiver", () => {
  // A recorder with its second lead off: the first tuner has all 80 transponders, the second none.
  test("each have what is theirs, and what they miss", () => {
    const parts: Parts = { rx: ["receiver-sat-twin"], lnb: ["lnb-universal"], d: ["dish"] };
    const verdict = verdictOf(parts, "d.sky > lnb.sky, lnb.out > rx.sat1", "rx");
    expect(verdict?.state).toBe("fails");
    expect(verdict?.services[0]).toMatchObject({ wanted: 80, got: 80, missing: [] });
    expect(verdict?.tuners).toMatchObject([
      { number: 1, input: "sat1", wanted: 80, got: 80, missing: [] },
      { number: 2, input: "sat2", wanted: 80, got: 0, missing: [{ count: 80, reason: { kind: "no lead" } }] },
    ]);
    expect(verdict?.tuners.some((t) => "userBand" in t)).toBe(false);
  });

  test("share what all of them miss", () => {
    const parts: Parts = {
      rx: ["receiver-sat-twin"],
      ms: ["multiswitch"],
      lnb: ["lnb-quattro"],
      d: ["dish"],
    };
    const wires =
      "d.sky > lnb.sky, lnb.vl > ms.vl, lnb.vh > ms.vh, lnb.hl > ms.hl, ms.out1 > rx.sat1, ms.out2 > rx.sat2";
    const verdict = verdictOf(parts, wires, "rx");
    const open = { count: 20, reason: { kind: "open input", part: "ms", port: "hh" } };
    expect(verdict?.services[0]).toMatchObject({ wanted: 80, got: 60, missing: [open] });
    expect(verdict?.tuners).toMatchObject([
      { got: 60, missing: [open] },
      { got: 60, missing: [open] },
    ]);
  });

  test("are told by their user bands on a single-cable line", () => {
    const parts: Parts = { rx: ["receiver-stacked"], lnb: ["lnb-stacked"], d: ["dish"] };
    const verdict = verdictOf(parts, "d.sky > lnb.sky, lnb.out > rx.sat", "rx");
    expect(verdict?.tuners.map((t) => t.userBand)).toEqual([1, 2]);
  });
});

function outlet(parts: Parts, wires: string, part = "o"): Verdict {
  const record = evaluate(draw(parts, wires)).record(part);
  const verdict = record && outletVerdict(record);
  if (!verdict) throw new Error("no outlet");
  return verdict;
}

describe("an outlet", () => {
  // 60 and 52 dBµV less 1 dB of the plate.
  test("hands on what arrives, with its levels", () => {
    const verdict = outlet({ o: ["outlet-tv"], a: aerial(0, -8) }, "a.out > o.in");
    expect(verdict).toMatchObject({ part: "o", role: "outlet", state: "works", tuners: [] });
    const [tv, ...others] = verdict.services;
    expect(others).toEqual([]);
    expect(tv).toMatchObject({ service: "tv", wanted: 2, got: 2, missing: [] });
    expect(tv?.levelMin).toBeCloseTo(51, 6);
    expect(tv?.levelMax).toBeCloseTo(59, 6);
  });

  // kTB of 7.6 MHz at 290 K into 75 Ω is 3.6 dBµV, and a passive plate adds as much as it takes: the weaker of the
  // two has 51 − 3.6 = 47.4 dB of C/N.
  test("tells the C/N of the weakest", () => {
    const [tv] = outlet({ o: ["outlet-tv"], a: aerial(0, -8) }, "a.out > o.in").services;
    expect(tv?.cnMin).toBeGreaterThan(47);
    expect(tv?.cnMin).toBeLessThan(48);
    expect(tv && "counted" in tv).toBe(false);
  });

  test("with nothing on its cable has nothing to hand on", () => {
    expect(outlet({ o: ["outlet-tv"] }, "")).toMatchObject({
      state: "fails",
      idle: "no source",
      services: [],
    });
    expect(outlet({ o: ["outlet-tv"], k: ["cable"] }, "k.out > o.in")).toMatchObject({ idle: "no source" });
  });

  // C30 ends at 550 MHz, C33 begins at 566: a TV socket up to 555 MHz lets one of the two out.
  test("that stops one of two fails, and says how many", () => {
    const parts: Parts = { o: ["outlet-diplexed", { tvToMHz: 555 }], a: aerial(0, 0) };
    const verdict = outlet(parts, "a.out > o.in");
    expect(verdict.state).toBe("fails");
    expect(verdict.services).toMatchObject([
      {
        service: "tv",
        wanted: 2,
        got: 1,
        missing: [{ why: "cut", count: 1, reason: { kind: "not handed on" }, planes: [] }],
      },
    ]);
  });

  // 20 dBµV are 16 dB above the noise and 64 QAM 2/3 needs 18.7: it arrives, and nobody could watch it.
  test("does not hand on what is too noisy to be watched", () => {
    const parts: Parts = { o: ["outlet-tv"], a: aerial(0, -40) };
    expect(outlet(parts, "a.out > o.in").services).toMatchObject([{ wanted: 2, got: 1 }]);
  });

  test("for TV and satellite is judged by each of the two", () => {
    const parts: Parts = {
      o: ["outlet-diplexed"],
      c: ["diplexer-combine"],
      a: aerial(0),
      d: ["dish"],
      lnb: ["lnb-universal"],
      rx: ["receiver-sat"],
    };
    const verdict = outlet(
      parts,
      "d.sky > lnb.sky, lnb.out > c.sat, a.out > c.tv, c.out > o.in, o.sat > rx.sat",
    );
    expect(verdict.services.map((s) => s.service)).toEqual(["tv", "satellite"]);
  });

  test("is only a plate: other parts have no such verdict", () => {
    const record = evaluate(draw({ s: ["splitter"] }, "")).record("s");
    expect(record && outletVerdict(record)).toBeUndefined();
  });
});

describe("an outlet of a single-cable line", () => {
  const line: Parts = { o: ["outlet-sat"], lnb: ["lnb-stacked"], d: ["dish"] };
  const wires = "d.sky > lnb.sky, lnb.out > o.in";

  const behind = (userBands: readonly { readonly number: number; readonly centreMHz: number }[]) =>
    outlet({ ...line, rx: ["receiver-stacked", { userBands }] }, `${wires}, o.sat > rx.sat`).services;

  test("is asked for the user bands that the receiver behind it is set to", () => {
    const set = [
      { number: 1, centreMHz: 1210 },
      { number: 3, centreMHz: 1680 },
    ];
    expect(behind(set)).toMatchObject([{ wanted: 2, got: 2, counted: "user band", missing: [] }]);
  });

  // The LNB has a set of four or more: any of them may be wanted there one day.
  test("is asked for all where the receiver behind it is set to none", () => {
    const [all] = behind([]);
    expect(all?.wanted).toBeGreaterThanOrEqual(4);
    expect(all?.got).toBe(all?.wanted);
  });

  // 80 m of 1.0 mm steel have 10.4 Ω; this LNB draws 140 + 4 · 35 mA: 2.9 V of 13 V, and 11.5 V are needed;
  // of 17.5 V 14.6 are left, and from 15 V on it turns to horizontal.
  const drop = (more: Parts, wires: string) =>
    evaluate(
      draw(
        {
          o: ["outlet-sat"],
          c: ["cable", { lengthM: 80, grade: "clad-1.0" }],
          m: ["lnb-universal", { outputs: "4", commonMa: 280, outputMa: 0 }],
          k: ["dish"],
          ...more,
        },
        `k.sky > m.sky, m.out1 > c.in, c.out > o.in${wires}`,
      ),
    ).record("o");

  test("fails where the LNB dies on the way to the receiver behind it", () => {
    const record = drop({ r: ["receiver-sat", { polarisation: "H", volts18: 17.5 }] }, ", o.sat > r.sat");
    const verdict = record && outletVerdict(record);
    expect(verdict).toMatchObject({
      state: "fails",
      services: [{ service: "satellite", wanted: 80, got: 0 }],
    });
    const reasons = verdict?.services[0]?.missing.map(({ reason, count }) => [reason.kind, count]);
    expect(reasons).toEqual(
      expect.arrayContaining([
        ["dies at vertical", 40],
        ["too few volts", 40],
      ]),
    );
    // With these all 80 are accounted for.
    expect(reasons).toHaveLength(2);
  });

  test("is no worse for a receiver that gives too few volts itself", () => {
    const weak = { r: ["receiver-sat", { volts13: 11.2, volts18: 15, polarisation: "H" }] } as Parts;
    const short = evaluate(
      draw(
        { o: ["outlet-sat"], m: ["lnb-universal"], k: ["dish"], ...weak },
        "k.sky > m.sky, m.out > o.in, o.sat > r.sat",
      ),
    ).record("o");
    expect(short && outletVerdict(short)?.services[0]).toMatchObject({ wanted: 80, got: 80 });
  });

  test("hands on the carriers of its own socket alone", () => {
    const record = evaluate(draw({ o: ["outlet-tv"], a: aerial(0, 0) }, "a.out > o.in")).record("o");
    if (!record) throw new Error("no outlet");
    const sockets = [
      { port: "tv", services: ["tv"] },
      { port: "radio", services: ["fm"] },
    ] as const;
    expect(handedOn(record, sockets, "tv").map(({ port, i }) => [port, i])).toEqual([
      ["tv", 0],
      ["tv", 1],
    ]);
    expect(handedOn(record, sockets, "fm")).toEqual([]);
  });
});

describe("an outlet with two single-cable lines", () => {
  // The usual set of four, as quoted in public tables of converters.
  const CENTRES_MHZ = [1210, 1420, 1680, 2040];
  const asks = (number: number): Parts[string] => [
    "receiver-stacked",
    { tuners: 1, userBands: [{ number, centreMHz: CENTRES_MHZ[number - 1] ?? 0 }] },
  ];
  const plate = (receivers: Parts, wires: string) =>
    verdictOf(
      { ...receivers, o: ["outlet-sat-twin"], l: ["lnb-stacked", { outputs: "2" }], k: ["dish"] },
      `k.sky > l.sky, l.out1 > o.in, l.out2 > o.in2${wires}`,
      "o",
    )?.services[0];

  test.each([
    { first: 1, second: 2 },
    { first: 1, second: 1 },
  ])("hands on what each of its receivers asks for: user bands $first and $second", ({ first, second }) => {
    const service = plate({ a: asks(first), b: asks(second) }, ", o.sat > a.sat, o.sat2 > b.sat");
    expect(service).toMatchObject({ counted: "user band", wanted: 2, got: 2, missing: [] });
  });

  test("hands on all four where nobody is plugged in yet, and one to the receiver beside it", () => {
    expect(plate({ a: asks(3) }, ", o.sat > a.sat")).toMatchObject({ wanted: 5, got: 5, missing: [] });
  });
});
