/** First lines and verdicts of satellite houses as met every week: what a master of the trade would say (common practice, no source). */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import type { Proposal } from "../../src/remedies/proposal.ts";
import { search } from "../../src/remedies/search.ts";
import { changeWords } from "../../src/sentences/cures/optionWords.ts";
import { cureTitle } from "../../src/sentences/cures/title.ts";
import { cureOf, messageOf } from "../../src/sentences/finding.ts";
import { verdictSentence } from "../../src/sentences/verdict.ts";
import { draw, type Sketch } from "../draw.ts";

/** The causes' first lines with their cures, and what is said of each receiver and outlet. */
function toldOf(design: Design) {
  const evaluation = evaluate(design);
  const { causes, verdicts } = report(evaluation);
  return {
    causes: causes.map(({ root }) => [messageOf(root, evaluation), cureOf(root, evaluation)]),
    verdicts: Object.fromEntries(verdicts.map((v) => [v.part, verdictSentence(v, evaluation)])),
    states: Object.fromEntries(verdicts.map((v) => [v.part, v.state])),
  };
}

test("of receivers on a quattro LNB it is said what that one is made for", () => {
  const { causes } = toldOf(
    draw(
      { a: ["receiver-sat"], b: ["receiver-sat", { half: "high" }], lnb: ["lnb-quattro"], k: ["dish"] },
      "k.sky > lnb.sky, lnb.vl > a.sat, lnb.vh > b.sat",
    ),
  );
  expect(causes).toHaveLength(1);
  expect(causes[0]?.[0]).toBe(
    "“lnb” gives one quadrant at each output, for a multiswitch: “a” gets 20 of 80 satellite transponders, without high vertical, low horizontal and high horizontal.",
  );
});

describe("two satellites", () => {
  const house = (position: string, unit: Sketch[string], wires: string) =>
    toldOf(
      draw(
        {
          a: ["receiver-sat", { position }],
          w: unit,
          m: ["lnb-universal"],
          n: ["lnb-universal"],
          k: ["dish", { sideFeeds: [{ orbitalPositionDegE: 26 }] }],
        },
        `${wires}, w.out > a.sat`,
      ),
    );

  test("a receiver without position commands is told that it lacks them, and so is its verdict", () => {
    const { verdicts } = house("none", ["lnb-monoblock"], "k.sky > w.sky, k.sky2 > w.sky2");
    expect(verdicts.a).toBe(
      "Would get all 160 satellite transponders, but fails as it stands. “a” sends no position command, so “w” stays at position 1 of 2: the other satellites never come.",
    );
  });

  test("a position without an LNB is the receiver's setting first, and a missing lead second", () => {
    const { causes } = house(
      "3",
      ["position-switch", { inputs: "4" }],
      "k.sky > m.sky, k.sky2 > n.sky, m.out > w.in1, n.out > w.in2",
    );
    expect(causes[0]).toEqual([
      "“a” asks “w” for position 3, where nothing is connected.",
      "Set “a” to position 1 or 2, or connect position 3.",
    ]);
  });
});

// Made for 80 cm and 6°: sound there, too near together for 1 m (by hand in tests/parts/dishFeeds.test.ts).
describe("a monoblock whose LNBs are 70 mm apart", () => {
  const on = (diameterM: number, lnb = "lnb-monoblock") => {
    const isMonoblock = lnb === "lnb-monoblock";
    const dish = {
      diameterM,
      orbitalPositionDegE: 13,
      sideFeeds: [{ orbitalPositionDegE: 19, spacingMm: 70 }],
    };
    return draw(
      {
        a: ["receiver-sat", { position: "1" }],
        c: ["cable", { lengthM: 20 }],
        w: isMonoblock ? ["lnb-monoblock"] : ["position-switch"],
        ...(isMonoblock ? {} : { m: ["lnb-universal"], n: ["lnb-universal"] }),
        k: ["dish", dish],
      },
      isMonoblock
        ? "k.sky > w.sky, k.sky2 > w.sky2, w.out > c.in, c.out > a.sat"
        : "k.sky > m.sky, k.sky2 > n.sky, m.out > w.in1, n.out > w.in2, w.out > c.in, c.out > a.sat",
    );
  };

  test("is right on a dish of 80 cm", () => {
    expect(toldOf(on(0.8)).causes).toEqual([]);
  });

  test("is told first on one of 1.2 m, where the second satellite is lost by it", () => {
    const { causes, states } = toldOf(on(1.2));
    expect(causes).toHaveLength(1);
    expect(causes[0]?.[0]).toMatch(
      /^The LNBs of the monoblock on “k” are 70 mm apart, and 105 mm are needed here\. The second looks 2\.2° past its satellite/,
    );
    expect(causes[0]?.[1]).toBe("Use a monoblock that is made for “k”, or two LNBs with a position switch.");
    expect(states.a).toBe("fails");
  });

  test("two LNBs so near are moved apart, and that puts it right", () => {
    const design = on(1.2, "two LNBs");
    expect(toldOf(design).causes[0]?.[1]).toBe("Move the LNB of feed 2 to 105 mm from the first.");
    let proposals: readonly Proposal[] = [];
    for (const p of search(design, { prices: PLACEHOLDER_PRICES })) ({ proposals } = p);
    expect(proposals.map((p) => cureTitle(p, design))).toContain(
      "Move the LNB of feed 2 of “k” to 105 mm from the first",
    );
  }, 120_000);
});

