/** What a receiver has to spare: hand-worked beside each figure. */
import { describe, expect, test } from "vitest";
import { type Settings, USUAL_SETTINGS } from "../../src/design/settings.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Verdict } from "../../src/findings/finding.ts";
import { byUrgency } from "../../src/findings/margin.ts";
import { shareWithout } from "../../src/findings/rainOutage.ts";
import { report } from "../../src/findings/report.ts";
import { apart, verdictSentence } from "../../src/sentences/verdict.ts";
import { draw } from "../draw.ts";

/** One multiplex at a known level, through a pad, into a TV set. */
function tv(o: {
  readonly levelDbuv: number;
  readonly padDb?: number;
  readonly mode?: string;
  readonly settings?: Partial<Settings>;
}) {
  const design = draw(
    {
      set: ["receiver-tv"],
      pad: ["attenuator", { lossDb: o.padDb ?? 0 }],
      aerial: [
        "aerial-uhf",
        {
          levelDbuv: o.levelDbuv,
          channels: [{ channel: 30, mode: o.mode ?? "dvbt-64qam-2/3", levelOffsetDb: 0 }],
        },
      ],
    },
    "aerial.out > pad.in, pad.out > set.in",
  );
  const evaluation = evaluate({ ...design, settings: { ...USUAL_SETTINGS, ...o.settings } });
  const verdict = report(evaluation).verdicts.find((v) => v.part === "set");
  if (!verdict) throw new Error("no verdict");
  return { verdict, words: verdictSentence(verdict, evaluation) };
}

const told = ({ state, tightest, edge }: Verdict) => [state, tightest?.by, edge?.kind];

/** Two channels next to each other, so many decibels apart, into a set that takes so much power. */
function neighbours(levelOffsetDb: number, overloadDbuv = 98.75) {
  const mode = "dvbt-64qam-2/3";
  const channels = [
    { channel: 33, mode, levelOffsetDb: 0 },
    { channel: 34, mode, levelOffsetDb },
  ];
  const parts = {
    set: ["receiver-tv", { overloadDbuv }],
    aerial: ["aerial-uhf", { levelDbuv: 60, channels }],
  } as const;
  const evaluation = evaluate({ ...draw(parts, "aerial.out > set.in"), settings: WIDE });
  const verdict = report(evaluation).verdicts.find((v) => v.part === "set");
  if (!verdict) throw new Error("no verdict");
  return { verdict, words: verdictSentence(verdict, evaluation) };
}

/** Limits that a level does not come near. */
const WIDE: Settings = {
  ...USUAL_SETTINGS,
  limits: "own",
  ownLimits: [{ service: "tv", minDbuv: 0, maxDbuv: 120, cnDb: 0, merDb: 0, differenceDb: 0 }],
};

describe("margin of a tuner against being blocked", () => {
  // A neighbour may be 30 dB stronger (ITU-R BT.1368, from memory); tuners stray by 3 dB, from the ranges quoted there.
  test("half a decibel from a neighbour that blocks it is a knife’s edge", () => {
    const { verdict, words } = neighbours(29.5);
    expect(told(verdict)).toEqual(["edge", "neighbour", "spread"]);
    expect(verdict.marginDb).toBeCloseTo(0.5, 9);
    expect(words).toContain(
      "C33 has 0.5 dB to spare (against being blocked by a stronger neighbour), and the spread of real parts is 3 dB",
    );
  });

  test("four decibels are none", () => {
    const { verdict } = neighbours(26);
    expect(told(verdict)).toEqual(["works", "neighbour", undefined]);
    expect(verdict.marginDb).toBeCloseTo(4, 9);
  });

  // 60 and 70 dBµV together: 10⁶ + 10⁷ = 1.1·10⁷, 70.41 dBµV; the tuner takes 71.
  test("so it is with all signals together", () => {
    const { verdict, words } = neighbours(10, 71);
    expect(told(verdict)).toEqual(["edge", "all signals", "spread"]);
    expect(verdict.marginDb).toBeCloseTo(0.59, 2);
    expect(words).toContain("0.6 dB to spare (all signals together against an overloaded tuner)");
  });
});

