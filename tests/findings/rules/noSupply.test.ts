/**
 * Supply that does not arrive: the part to take in hand stands first. Whether a kind passes DC is declared at the kind;
 * which part a tradesman would name is common practice, no source. Parts are drawn in no order of the signal.
 */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { backwards, foundBy } from "./foundBy.ts";

/** A UHF aerial, a masthead amplifier and a TV set, with something between. */
const masthead = (between: Sketch, wires: string) =>
  draw({ q: ["receiver-tv"], ...between, b: ["amp-masthead"], z: ["aerial-uhf"] }, `z.out > b.in, ${wires}`);

/** A dish, a universal LNB and a receiver, with something between. */
const satellite = (between: Sketch, wires: string, receiver = {}, lnb = {}) =>
  draw(
    { a: ["receiver-sat", receiver], ...between, m: ["lnb-universal", lnb], k: ["dish"] },
    `k.sky > m.sky, ${wires}`,
  );

const INSERTER = ["power-inserter", { volts: 12, limitMa: 200 }] as const;

describe("a supply that stops on the way", () => {
  test.each([
    {
      name: "at the second of two splitters, which passes none from output 1",
      design: masthead(
        { s2: ["splitter", { dc: "none" }], s1: ["splitter", { dc: "all" }], p: INSERTER },
        "b.out > s1.in, s1.out2 > s2.in, s2.out1 > p.in, p.out > q.in",
      ),
      parts: ["s2", "b", "p"],
      stop: { why: "blocks", port: "out1", supply: "p", volts: 12, setting: { option: "dc", value: "one" } },
    },
    {
      name: "at a leg of a splitter that passes it from another one",
      design: satellite(
        { f: ["splitter", { dc: "one" }], t: ["receiver-tv"] },
        "m.out > f.in, f.out1 > t.in, f.out2 > a.sat",
      ),
      parts: ["f", "m", "a"],
      stop: { why: "blocks", port: "out2", supply: "a", passesFrom: "out1" },
    },
    {
      name: "at a broken joint",
      design: satellite({ x: ["bad-joint", { fault: "open" }] }, "m.out > x.in, x.out > a.sat"),
      parts: ["x", "m", "a"],
      stop: { why: "blocks", isBroken: true },
    },
    {
      name: "at a short",
      design: satellite({ x: ["bad-joint", { fault: "shorted" }] }, "m.out > x.in, x.out > a.sat"),
      parts: ["x", "m", "a"],
      stop: { why: "short", supply: "a" },
    },
    {
      name: "at the one of two blocks at which it arrives",
      design: satellite(
        { low: ["dc-block"], up: ["dc-block"], c: ["cable"] },
        "m.out > up.in, up.out > c.in, c.out > low.in, low.out > a.sat",
      ),
      parts: ["low", "m", "a"],
      stop: { why: "blocks", supply: "a" },
    },
    {
      name: "at a diplexer that passes it to the other branch",
      design: draw(
        {
          tv: ["receiver-tv"],
          a: ["receiver-sat"],
          plate: ["outlet-diplexed"],
          d: ["diplexer-combine", { dc: "tv" }],
          u: ["aerial-uhf"],
          m: ["lnb-universal"],
          k: ["dish"],
        },
        "k.sky > m.sky, u.out > d.tv, m.out > d.sat, d.out > plate.in, plate.tv > tv.in, plate.sat > a.sat",
      ),
      parts: ["d", "m", "a"],
      stop: { why: "blocks", feeds: "tv", setting: { option: "dc", value: "both" } },
    },
    {
      name: "because the lead is on the wrong input of a diplexer",
      design: draw(
        {
          tv: ["receiver-tv"],
          a: ["receiver-sat"],
          plate: ["outlet-diplexed"],
          d: ["diplexer-combine"],
          u: ["aerial-uhf"],
          m: ["lnb-universal"],
          k: ["dish"],
        },
        "k.sky > m.sky, u.out > d.sat, m.out > d.tv, d.out > plate.in, plate.tv > tv.in, plate.sat > a.sat",
      ),
      parts: ["d", "m", "a"],
      stop: { why: "wrong input", port: "tv", feeds: "sat", supply: "a" },
    },
    {
      name: "because the mains of the inserter is off",
      design: masthead(
        { p: ["power-inserter", { switchedOn: false }], c: ["cable"] },
        "b.out > c.in, c.out > p.in, p.out > q.in",
      ),
      parts: ["p", "b"],
      stop: { why: "mains off", setting: { option: "switchedOn", value: true } },
    },
    {
      name: "because the inserter sits above the amplifier",
      design: draw(
        { q: ["receiver-tv"], p: INSERTER, b: ["amp-masthead"], z: ["aerial-uhf"] },
        "z.out > p.in, p.out > b.in, b.out > q.in",
      ),
      parts: ["p", "b"],
      stop: { why: "wrong side", volts: 12 },
    },
    {
      name: "because nothing feeds it, though the amplifier below could",
      design: masthead({ g: ["amp-distribution"] }, "b.out > g.in, g.out > q.in"),
      parts: ["b"],
      stop: { why: "nothing feeds", nearest: "g", setting: { option: "aerialSupply", value: "12" } },
    },
    {
      name: "because nothing below could feed it",
      design: masthead({}, "b.out > q.in"),
      parts: ["b"],
      stop: { why: "nothing feeds" },
    },
  ])("$name", ({ design, parts, stop }) => {
    for (const drawn of [design, backwards(design)]) {
      const found = foundBy("no-supply", drawn);
      expect(found).toHaveLength(1);
      expect(found[0]).toMatchObject({
        severity: "error",
        value: 0,
        unit: "V",
        facts: { kind: "unfed", stop },
      });
      expect(found[0]?.parts).toEqual(parts);
    }
  });

  test("a receiver that is off and should feed is named, and nobody suffers from it", () => {
    const [found] = foundBy("no-supply", satellite({}, "m.out > a.sat", { state: "unplugged" }));
    expect(found).toMatchObject({
      severity: "warning",
      parts: ["a", "m"],
      facts: { stop: { why: "receiver off" } },
    });
  });

  test("a multiswitch that has been told not to feed the LNB is named", () => {
    const design = draw(
      {
        r: ["receiver-sat"],
        u: ["multiswitch", { terrestrial: false, feedsLnb: false }],
        l: ["lnb-quattro"],
        k: ["dish"],
      },
      "k.sky > l.sky, l.vl > u.vl, l.vh > u.vh, l.hl > u.hl, l.hh > u.hh, u.out1 > r.sat",
    );
    const [found] = foundBy("no-supply", design);
    expect(found).toMatchObject({ parts: ["u", "l"], facts: { stop: { why: "not set to feed" } } });
  });

  test("a distribution amplifier without its mains is named itself", () => {
    const design = draw(
      { q: ["receiver-tv"], g: ["amp-distribution", { switchedOn: false }], z: ["aerial-uhf"] },
      "z.out > g.in, g.out > q.in",
    );
    expect(foundBy("no-supply", design)).toMatchObject([
      { severity: "error", parts: ["g"], facts: { kind: "mains off", option: "switchedOn" } },
    ]);
  });

  test("while it is still being drawn, an LNB that nobody is connected to is a note, and one without a lead nothing", () => {
    const lead = draw({ c: ["cable"], m: ["lnb-universal"], k: ["dish"] }, "k.sky > m.sky, m.out > c.in");
    expect(foundBy("no-supply", lead).map((f) => f.severity)).toEqual(["note"]);
    expect(foundBy("no-supply", draw({ m: ["lnb-universal"], k: ["dish"] }, "k.sky > m.sky"))).toEqual([]);
  });
});

