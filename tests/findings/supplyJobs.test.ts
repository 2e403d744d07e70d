/** Jobs with supply as they are met on site, and what is said of them; common practice, no source, unless one is named. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { messageOf } from "../../src/sentences/finding.ts";
import { verdictSentence, workingSentence } from "../../src/sentences/verdict.ts";
import { draw, type Sketch } from "../draw.ts";
import { messagesOf } from "../messages.ts";

function judged(design: Design) {
  const evaluation = evaluate(design);
  const { verdicts, findings } = report(evaluation);
  const verdict = (id: string) => verdicts.find((v) => v.part === id);
  return {
    evaluation,
    verdict,
    verdicts,
    messages: findings.map((f) => messageOf(f, evaluation)),
    sentence: (id: string) => {
      const found = verdict(id);
      return found ? verdictSentence(found, evaluation) : "";
    },
  };
}

describe("a masthead amplifier that nobody feeds, under a strong signal", () => {
  const house = (levelDbuv: number, fed: boolean) =>
    judged(
      draw(
        {
          a: ["aerial-uhf", { levelDbuv }],
          mast: ["amp-masthead"],
          c: ["cable"],
          ...(fed ? { i: ["power-inserter"] } : {}),
          tv: ["receiver-tv"],
        },
        fed
          ? "a.out > mast.in, mast.out > c.in, c.out > i.in, i.out > tv.in"
          : "a.out > mast.in, mast.out > c.in, c.out > tv.in",
      ),
    );

  // 66 dBµV less 25 dB through the dead amplifier and 3 dB of cable: below 48 dBµV, and still received.
  test("the finding says what it takes, and the verdict names it", () => {
    const { verdict, sentence, messages } = house(66, false);
    expect(verdict("tv")).toMatchObject({ state: "edge", culprit: { part: "mast", does: "unfed" } });
    expect(sentence("tv")).toMatch(/^Gets all 6 TV channels\..*“mast” gets no supply and loses 25 dB\./);
    expect(messages).toContain(
      "“mast” gets no supply: nothing below feeds it. Without supply “mast” loses 25 dB.",
    );
  });

  test("one that is fed is not named", () => {
    const { verdict, messages } = house(50, true);
    expect(verdict("tv")).toMatchObject({ state: "works" });
    expect(verdict("tv")).not.toHaveProperty("culprit");
    expect(messages.filter((text) => /supply/.test(text))).toEqual([]);
  });
});

describe("who is in standby and who is unplugged", () => {
  const quattro: Sketch = { l: ["lnb-quattro"], d: ["dish"] };
  const wires =
    "d.sky > l.sky, l.vl > m.vl, l.vh > m.vh, l.hl > m.hl, l.hh > m.hh, m.out1 > a.sat, m.out2 > b.sat";
  const house = (unit: Record<string, unknown>, a: Record<string, unknown>, b: Record<string, unknown>) =>
    judged(
      draw(
        {
          ...quattro,
          m: ["multiswitch", { outputs: 4, ...unit }],
          a: ["receiver-sat", a],
          b: ["receiver-sat", b],
        },
        wires,
      ),
    );

  test("each is called what it is, and neither counts as one that works", () => {
    const { sentence, verdicts, messages } = house(
      { supply: "receivers" },
      { state: "standby" },
      { state: "unplugged" },
    );
    expect(sentence("a")).toBe("Is in standby and asks for nothing.");
    expect(sentence("b")).toBe("Is unplugged and asks for nothing.");
    expect(workingSentence(verdicts)).toBe("No receiver is on.");
    expect(messages).toContain("“a” is in standby and feeds nothing, so “m” gets no supply.");
  });

  test("who feeds the cable in standby leaves the others in the dark only when it is unplugged", () => {
    // A receiver of 300 mA alone cannot feed 60 mA of the switch and 300 mA of the LNB.
    const lone = (standbySupply: boolean) =>
      evaluate(
        draw(
          {
            d: ["dish"],
            l: ["lnb-quattro", { currentMa: 300 }],
            m: ["multiswitch", { outputs: 4, supply: "receivers" }],
            a: ["receiver-sat", { polarisation: "H", standbySupply, limitMa: 500 }],
            b: ["receiver-sat", { limitMa: 300 }],
          },
          wires,
        ),
      );
    expect(messagesOf(lone(false), "no-supply").join()).toMatch(/while “a” is off or in standby/);
    expect(messagesOf(lone(true), "no-supply").join()).toMatch(/while “a” is unplugged/);
  });
});

describe("a power inserter on a single-cable line", () => {
  const house = (volts: number) =>
    judged(
      draw(
        {
          d: ["dish"],
          l: ["lnb-stacked"],
          c: ["cable", { lengthM: 25 }],
          i: ["power-inserter", { volts, limitMa: 500, receiver: "passed" }],
          s: ["splitter"],
          a: ["receiver-stacked", { tuners: 1, userBands: [{ number: 1, centreMHz: 1210 }] }],
          b: ["receiver-stacked", { tuners: 1, userBands: [{ number: 2, centreMHz: 1420 }] }],
        },
        "d.sky > l.sky, l.out > c.in, c.out > i.in, i.out > s.in, s.out1 > a.sat, s.out2 > b.sat",
      ),
    );

  // EN 50494, as quoted: a standing 18 V blocks the bus. 25 m of 36 Ω/km take 0.25 V at 280 mA.
  test("of 18 V drowns all messages", () => {
    const { verdict, messages } = house(18);
    expect(verdict("a")?.state).toBe("fails");
    expect(verdict("b")?.state).toBe("fails");
    expect(messages).toContain(
      "“i” keeps 17.7 V on the line of “l”: no receiver can raise it, so no message is noticed.",
    );
  });

  test("of 14 V is sound", () => {
    const { verdict, messages } = house(14);
    expect(verdict("a")?.state).toBe("works");
    expect(verdict("b")?.state).toBe("works");
    expect(messages.filter((text) => /keeps/.test(text))).toEqual([]);
  });
});

describe("too few volts at 13 V", () => {
  // 60 m of 130 Ω/km are 7.8 Ω: 350 mA take 2.7 V, and the diode of the splitter 0.5 V.
  const cable: Sketch[string] = ["cable", { lengthM: 60, grade: "own", loopOhmPerKm: 130 }];

  test("of a single-cable LNB: its receivers rest at them, nobody asks for vertical", () => {
    const { messages } = judged(
      draw(
        {
          d: ["dish"],
          l: ["lnb-stacked", { currentMa: 350 }],
          c: cable,
          s: ["splitter"],
          a: ["receiver-stacked", { tuners: 1, userBands: [{ number: 1, centreMHz: 1210 }] }],
          b: ["receiver-sat", { polarisation: "H" }],
        },
        "d.sky > l.sky, l.out > c.in, c.out > s.in, s.out1 > a.sat, s.out2 > b.sat",
      ),
    );
    const said = messages.filter((text) => text.startsWith("“l” gets"));
    expect(said).toEqual([
      "“l” gets 9.8 V when receivers rest at 13 V and needs 11.5 V: “c” takes 2.7 V of 13 V.",
    ]);
  });

  test("of a universal LNB: vertical is asked for by them", () => {
    const { messages } = judged(
      draw(
        {
          d: ["dish"],
          l: ["lnb-universal", { commonMa: 315 }],
          c: cable,
          a: ["receiver-sat", { polarisation: "H" }],
        },
        "d.sky > l.sky, l.out > c.in, c.out > a.sat",
      ),
    );
    expect(messages).toContain(
      "“l” gets 10.3 V when vertical is asked for and needs 11.5 V: “c” takes 2.7 V of 13 V.",
    );
  });
});

// Two share 320 mA at 13 V; who asks for 18 V carries all of them, and gives 300 mA at most.
test("a receiver that shuts down at 18 V is told to be too weak, not its cable", () => {
  const { sentence, messages } = judged(
    draw(
      {
        d: ["dish"],
        l: ["lnb-quattro"],
        m: ["multiswitch", { outputs: 4, supply: "receivers", ownMa: 120 }],
        a: ["receiver-sat", { limitMa: 300 }],
        b: ["receiver-sat", { limitMa: 300 }],
      },
      "d.sky > l.sky, l.vl > m.vl, l.vh > m.vh, l.hl > m.hl, l.hh > m.hh, m.out1 > a.sat, m.out2 > b.sat",
    ),
  );
  expect(messages.join()).toMatch(/“a” shuts down under the load of “m” when it asks for horizontal/);
  expect(sentence("a")).toMatch(/40 need 18 V, and the supply of “m” then shuts down/);
});

test("an inserter above the amplifier that feeds downwards is told to feed the wrong end", () => {
  const { messages } = judged(
    draw(
      {
        a: ["aerial-uhf"],
        i: ["power-inserter", { feeds: "down" }],
        mast: ["amp-masthead"],
        tv: ["receiver-tv"],
      },
      "a.out > i.in, i.out > mast.in, mast.out > tv.in",
    ),
  );
  expect(messages.join("\n")).toMatch(
    /“i” is on the wrong side of “mast”: its 12 V come to an input that takes no supply\./,
  );
});

test("a cable that takes too many volts is not told to give none", () => {
  // 60 m of 130 Ω/km are 7.8 Ω: 350 mA take 2.7 of 13 V, and 11.5 V are needed.
  const { messages } = judged(
    draw(
      {
        d: ["dish"],
        l: ["lnb-universal", { commonMa: 315 }],
        c: ["cable", { lengthM: 60, grade: "own", loopOhmPerKm: 130 }],
        r: ["receiver-sat", { polarisation: "V" }],
      },
      "d.sky > l.sky, l.out > c.in, c.out > r.sat",
    ),
  );
  expect(messages.join("\n")).toMatch(/“c” leaves “l” without enough supply: “r” gets none of 80/);
});