describe("margin of a TV set", () => {
  // EN 60728-1 as quoted: DVB-T 64 QAM between 45 and 74 dBµV.
  test("above the middle of the range it is the distance to the upper limit", () => {
    const { verdict } = tv({ levelDbuv: 66 });
    expect(verdict.marginDb).toBeCloseTo(74 - 66, 9);
    expect(told(verdict)).toEqual(["works", "level high", undefined]);
    expect(verdict.tightest?.carrier).toBe("C30");
  });

  // Noise of a source at 290 K and a tuner of 8 dB: kTB of 7.6 MHz into 75 Ω is 3.6 dBµV (k = 1.38e-23, 20 °C rounded off),
  // plus 8 dB: 11.6 dBµV. 64 QAM 2/3 needs less than 20 dB, so C/N has more to spare than the level.
  test("below the middle it is the distance to the lower limit", () => {
    const { verdict } = tv({ levelDbuv: 55 });
    expect(verdict.marginDb).toBeCloseTo(55 - 45, 9);
    expect(told(verdict)).toEqual(["works", "level low", undefined]);
  });

  test("a pad counts", () => {
    expect(tv({ levelDbuv: 66, padDb: 13 }).verdict.marginDb).toBeCloseTo(66 - 13 - 45, 9);
  });

  // A level at the terminals is known to 2 dB: 1 dB to spare is no reserve, 3 dB are.
  test("less to spare than the level is known by is a knife's edge", () => {
    expect(told(tv({ levelDbuv: 46 }).verdict)).toEqual(["edge", "level low", "spread"]);
    // A decibel or two over the highest level take no picture; what blocks a tuner is judged by its power.
    expect(told(tv({ levelDbuv: 73 }).verdict)).toEqual(["works", "level high", undefined]);
    expect(told(tv({ levelDbuv: 48 }).verdict)).toEqual(["works", "level low", undefined]);
  });

  test("received beyond a limit is a knife's edge, by how much is said", () => {
    const { verdict, words } = tv({ levelDbuv: 43.5 });
    expect(told(verdict)).toEqual(["edge", "level low", "outside limits"]);
    expect(verdict.marginDb).toBeCloseTo(-1.5, 9);
    expect(words).toContain("C30 is 1.5 dB below the lowest level");
  });

  test("the design may ask for a distance to either limit", () => {
    const settings = { keepDb: 6 };
    expect(told(tv({ levelDbuv: 50, settings }).verdict)).toEqual(["edge", "level low", "kept distance"]);
    expect(told(tv({ levelDbuv: 69, settings }).verdict)).toEqual(["edge", "level high", "kept distance"]);
    expect(told(tv({ levelDbuv: 51.5, settings }).verdict)).toEqual(["works", "level low", undefined]);
  });

  // Known to 2 dB at the aerial, 0.5 dB of the pad. Return losses: aerial 10 dB, pad 18 dB, set 8 dB, as voltages 0.3162, 0.1259,
  // 0.3981. Before the pad of 0 dB √(0.1259² + 0.3981²) = 0.4175 comes back, times 0.3162: 0.1320, +1.077 and −1.230 dB;
  // between pad and set 0.0501, +0.425 and −0.447 dB. A quarter of all their squares is (0.8737 dB)².
  test("the spread that a level needs is said, mismatch in it", () => {
    const { edge } = tv({ levelDbuv: 46 }).verdict;
    expect(edge?.kind === "spread" ? edge.neededDb : 0).toBeCloseTo(Math.hypot(2, 0.5, 0.8737), 3);
  });

  // 32 + 16 − 0.7 = 47.3 dBµV, 2.3 dB above the foot. The level is known to √(2² + 1.5² + 0.3²) = 2.5 dB; C/N to 2.1 dB.
  test("a level has to have more to spare than it is known by, not than C/N is known by", () => {
    const channels = [{ channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }];
    const parts = {
      set: ["receiver-tv"],
      psu: ["power-inserter", { lossDb: 0.7 }],
      m: ["amp-masthead", { gainDb: 16 }],
      a: ["aerial-uhf", { levelDbuv: 32, channels }],
    } as Parameters<typeof draw>[0];
    const evaluation = evaluate(draw(parts, "a.out > m.in, m.out > psu.in, psu.out > set.in"));
    const verdict = report(evaluation).verdicts.find((v) => v.part === "set");
    expect(verdict?.marginDb).toBeCloseTo(2.3, 6);
    expect(verdict && told(verdict)).toEqual(["edge", "level low", "spread"]);
  });

  test("nothing is said of a reserve where something is missing", () => {
    const { verdict } = tv({ levelDbuv: 20 });
    expect(verdict.state).toBe("fails");
    expect(verdict.marginDb).toBeUndefined();
    expect(verdict.tightest).toBeUndefined();
  });
});

