/** Unwanted signals on the satellite IF, with a real transponder list. */

import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { draw } from "../draw.ts";
import { messagesOf } from "../messages.ts";
import { AT_28_2_EAST, hasScanTable, readDistinct } from "./scanTables.ts";

const there = hasScanTable(AT_28_2_EAST, "what cordless phones disturb on a real satellite's IF");

describe.skipIf(!there)(
  "cordless phones (DECT, 1880 to 1900 MHz) picked up by a universal feed of 28.2° East",
  () => {
    const transponders = there ? readDistinct(AT_28_2_EAST) : [];
    const design = draw(
      {
        dish: ["dish", { diameterM: 0.8, orbitalPositionDegE: 28.2, transponders }],
        lnb: ["lnb-universal"],
        pick: ["pick-up", { mast700: false, mast800: false, cordless: true, cordlessDbuv: 70 }],
        rx: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > pick.in, pick.out > rx.sat",
    );
    const meetings = evaluate(design).record("pick")?.meetings ?? [];
    const hit = meetings
      .filter((m) => m.victim.origin.service === "satellite")
      .flatMap((m) => m.carriers.map((i) => m.victim.grid.plan[m.victim.grid.index[i] ?? 0]))
      .map((c) => c?.airMHz);

    // Counted in Debian's dtv-scan-tables 0+git20190925: of the occupied bands (1.35 · symbol rate) at universal IF,
    // those of 11 656 V and 12 480 V reach into 1880 to 1900 MHz.
    test("hit the transponders at 11 656 and 12 480 MHz and no other", () => {
      expect([...new Set(hit)].sort()).toEqual([11_656, 12_480]);
    });

    test("are named as the culprit, and the receiver misses those two", () => {
      const evaluation = evaluate(design);
      const { verdicts } = report(evaluation);
      expect(messagesOf(evaluation, "shared-frequencies")[0]).toMatch(/DECT.*“pick”/);
      expect(verdicts.find((v) => v.part === "rx")?.services[0]).toMatchObject({
        wanted: 83,
        got: 81,
      });
    });
  },
);

describe("phone masts in front of a UHF amplifier", () => {
  const chain = (filtered: boolean) =>
    draw(
      {
        uhf: ["aerial-uhf", { levelDbuv: 60 }],
        pick: ["pick-up", { mast700: true, mast800: true, mastDbuv: 95 }],
        filter: ["filter-mobile", { band: "700" }],
        amp: ["amp-distribution", { gainDb: 20, outputDbuv: 100, uhfTo: "862" }],
        tv: ["receiver-tv"],
      },
      filtered
        ? "uhf.out > pick.in, pick.out > filter.in, filter.out > amp.in, amp.out > tv.in"
        : "uhf.out > pick.in, pick.out > amp.in, amp.out > tv.in",
    );
  const tv = (filtered: boolean) => report(evaluate(chain(filtered)));

  // Common practice, no source: strong masts drown TV in the amplifier's products; a filter before it cures that.
  test("overload it and cost TV channels, until a filter keeps them out", () => {
    expect(tv(false).findings.some((f) => f.rule === "overload" && f.severity === "error")).toBe(true);
    expect(tv(false).verdicts.find((v) => v.part === "tv")?.state).toBe("fails");
    expect(tv(true).findings.some((f) => f.rule === "overload")).toBe(false);
    expect(tv(true).verdicts.find((v) => v.part === "tv")?.state).not.toBe("fails");
  });
});