describe("single-cable boxes", () => {
  const house = (
    messages: readonly string[],
    lnb: Record<string, unknown> = {},
    more: Sketch = {},
    wires = "",
  ) => {
    const boxes = messages.map((sent, i) => [
      `r${i + 1}`,
      [
        "receiver-stacked",
        { tuners: 1, messages: sent, userBands: [{ number: i + 1, centreMHz: [1210, 1420, 1680][i] }] },
      ],
    ]);
    return toldOf(
      draw(
        {
          ...(Object.fromEntries(boxes) as Sketch),
          s: ["splitter", { ways: 3 }],
          lnb: ["lnb-stacked", { standard: "EN 50607", bandSet: "thirtyTwo", ...lnb }],
          k: ["dish"],
          ...more,
        },
        `k.sky > lnb.sky, lnb.out > s.in, ${wires || messages.map((_, i) => `s.out${i + 1} > r${i + 1}.sat`).join(", ")}`,
      ),
    );
  };

  test("two old ones on a new LNB are one cause, the LNB's", () => {
    const { causes } = house(["EN 50494", "EN 50494", "both"]);
    expect(causes).toEqual([
      [
        "“lnb” obeys dSCR messages only, and “r1” sends SCR: “r1” gets none of 80 satellite transponders.",
        "Replace “lnb” with one that obeys SCR too, or set the receivers to dSCR.",
      ],
    ]);
  });

  test("one among others that are understood is to be set itself", () => {
    const { causes } = house(["EN 50494", "EN 50607", "both"]);
    expect(causes.map(([message]) => message)).toEqual([
      "“r1” sends SCR messages, and user band 1 of “lnb” obeys dSCR only: “r1” gets none of 80 satellite transponders.",
    ]);
  });

  // Four of its user bands obey SCR: a box on a fifth is on the wrong one.
  test("an LNB that obeys both on some user bands is not at fault", () => {
    const { states } = house(["EN 50494", "EN 50494", "EN 50494"], { standard: "both", bandSet: "sixteen" });
    expect(states).toEqual({ r1: "works", r2: "works", r3: "works" });
  });

  // DC arrives, so the LNB lives and its user bands are on the socket; but nobody behind the plate can ask for one.
  test("a plate that stops messages delivers nothing", () => {
    const plate = (satelliteTone: boolean) =>
      house(
        ["both", "both"],
        {},
        { p: ["outlet-sat", { satelliteTone }] },
        "s.out1 > p.in, p.sat > r1.sat, s.out2 > r2.sat",
      );
    expect(plate(true).states).toEqual({ p: "works", r1: "works", r2: "works" });
    const { states, verdicts } = plate(false);
    expect(states).toEqual({ p: "fails", r1: "fails", r2: "works" });
    expect(verdicts.p).toBe("Delivers no user band. The only one is out of reach: no message gets to “lnb”.");
  });
});

test("of two feeds the one without an LNB is named", () => {
  const { causes } = toldOf(
    draw(
      {
        a: ["receiver-sat"],
        lnb: ["lnb-universal"],
        k: ["dish", { sideFeeds: [{ orbitalPositionDegE: 26 }] }],
      },
      "k.sky > lnb.sky, lnb.out > a.sat",
    ),
  );
  expect(causes).toEqual([
    [
      "No LNB is on feed 2 of “k”: “a” gets 80 of 160 satellite transponders, without the whole satellite.",
      "Fit an LNB on feed 2 of “k”.",
    ],
  ]);
});

// The unit feeds its inputs with 13 V for V and 18 V for H, without tone: of a quad LNB that is the low band twice.
test("a quad LNB on an SCR unit made for quattro LNBs brings the low band only", () => {
  const { causes, verdicts } = toldOf(
    draw(
      {
        a: ["receiver-stacked"],
        c: ["cable", { lengthM: 20 }],
        u: ["stacking-converter", { outputs: 2, terrestrial: false }],
        lnb: ["lnb-universal", { outputs: "4" }],
        k: ["dish", { diameterM: 0.8 }],
      },
      "k.sky > lnb.sky, lnb.out1 > u.vl, lnb.out2 > u.vh, lnb.out3 > u.hl, lnb.out4 > u.hh, u.out1 > c.in, c.out > a.sat",
    ),
  );
  expect(causes).toHaveLength(1);
  expect(causes[0]?.[0]).toBe(
    "“lnb” gives switched outputs; “u” needs a quattro LNB on inputs VL, VH, HL and HH.",
  );
  expect(verdicts.a).toMatch(/^Gets 40 of 80 satellite transponders\. 40 are out of reach: no command/);
});

test("a satellite below the horizon has a dish: it is not said that there is none", () => {
  const { verdicts, causes } = toldOf(
    draw(
      { a: ["receiver-sat"], lnb: ["lnb-universal"], k: ["dish", { orbitalPositionDegE: 110 }] },
      "k.sky > lnb.sky, lnb.out > a.sat",
    ),
  );
  expect(causes[0]?.[0]).toMatch(/^The satellite of “k” stands \d+° below the horizon/);
  expect(verdicts.a).toBe("Nothing drawn here sends what it is made for.");
});

test("a list whose rows keep their first numbers is told by what changes in them", () => {
  const change = (from: unknown, to: unknown) => changeWords("receiver-stacked", "userBands", { from, to });
  const first = { number: 1, centreMHz: 1210 };
  expect(change([first, { number: 2, centreMHz: 1680 }], [first, { number: 2, centreMHz: 1420 }])).toEqual([
    "2 · 1680 MHz",
    "2 · 1420 MHz",
  ]);
  expect(change([first], [{ number: 3, centreMHz: 1680 }])).toEqual(["1", "3"]);
});