describe("margin among several carriers and limits", () => {
  const channels = [
    { channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 },
    { channel: 33, mode: "dvbt-64qam-2/3", levelOffsetDb: -8 },
    { channel: 36, mode: "dvbt-64qam-2/3", levelOffsetDb: 3 },
  ];
  const three = (levelDbuv: number, settings: Partial<Settings> = {}) => {
    const parts = { set: ["receiver-tv"], a: ["aerial-uhf", { levelDbuv, channels }] } as Parameters<
      typeof draw
    >[0];
    const design = draw(parts, "a.out > set.in");
    const evaluation = evaluate({ ...design, settings: { ...USUAL_SETTINGS, ...settings } });
    return report(evaluation).verdicts.find((v) => v.part === "set");
  };

  // Between 45 and 74 dBµV: C33 at 52 has 7 dB to the foot, C36 at 63 has 11 dB to the top.
  test("the carrier that is nearest to its limit is told, the weakest …", () => {
    const verdict = three(60);
    expect(verdict?.marginDb).toBeCloseTo(7, 9);
    expect(verdict?.tightest).toEqual({ service: "tv", carrier: "C33", by: "level low" });
  });

  // C36 at 69 has 5 dB to the top, C33 at 58 has 13 dB to the foot.
  test("… or the strongest", () => {
    const verdict = three(66);
    expect(verdict?.marginDb).toBeCloseTo(5, 9);
    expect(verdict?.tightest).toEqual({ service: "tv", carrier: "C36", by: "level high" });
  });

  // With no limits of one's own for TV only C/N is left, and there the weakest carrier has least.
  test("where nothing is said of levels, C/N decides", () => {
    const verdict = three(66, { limits: "own", ownLimits: [] });
    expect(verdict?.tightest).toEqual({ service: "tv", carrier: "C33", by: "C/N" });
    expect(verdict?.services[0]?.marginDb).toBe(verdict?.marginDb);
  });

  // A receiver that misses one carrier of three has no margin, however much the others have.
  test("a missing carrier leaves none", () => {
    expect(three(34)).toMatchObject({ state: "fails", services: [{ wanted: 3, got: 2 }] });
    expect(three(34)?.marginDb).toBeUndefined();
  });

  test("what is on an edge is told before what merely has less to spare", () => {
    const tightest = { service: "tv", carrier: "C30", by: "C/N" } as const;
    const less = { service: "tv", marginDb: 3, tightest } as const;
    const more = { service: "tv", marginDb: 5, tightest } as const;
    const edge = { ...more, edge: { kind: "spread", neededDb: 6 } } as const;
    expect([less, edge].sort(byUrgency)).toEqual([edge, less]);
    expect([edge, less].sort(byUrgency)).toEqual([edge, less]);
    expect([more, less].sort(byUrgency)).toEqual([less, more]);
  });
});

