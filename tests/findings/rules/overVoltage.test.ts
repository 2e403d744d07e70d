/** More volts than an LNB is made for: the window ends at 19 V (EN 61319-1, from memory). */
import { expect, test } from "vitest";
import { draw } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";

const fed = (volts: number, metres: number) =>
  foundBy(
    "over-voltage",
    draw(
      {
        d: ["dish"],
        l: ["lnb-quattro", { currentMa: 200 }],
        c: ["cable", { lengthM: metres, grade: "own", loopOhmPerKm: 100 }],
        p: ["power-inserter", { volts, limitMa: 400 }],
        r: ["receiver-sat"],
      },
      "d.sky > l.sky, l.vl > c.in, c.out > p.in, p.out > r.sat",
    ),
  );

// 200 mA on 10, 50 and 100 m of 100 Ω/km: 0.2, 1 and 2 V. Two volts beyond the window may end an LNB, from memory.
test.each([
  { volts: 24, metres: 100, severity: "error", value: 22 },
  { volts: 20, metres: 10, severity: "warning", value: 19.8 },
])("$volts V over $metres m are told at the LNB as $severity", ({ volts, metres, severity, value }) => {
  const [one, ...more] = fed(volts, metres);
  expect(more).toEqual([]);
  expect(one).toMatchObject({ severity, at: { part: "l", port: "vl" }, parts: ["p", "l"], limit: 19 });
  expect(one?.value).toBeCloseTo(value, 2);
});

test("what is lost on the way counts, and 18 V are sound", () => {
  expect(fed(20, 50)).toEqual([]);
  expect(fed(18, 10)).toEqual([]);
});
