/** C band of real satellites, as transponder lists had them in 2019: all of it can be entered and is brought down. */
import { expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { C_DISH_OPTIONS } from "../../src/parts/dishBands.ts";
import { draw } from "../draw.ts";
import { AT_28_2_EAST, hasScanTable, readDistinct, readScanTable, scanTableNames } from "./scanTables.ts";

const isThere = hasScanTable(AT_28_2_EAST, "satellites of C band");
const isCBand = ({ frequencyMHz }: { readonly frequencyMHz: number }) =>
  frequencyMHz >= 3_400 && frequencyMHz <= 4_200;

/** One entry names DVB-S with rate 3/5, which EN 300 421 does not have (from memory): it is taken for DVB-S2. */
const readable = <E extends { readonly mode: string }>(entry: E): E =>
  entry.mode === "dvbs-qpsk-3/5" ? { ...entry, mode: "dvbs2-qpsk-3/5" } : entry;

/**
 * Counted in Debian's dtv-scan-tables 0+git20190925, folder dvb-s, with grep for "FREQUENCY = " and a number of
 * kilohertz from 3 400 000 to 4 200 000: 3108 entries in 169 lists.
 */
test.skipIf(!isThere)("3108 entries of 169 lists are accepted by the options of a dish for C band", () => {
  const lists = scanTableNames()
    .map((name) => readScanTable(name).filter(isCBand).map(readable))
    .filter((list) => list.length > 0);
  expect(lists).toHaveLength(169);
  expect(lists.reduce((sum, list) => sum + list.length, 0)).toBe(3_108);
  for (const list of lists) expect(C_DISH_OPTIONS.shape.transponders.safeParse(list).success).toBe(true);
});

/** IF = 5150 − RF (LNB tables, from memory): 3.4 to 4.2 GHz lie at 1750 to 950 MHz, whatever the list. */
test.skipIf(!isThere)(
  "every entry of every list comes out of an LNB for C band at 5150 MHz less its frequency",
  () => {
    for (const name of scanTableNames()) {
      const listed = readDistinct(name).filter(isCBand).map(readable);
      if (listed.length === 0) continue;
      const circular = listed.some(({ polarisation }) => polarisation === "R" || polarisation === "L");
      const evaluation = evaluate(
        draw(
          {
            // Whatever its own place: all of them stand above this horizon.
            dish: ["dish-c-band", { transponders: listed }],
            lnb: ["lnb-c-band", { feedType: circular ? "circular" : "linear" }],
            rx: ["receiver-sat"],
          },
          "dish.sky > lnb.sky, lnb.out > rx.sat",
        ),
      );
      const bands = (evaluation.record("rx")?.inputs.sat?.bands ?? []).filter(
        (b) => b.origin.service === "satellite",
      );
      const arrived = bands.flatMap(({ grid }) =>
        Array.from(grid.centre, (mhz, i) => ({ mhz, airMHz: grid.plan[grid.index[i] ?? 0]?.airMHz ?? 0 })),
      );
      expect(arrived, name).toHaveLength(listed.length);
      for (const { mhz, airMHz } of arrived) {
        expect(mhz + airMHz).toBeCloseTo(5_150, 6);
        expect(mhz).toBeGreaterThanOrEqual(950);
        expect(mhz).toBeLessThanOrEqual(1_750);
      }
      for (const { grid } of bands) expect([...grid.centre]).toEqual([...grid.centre].sort((a, b) => a - b));
    }
  },
);
