/** UC: one design under several conditions; the worst of them counts. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { SETTINGS } from "../../src/design/settings.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { countUnder, isWorse, judgedUnderConditions } from "../../src/findings/underConditions.ts";
import { draw, type Sketch } from "../draw.ts";

function judged(design: Design) {
  const judging = judgedUnderConditions(design);
  for (;;) {
    const step = judging.next();
    if (step.done) return step.value;
  }
}

const statesOf = (design: Design, part: string) =>
  Object.fromEntries(
    [...(judged(design).places.find((place) => place.part === part)?.standings ?? [])].map(
      ([column, { verdict }]) => [column, verdict.state],
    ),
  );

/** Two receivers split a switched output; one asks for vertical, the other for horizontal. */
const SPLIT = draw(
  {
    y: ["receiver-sat", { polarisation: "V" }],
    z: ["receiver-sat", { polarisation: "H" }],
    s: ["splitter", { isolationDb: 22 }],
    l: ["lnb-universal"],
    d: ["dish"],
  },
  "d.sky > l.sky, l.out > s.in, s.out1 > y.sat, s.out2 > z.sat",
);

describe("a design under its conditions", () => {
  // Trade fact: a switched LNB output that is split gives each receiver only what the other's request leaves.
  test("UC1: who shares a switched output fails beside the other, and works alone", () => {
    expect(statesOf(SPLIT, "y")).toMatchObject({ "as drawn": "fails", "one on": "works" });
    expect(statesOf(SPLIT, "z")).toMatchObject({ "as drawn": "fails", "one on": "works" });
    expect(countUnder(judged(SPLIT), "one on")).toEqual({ judged: 2, working: 2, onEdge: 0 });
  });

  // Rain of 0.001 % of a year takes some 15 dB at this latitude (ITU-R P.618-13, validation row at 51.5°: 14.9 dB at 14.25 GHz); a
  // house's dish has some 15 dB of C/N in all. Drizzle of 5 % takes tenths of a decibel.
  test("UC2: a usual dish fails in the heaviest rain, and rain is then the worst", () => {
    const small = draw(
      { z: ["receiver-sat"], l: ["lnb-universal"], d: ["dish"] },
      "d.sky > l.sky, l.out > z.sat",
    );
    const heavy = { ...small, settings: SETTINGS.parse({ rainPercent: 0.001 }) };
    const light = { ...small, settings: SETTINGS.parse({ rainPercent: 5 }) };
    expect(statesOf(heavy, "z")).toMatchObject({ rain: "fails" });
    expect(statesOf(heavy, "z")["as drawn"]).not.toBe("fails");
    expect(judged(heavy).places.find(({ part }) => part === "z")?.worst).toBe("rain");
    expect(statesOf(light, "z")["rain"]).not.toBe("fails");
  });

  // A distant transmitter on the same channel, 30 dB weaker: C/I 30 dB, and 30 − 15 − 3 = 12 dB in a lift. DVB-T 64 QAM 2/3
  // needs 19 dB (protection ratio, BT.1368), so it is received on most days and not in a lift.
  test("UC7: what a distant transmitter takes in a lift", () => {
    const channels = [
      { channel: 30, transmitter: "Near hill" },
      { channel: 30, transmitter: "Far coast", wanted: false, levelOffsetDb: -30 },
    ].map((row) => ({ ...row, mode: "dvbt-64qam-2/3" }));
    const aerial = draw(
      { z: ["receiver-tv"], a: ["aerial-uhf", { levelDbuv: 60, channels }] },
      "a.out > z.in",
    );
    expect(statesOf(aerial, "z")).toEqual({ "as drawn": "works", lift: "fails" });
    const far = channels.map((row) => (row.wanted === false ? { ...row, levelOffsetDb: -50 } : row));
    const quiet = draw(
      { z: ["receiver-tv"], a: ["aerial-uhf", { levelDbuv: 60, channels: far }] },
      "a.out > z.in",
    );
    expect(statesOf(quiet, "z")).toEqual({ "as drawn": "works", lift: "works" });
  });

  // 20 dB of gain: TV leaves with 70 dBµV, six masts of 105 dBµV would leave with 125, far beyond any rated output of the trade
  // (about 105 to 118 dBµV).
  test("UC3: what masts overdrive works with the masts off", () => {
    const beside = draw(
      {
        z: ["receiver-tv"],
        p: ["pick-up", { mastDbuv: 105 }],
        a: ["aerial-uhf", { levelDbuv: 50 }],
        m: ["amp-distribution", { gainDb: 20, uhfTo: "862" }],
      } satisfies Sketch,
      "a.out > p.in, p.out > m.in, m.out > z.in",
    );
    expect(statesOf(beside, "z")).toMatchObject({ "as drawn": "fails", "masts off": "works" });
  });

  test("UC4: a receiver that another's turn leaves off is not judged by that", () => {
    const y = judged(SPLIT).places.find(({ part }) => part === "y");
    expect(y?.standings.get("one on")?.condition).toEqual({ type: "one on", receiver: "y" });
    expect(y?.worst).toBe("as drawn");
  });

  test("UC5: as drawn is what the design itself is judged to be", () => {
    const { places } = judged(SPLIT);
    const plain = report(evaluate(SPLIT)).verdicts;
    expect(places.map(({ standings }) => standings.get("as drawn")?.verdict)).toEqual(plain);
  });
});

describe("who is worse off", () => {
  const verdict = (state: "works" | "edge" | "fails", got: number, marginDb?: number) => ({
    part: "z",
    role: "receiver" as const,
    state,
    ...(marginDb === undefined ? {} : { marginDb }),
    services: [{ service: "tv" as const, wanted: 6, got, missing: [] }],
    tuners: [],
  });

  test.each([
    { name: "who fails, before who works", worse: verdict("fails", 5), better: verdict("edge", 6, 0.1) },
    {
      name: "who is on an edge, before who has less to spare",
      worse: verdict("edge", 6, 2),
      better: verdict("works", 6, 1),
    },
    { name: "of two that fail, who misses more", worse: verdict("fails", 1), better: verdict("fails", 4) },
    {
      name: "of two that work, who has less to spare",
      worse: verdict("works", 6, 3),
      better: verdict("works", 6, 5),
    },
  ])("UC6: $name", ({ worse, better }) => {
    expect(isWorse(worse, better)).toBe(true);
    expect(isWorse(better, worse)).toBe(false);
  });
});