describe("volts that are too few", () => {
  // U = U0 − I·R·l (Ohm): 200 m at 130 Ω/km are 26 Ω; 250 mA take 6.5 V of 17 V, and 10.5 V are left of the 11.5 needed.
  test("the cable that takes them is named, with what it takes", () => {
    const [found] = foundBy(
      "no-supply",
      satellite(
        {
          w: ["cable", { grade: "clad-1.0", lengthM: 200 }],
          v: ["cable", { grade: "copper-1.0", lengthM: 5 }],
        },
        "m.out > v.in, v.out > w.in, w.out > a.sat",
        { volts18: 17, polarisation: "H" },
        { commonMa: 250, outputMa: 0 },
      ),
    );
    // 5 m at 36 Ω/km are 0.18 Ω and take 0.045 V more.
    expect(found?.value).toBeCloseTo(17 - 6.5 - 0.045, 6);
    expect(found).toMatchObject({ parts: ["w", "m", "a"], limit: 11.5, facts: { kind: "too low" } });
    const lost = found?.facts.kind === "too low" ? found.facts.lost : undefined;
    expect(lost?.givenVolts).toBeCloseTo(17, 6);
    expect(lost?.taker).toMatchObject({ part: "w", diodeVolts: 0 });
    expect(lost?.taker?.volts).toBeCloseTo(6.5, 6);
    expect(lost?.taker?.ohms).toBeCloseTo(26, 6);
  });

  test("a supply that gives too few from the start is named, not the way", () => {
    const [found] = foundBy(
      "no-supply",
      masthead(
        { p: ["power-inserter", { volts: 9 }], c: ["cable"] },
        "b.out > c.in, c.out > p.in, p.out > q.in",
      ),
    );
    expect(found?.parts[0]).toBe("p");
    expect(found?.facts).toMatchObject({ kind: "too low", lost: { supply: "p" } });
    expect(found?.facts).not.toHaveProperty("lost.taker");
  });

  test("a steering diode takes volts without any resistance", () => {
    // 12 V less the 0.5 V of a Schottky diode leave 11.5 V where 11.8 are needed.
    const [found] = foundBy(
      "no-supply",
      draw(
        {
          q: ["receiver-tv"],
          p: INSERTER,
          s: ["splitter", { dc: "all" }],
          b: ["amp-masthead", { minVolts: 11.8 }],
          z: ["aerial-uhf"],
        },
        "z.out > b.in, b.out > s.in, s.out1 > p.in, p.out > q.in",
      ),
    );
    expect(found?.parts[0]).toBe("s");
    expect(found?.facts).toMatchObject({
      lost: { taker: { part: "s", ohms: 0, volts: 0.5, diodeVolts: 0.5 } },
    });
  });

  test("enough for 18 V and too few for 13 V is told before anybody asks for vertical", () => {
    // 60 m at 130 Ω/km are 7.8 Ω; 250 mA take 1.95 V: 16.05 V for horizontal, 11.05 V for vertical.
    const [found] = foundBy(
      "no-supply",
      satellite(
        { w: ["cable", { grade: "clad-1.0", lengthM: 60 }] },
        "m.out > w.in, w.out > a.sat",
        { polarisation: "H" },
        { commonMa: 250, outputMa: 0 },
      ),
    );
    expect(found).toMatchObject({
      // Half of what the receiver may ask for is gone, whatever it watches now.
      severity: "error",
      parts: ["w", "m", "a"],
      facts: { kind: "too low for vertical" },
    });
    expect(found?.value).toBeCloseTo(11.05, 6);
  });

  // Copper gains 0.39 % for each degree (α = 0.0039 K⁻¹). 36 m at 36 Ω/km are 1.296 Ω and take 0.3888 V at 300 mA.
  test.each([
    // 12.0 − 0.3888 = 11.6112 V: 0.1112 V to spare are used up at 20 + 0.1112/(0.00393·0.3888) = 92.8 °C: not on a roof.
    { volts13: 12, failsAtC: undefined },
    // 11.95 V leave 0.0612 V: 20 + 0.0612/(0.00393·0.3888) = 60.1 °C.
    { volts13: 11.95, failsAtC: 60.1 },
  ])(
    "with $volts13 V at the receiver, warm cables use up what is to spare at $failsAtC °C",
    ({ volts13, failsAtC }) => {
      const [found] = foundBy(
        "no-supply",
        satellite(
          { w: ["cable", { grade: "copper-1.0", lengthM: 36 }] },
          "m.out > w.in, w.out > a.sat",
          { volts13 },
          { commonMa: 300, outputMa: 0 },
        ),
      );
      if (failsAtC === undefined) {
        expect(found).toBeUndefined();
        return;
      }
      expect(found).toMatchObject({ severity: "warning", facts: { kind: "edge", lost: { supply: "a" } } });
      const lost = found?.facts.kind === "edge" ? found.facts.lost : undefined;
      expect(lost?.failsAtC).toBeCloseTo(failsAtC, 1);
      expect(lost?.spareVolts).toBeCloseTo(0.0612, 6);
    },
  );
});