describe("margin of a satellite receiver", () => {
  const sat = (o: {
    readonly rainRateMmPerH: number;
    readonly gainDb?: number;
    readonly eirpDbw?: number;
  }) => {
    const transponders = [
      { frequencyMHz: 11_300, polarisation: "V", symbolRateMsps: 27.5, mode: "dvbs-qpsk-3/4" },
    ];
    // One transponder alone under an empty sky: nothing but noise counts.
    const sky = { transponders, neighbours: [] };
    const parts = {
      rx: ["receiver-sat"],
      lnb: ["lnb-universal", { gainDb: o.gainDb ?? 55 }],
      dish: ["dish", { eirpDbw: o.eirpDbw ?? 46, rainRateMmPerH: o.rainRateMmPerH, ...sky }],
    } as Parameters<typeof draw>[0];
    const evaluation = evaluate(draw(parts, "dish.sky > lnb.sky, lnb.out > rx.sat"));
    const verdict = report(evaluation).verdicts.find((v) => v.part === "rx");
    if (!verdict) throw new Error("no verdict");
    return verdict;
  };

  // About 3 dB of C/N to spare: a rain of 60 mm/h (tropical storms) takes them for more than 0.1 % of a year, no rain never.
  test("rain that takes it for longer than 0.1 % of a year makes it a knife's edge", () => {
    const verdict = sat({ rainRateMmPerH: 60 });
    expect(told(verdict)).toEqual(["edge", "C/N", "rain"]);
    const { edge } = verdict;
    expect(edge?.kind === "rain" ? edge.minutesAYear : 0).toBeGreaterThan(526);
  });

  test("the same without rain is enough", () => {
    expect(told(sat({ rainRateMmPerH: 0 }))).toEqual(["works", "C/N", undefined]);
  });

  // EIRP 1 dB, pointing 0.3 dB, clear sky 0.1 dB, noise figure 0.746 dB: C/N is known to 1.287 dB. The level, with the
  // gain's 2.5 dB, is not known to 2.8 dB, but that is no matter for C/N.
  test("C/N has to have more to spare than it is known by, not than the level is known by", () => {
    const enough = sat({ rainRateMmPerH: 0, eirpDbw: 45 });
    expect(told(enough)).toEqual(["works", "C/N", undefined]);
    expect(enough.marginDb ?? 9).toBeLessThan(2.8);
    const few = sat({ rainRateMmPerH: 0, eirpDbw: 43.5 });
    expect(told(few)).toEqual(["edge", "C/N", "spread"]);
    expect(few.edge?.kind === "spread" ? few.edge.neededDb : 0).toBeCloseTo(1.287, 3);
  });

  // 5 dB more gain bring the level within about 3 dB of 77 dBµV: less than what C/N has, and no edge.
  test("less to spare in level does not hide that rain takes the picture", () => {
    const dry = sat({ rainRateMmPerH: 0, gainDb: 60 });
    const wet = sat({ rainRateMmPerH: 60, gainDb: 60 });
    expect(told(dry)).toEqual(["works", "level high", undefined]);
    expect(told(wet)).toEqual(["edge", "C/N", "rain"]);
    expect(wet.marginDb ?? 0).toBeGreaterThan(dry.marginDb ?? 0);
  });
});

describe("rain between the shares looked at", () => {
  const rows = [
    { timePercent: 1, attenuationDb: 0, lossOfCnDb: 1 },
    { timePercent: 0.1, attenuationDb: 0, lossOfCnDb: 3 },
    { timePercent: 0.01, attenuationDb: 0, lossOfCnDb: 9 },
  ];

  test("a margin at a row has that row's share", () => {
    expect(shareWithout(rows, 3)).toBeCloseTo(0.1, 9);
    expect(shareWithout(rows, 1)).toBeCloseTo(1, 9);
  });

  // Half the way from 1 to 3 dB is half the way from 1 to 0.1 on a logarithmic scale: 10^−0.5.
  test("between two rows the logarithm of the share goes with the loss", () => {
    expect(shareWithout(rows, 2)).toBeCloseTo(0.316228, 5);
    expect(shareWithout(rows, 6)).toBeCloseTo(0.0316228, 6);
  });

  test("beyond the rows it is at least, or none of what was looked at", () => {
    expect(shareWithout(rows, 0.5)).toBe(1);
    expect(shareWithout(rows, 9.5)).toBe(0);
    expect(shareWithout([], 3)).toBe(0);
  });
});

test("a difference of figures stays one as shown", () => {
  expect([apart(11.48, 11.52), apart(11.52, 11.48)]).toEqual(["11.48", "11.52"]);
  expect([apart(1.7, 2.1), apart(2.1, 1.7)]).toEqual(["1.7", "2.1"]);
  expect(apart(0.04, 0)).toBe("0.04");
});

