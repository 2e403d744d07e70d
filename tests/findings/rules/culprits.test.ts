/** The rules on signals name the part that a tradesman would take in hand: common practice, no source. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../../src/design/design.ts";
import { EXAMPLES } from "../../../src/design/examples.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import type { Finding } from "../../../src/findings/finding.ts";
import { report } from "../../../src/findings/report.ts";
import { draw, type Sketch } from "../../draw.ts";
import { WRONG_DESIGNS } from "./wrongDesigns.ts";

function findingsOf(design: Design, rule: string): readonly Finding[] {
  return report(evaluate(design)).findings.filter((f) => f.rule === rule);
}

/** Parts and wires in the opposite order. */
function reversed(design: Design): Design {
  return { ...design, parts: [...design.parts].reverse(), wires: [...design.wires].reverse() };
}

/** What does not depend on the order: identities, and whom they blame. */
function blamed(findings: readonly Finding[]): readonly string[] {
  return findings.map((f) => `${f.id}: ${f.parts.join()} ${JSON.stringify(f.facts)}`).sort();
}

describe("the culprit of", () => {
  test.each(WRONG_DESIGNS)("$fault", ({ parts, wires, rule, culprit, does }) => {
    const found = findingsOf(draw(parts, wires), rule).filter((f) => f.parts[0] === culprit);
    expect(found).not.toEqual([]);
    for (const { facts } of found)
      if (does) expect("culprit" in facts ? facts.culprit : undefined).toMatchObject({ part: culprit, does });
  });

  test.each(WRONG_DESIGNS)("$fault, drawn the other way round", ({ parts, wires, rule }) => {
    const design = draw(parts, wires);
    expect(blamed(findingsOf(reversed(design), rule))).toEqual(blamed(findingsOf(design, rule)));
  });
});

/** Rules whose culprits are sought here. */
const RULES = [
  "level-limits",
  "low-carrier-to-noise",
  "level-difference",
  "slope",
  "overload",
  "shared-frequencies",
  "same-signal-twice",
  "band-cut",
];

const SOUND: readonly { readonly job: string; readonly parts: Sketch; readonly wires: string }[] = [
  {
    job: "an aerial and a plate",
    parts: { b: ["outlet-tv"], a: ["cable", { lengthM: 20 }], z: ["aerial-uhf"] },
    wires: "z.out > a.in, a.out > b.in",
  },
  {
    job: "an aerial, an amplifier and four plates",
    parts: {
      b1: ["outlet-tv"],
      b2: ["outlet-tv"],
      b3: ["outlet-tv"],
      b4: ["outlet-tv"],
      y: ["splitter", { ways: 4, range: "tv" }],
      c: ["amp-distribution", { gainDb: 10 }],
      z: ["aerial-uhf"],
    },
    wires: "z.out > c.in, c.out > y.in, y.out1 > b1.in, y.out2 > b2.in, y.out3 > b3.in, y.out4 > b4.in",
  },
  {
    job: "a dish, an LNB and a receiver",
    parts: {
      rx: ["receiver-sat"],
      a: ["cable", { lengthM: 20 }],
      l: ["lnb-universal", { outputs: "1" }],
      z: ["dish", { diameterM: 0.8 }],
    },
    wires: "z.sky > l.sky, l.out > a.in, a.out > rx.sat",
  },
  {
    job: "a wideband LNB on two plain plates",
    parts: {
      rx: ["receiver-hybrid"],
      p1: ["outlet-sat"],
      p2: ["outlet-sat"],
      l: ["lnb-wideband"],
      z: ["dish", { diameterM: 0.8 }],
    },
    wires: "z.sky > l.sky, l.v > p1.in, p1.sat > rx.v, l.h > p2.in, p2.sat > rx.h",
  },
];

describe("nobody is blamed for", () => {
  test.each(SOUND)("$job", ({ parts, wires }) => {
    expect(RULES.flatMap((rule) => findingsOf(draw(parts, wires), rule))).toEqual([]);
  });
});

describe("a single-cable house", () => {
  // User bands have no modulation of their own: they need what the worst transponder they can hold needs.
  test("has C/N enough on its user bands", () => {
    const design = EXAMPLES.find((e) => e.key === "house-stacked")?.load();
    if (!design) throw new Error("no such example");
    expect(findingsOf(design, "low-carrier-to-noise")).toEqual([]);
  });
});

describe("what the facts say", () => {
  const facts = (fault: string, rule: string) => {
    const wrong = WRONG_DESIGNS.find((d) => d.fault.startsWith(fault));
    if (!wrong) throw new Error(`no design for ${fault}`);
    return findingsOf(draw(wrong.parts, wrong.wires), rule)[0]?.facts;
  };

  /*
   * Four masts of 10 MHz at 88 dBµV beside six channels of 60 dBµV: 10·log10(share) differs by 28 dB and more, so the
   * masts have more than 99.8 % of the power. 758 to 788 and 791 to 821 MHz are six carriers: 95.8 against 67.8 dBµV.
   */
  test("of an overload: who makes up the load", () => {
    expect(facts("phone masts drive", "overload")).toMatchObject({
      because: "foreign",
      load: [
        { service: "mobile", part: "m" },
        { service: "tv", part: "z" },
      ],
    });
    const found = facts("phone masts drive", "overload");
    const [masts] = found && "load" in found ? found.load : [];
    expect(masts?.share).toBeGreaterThan(0.998);
    expect(masts?.share).toBeLessThan(1);
  });

  test("of too little C/N: that products of the amplifier make it", () => {
    expect(facts("an amplifier turned up", "low-carrier-to-noise")).toMatchObject({
      spoiler: { by: "products", part: "c" },
    });
  });

  test("of too little C/N: that another signal makes it, and where it is met", () => {
    expect(facts("two aerials", "low-carrier-to-noise")).toMatchObject({
      spoiler: { by: "foreign", part: "k", signal: { service: "tv" } },
    });
  });

  test("of too little C/N: that it is noise", () => {
    expect(facts("an amplifier of fourteen", "low-carrier-to-noise")).toMatchObject({
      spoiler: { by: "noise" },
    });
  });

  /* 12 dB at 862 MHz, 6 dB at 5 MHz, straight between: at 670 MHz 6 + 6·665/857 = 10.66; at 490 MHz 9.4 dB. */
  test("of a joint: what it loses at the carrier that suffers most", () => {
    const found = facts("a corroded joint", "level-limits");
    const culprit = found && "culprit" in found ? found.culprit : undefined;
    expect(culprit && "excessDb" in culprit ? culprit.excessDb : 0).toBeGreaterThan(9.3);
    expect(culprit && "excessDb" in culprit ? culprit.excessDb : 0).toBeLessThan(10.7);
  });

  /* Two bands of one wideband feed through one plate for TV and satellite would be two plates; here one is cut. */
  test("of a cut: one finding for a part and a service, with the stretches that are lost", () => {
    const wrong = WRONG_DESIGNS.find((d) => d.rule === "band-cut" && d.culprit === "p1");
    const found = findingsOf(draw(wrong?.parts ?? {}, wrong?.wires ?? ""), "band-cut");
    expect(found).toHaveLength(1);
    expect(found[0]?.facts).toMatchObject({ cuts: [{ band: { polarisation: "V", part: "z" }, of: 40 }] });
  });
});