test.each([
  { name: "a plain line", design: satellite({ w: ["cable"] }, "m.out > w.in, w.out > a.sat") },
  {
    name: "an inserter below the amplifier",
    design: masthead({ p: INSERTER, c: ["cable"] }, "b.out > c.in, c.out > p.in, p.out > q.in"),
  },
  {
    name: "a splitter that passes supply from the leg in use",
    design: satellite({ f: ["splitter", { dc: "one" }] }, "m.out > f.in, f.out1 > a.sat"),
  },
])("nothing is found on $name", ({ design }) => {
  expect(foundBy("no-supply", design)).toEqual([]);
});

describe("how grave it is that a part is dead", () => {
  /** A TV set and perhaps a satellite receiver behind one cable, and an LNB that nobody feeds. */
  const shared = (parts: Sketch, wires: string) =>
    draw(
      {
        tv: ["receiver-tv"],
        ...parts,
        dip: ["diplexer-combine", { dc: "none" }],
        uhf: ["aerial-uhf"],
        m: ["lnb-universal"],
        k: ["dish"],
      },
      `k.sky > m.sky, m.out > dip.sat, uhf.out > dip.tv, ${wires}`,
    );

  test("an error for a receiver of what comes to it", () => {
    const design = shared(
      { p: ["outlet-diplexed"], r: ["receiver-sat"] },
      "dip.out > p.in, p.tv > tv.in, p.sat > r.sat",
    );
    expect(foundBy("no-supply", design)).toMatchObject([{ severity: "error", at: { part: "m" } }]);
  });

  test("a warning where a socket for it waits, whatever is plugged in beside", () => {
    const design = shared({ p: ["outlet-diplexed"] }, "dip.out > p.in, p.tv > tv.in");
    expect(foundBy("no-supply", design)).toMatchObject([{ severity: "warning", at: { part: "m" } }]);
  });

  test("a note where those behind take another service, and its receiver is not connected yet", () => {
    const design = shared({ p: ["outlet-tv"], r: ["receiver-sat"] }, "dip.out > p.in, p.tv > tv.in");
    expect(foundBy("no-supply", design)).toMatchObject([{ severity: "note", at: { part: "m" } }]);
  });
});