/** One multiplex on a plate for TV alone, with or without a set behind it; the plate loses nothing. */
function plate(o: {
  readonly levelDbuv: number;
  readonly lossDb?: number;
  readonly settings?: Partial<Settings>;
}) {
  const design = draw(
    {
      plate: ["outlet-tv", { lossDb: o.lossDb ?? 0 }],
      aerial: [
        "aerial-uhf",
        { levelDbuv: o.levelDbuv, channels: [{ channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }] },
      ],
    },
    "aerial.out > plate.in",
  );
  const evaluation = evaluate({ ...design, settings: { ...USUAL_SETTINGS, ...o.settings } });
  const verdict = report(evaluation).verdicts.find((v) => v.part === "plate");
  if (!verdict) throw new Error("no verdict");
  return { verdict, words: verdictSentence(verdict, evaluation) };
}

describe("margin of an outlet", () => {
  // EN 60728-1 as quoted: DVB-T 64 QAM between 45 and 74 dBµV at the outlet, here behind the plate's own loss.
  test.each([
    { levelDbuv: 66, lossDb: 0, by: "level high", marginDb: 74 - 66 },
    { levelDbuv: 66, lossDb: 12, by: "level low", marginDb: 66 - 12 - 45 },
  ])("$levelDbuv dBµV before a plate that loses $lossDb dB: $by", ({ levelDbuv, lossDb, by, marginDb }) => {
    const { verdict } = plate({ levelDbuv, lossDb });
    expect(told(verdict)).toEqual(["works", by, undefined]);
    expect(verdict.marginDb).toBeCloseTo(marginDb, 9);
    expect(verdict.services[0]?.marginDb).toBeCloseTo(marginDb, 9);
    expect(verdict.tightest?.carrier).toBe("C30");
  });

  // A level at the terminals is known to 2 dB (spread of the aerial's level), and the plate's loss adds to that.
  test("less to spare than the level is known by is a knife's edge", () => {
    expect(told(plate({ levelDbuv: 46 }).verdict)).toEqual(["edge", "level low", "spread"]);
    expect(told(plate({ levelDbuv: 73 }).verdict)).toEqual(["works", "level high", undefined]);
    expect(told(plate({ levelDbuv: 50 }).verdict)).toEqual(["works", "level low", undefined]);
  });

  test("beyond a limit is a knife's edge, and by how much is said", () => {
    const { verdict, words } = plate({ levelDbuv: 43.5 });
    expect(told(verdict)).toEqual(["edge", "level low", "outside limits"]);
    expect(verdict.marginDb).toBeCloseTo(-1.5, 9);
    expect(words).toContain("C30 is 1.5 dB below the lowest level");
  });

  test("the design may ask for a distance to either limit", () => {
    const settings = { keepDb: 6 };
    expect(told(plate({ levelDbuv: 50, settings }).verdict)).toEqual(["edge", "level low", "kept distance"]);
    expect(told(plate({ levelDbuv: 69, settings }).verdict)).toEqual(["edge", "level high", "kept distance"]);
    expect(told(plate({ levelDbuv: 51.5, settings }).verdict)).toEqual(["works", "level low", undefined]);
  });

  test("an outlet that hands nothing on has nothing to spare", () => {
    const design = draw({ plate: ["outlet-tv"] }, "");
    const verdict = report(evaluate(design)).verdicts.find((v) => v.part === "plate");
    expect(verdict?.state).toBe("fails");
    expect(verdict?.marginDb).toBeUndefined();
  });

  // A socket that nothing is added behind and the set on a lead of no length have the same level: the same distance.
  test("a set on its lead has as much to spare as its socket", () => {
    const design = draw(
      {
        set: ["receiver-tv"],
        plate: ["outlet-tv", { lossDb: 1 }],
        aerial: [
          "aerial-uhf",
          { levelDbuv: 60, channels: [{ channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }] },
        ],
      },
      "aerial.out > plate.in, plate.tv > set.in",
    );
    // 60 − 1 = 59 dBµV: 14 dB above the 45 dBµV, 15 dB below the 74 dBµV.
    const margins = report(evaluate(design)).verdicts.map((v) => [v.part, v.marginDb?.toFixed(6)]);
    expect(margins.sort()).toEqual([
      ["plate", "14.000000"],
      ["set", "14.000000"],
    ]);
  });
});