describe("a supply that is there only while another receiver is on", () => {
  const QUADRANTS = "l.vl > s.vl, l.vh > s.vh, l.hl > s.hl, l.hh > s.hh";
  const energySaving = (receiver = {}, options = {}) =>
    draw(
      {
        t: ["receiver-tv"],
        r: ["receiver-sat", receiver],
        s: ["multiswitch", { outputs: 4, energySaving: true, aerialSupply: "12", ...options }],
        m: ["amp-masthead"],
        a: ["aerial-uhf"],
        l: ["lnb-quattro"],
        k: ["dish"],
      },
      `k.sky > l.sky, ${QUADRANTS}, a.out > m.in, m.out > s.ter, s.out1 > r.sat, s.out2 > t.in`,
    );

  // A unit in standby feeds nothing; a TV set gives no 13 or 18 V that would wake it: common practice, no source.
  test("is told of a masthead amplifier behind an energy-saving multiswitch, for the TV set that wakes nobody", () => {
    expect(foundBy("no-supply", energySaving())).toMatchObject([
      {
        severity: "warning",
        at: { part: "m" },
        parts: ["s", "m", "t"],
        facts: { kind: "only with others", victim: "t", others: ["r"], asleep: "s" },
      },
    ]);
  });

  test("becomes an error once that receiver is off; the LNB, which nobody then needs, is not spoken of", () => {
    expect(foundBy("no-supply", energySaving({ state: "standby" }))).toMatchObject([
      {
        severity: "error",
        at: { part: "m" },
        parts: ["s", "m"],
        facts: { kind: "unfed", stop: { why: "asleep" } },
      },
    ]);
  });

  test("is no matter for a unit that never sleeps", () => {
    expect(foundBy("no-supply", energySaving({}, { energySaving: false }))).toEqual([]);
    expect(foundBy("no-supply", energySaving({ state: "standby" }, { energySaving: false }))).toEqual([]);
  });

  test("is told of the LNB that an energy-saving unit feeds for a second unit of the cascade", () => {
    const design = draw(
      {
        r: ["receiver-sat"],
        q: ["receiver-sat"],
        u: ["multiswitch", { outputs: 4, feedsLnb: false, terrestrial: false }],
        s: ["multiswitch", { outputs: 4, energySaving: true, cascade: true, terrestrial: false }],
        l: ["lnb-quattro"],
        k: ["dish"],
      },
      `k.sky > l.sky, ${QUADRANTS}, s.vl-thru > u.vl, s.vh-thru > u.vh, s.hl-thru > u.hl, s.hh-thru > u.hh,
       s.out1 > r.sat, u.out1 > q.sat`,
    );
    expect(foundBy("no-supply", design)).toMatchObject([
      { severity: "warning", parts: ["s", "l", "q"], facts: { victim: "q", others: ["r"], asleep: "s" } },
    ]);
  });

  const twin = (limitMa: number) =>
    draw(
      {
        q: ["receiver-sat", { limitMa }],
        r: ["receiver-sat"],
        l: ["lnb-universal", { outputs: "2", commonMa: 200, outputMa: 30 }],
        k: ["dish"],
      },
      "k.sky > l.sky, l.out1 > r.sat, l.out2 > q.sat",
    );

  // Alone the LNB takes 200 + 30 mA from whoever is on.
  test("is told where one of two is too weak to feed a twin LNB alone, and not where both can", () => {
    expect(foundBy("no-supply", twin(200))).toMatchObject([
      { severity: "warning", at: { part: "l" }, facts: { victim: "q", others: ["r"], isTooWeak: true } },
    ]);
    expect(foundBy("no-supply", twin(230))).toEqual([]);
  });

  // 5 V from the socket of a TV set: a common option of the trade. It goes off with the set, whoever else looks on.
  test("is told of an amplifier that one TV set feeds for two", () => {
    const sets = (second: Record<string, unknown>) =>
      draw(
        {
          u: ["receiver-tv", second],
          t: ["receiver-tv", { aerialSupply: "5" }],
          s: ["splitter", { dc: "open" }],
          m: ["amp-masthead", { minVolts: 4.5 }],
          a: ["aerial-uhf"],
        },
        "a.out > m.in, m.out > s.in, s.out1 > t.in, s.out2 > u.in",
      );
    expect(foundBy("no-supply", sets({}))).toMatchObject([{ facts: { victim: "u", others: ["t"] } }]);
    expect(foundBy("no-supply", sets({ aerialSupply: "5" }))).toEqual([]);
  });
});

// Whoever switches the only receiver off leaves its LNB without volts, and misses nothing (common practice, no source).
test.each([
  { state: "standby", severity: "note" },
  { state: "unplugged", severity: "warning" },
])("an LNB whose only receiver is in state $state is worth a $severity", ({ state, severity }) => {
  const design = draw(
    { r: ["receiver-sat", { state }], l: ["lnb-universal"], d: ["dish"] },
    "d.sky > l.sky, l.out > r.sat",
  );
  expect(foundBy("no-supply", design)).toMatchObject([{ severity, at: { part: "l" } }]);
});
