/** PF: limits of one's own as a file: what was written is read again, and every fault is said clearly. */
import { describe, expect, test } from "vitest";
import { EMPTY_DESIGN } from "../../src/design/design.ts";
import { takeProfileFile, writeProfileFile } from "../../src/design/profileFile.ts";
import { SETTINGS, settingsOf, USUAL_SETTINGS } from "../../src/design/settings.ts";

const OWN = SETTINGS.parse({
  limits: "own",
  ownName: "Operator A",
  ownSource: "contract of 2026",
  ownLimits: [{ service: "tv", minDbuv: 50, maxDbuv: 68, cnDb: 27, merDb: 30, differenceDb: 6 }],
  ownIsolation: [{ fromMHz: 47, toMHz: 862, db: 44 }],
  ownReserveDb: 6,
});

function taken(text: string, design = EMPTY_DESIGN) {
  const edit = takeProfileFile(design, text);
  if (!edit.ok) throw new Error(edit.reason);
  return settingsOf(edit.design);
}

const file = (values: object) => JSON.stringify({ format: "downlead-limits", version: 1, ...values });

describe("limits in a file", () => {
  test("PF1: what was written is read again, and the design is judged by it", () => {
    expect(taken(writeProfileFile(OWN))).toEqual(OWN);
  });

  test("PF2: other settings of the design stay as they are", () => {
    const design = { ...EMPTY_DESIGN, settings: SETTINGS.parse({ keepDb: 4, derating: "power" }) };
    expect(taken(writeProfileFile(OWN), design)).toEqual({ ...OWN, keepDb: 4, derating: "power" });
  });

  test("PF3: a file by hand may leave values out", () => {
    const settings = taken(file({ limits: [{ service: "fm", minDbuv: 55, maxDbuv: 66 }] }));
    expect(settings.ownLimits).toEqual([
      { service: "fm", minDbuv: 55, maxDbuv: 66, cnDb: 0, merDb: 0, differenceDb: 0 },
    ]);
    expect(settings.ownIsolation).toEqual(USUAL_SETTINGS.ownIsolation);
  });

  test.each([
    { name: "no JSON", text: "{ limits: 3 }", reason: /damaged at line 1, column 3\.$/ },
    {
      name: "a design",
      text: '{"format":"downlead","version":2}',
      reason: /another program may have written it/,
    },
    {
      name: "a newer file",
      text: '{"format":"downlead-limits","version":2}',
      reason: /newer edition wrote it, as version 2/,
    },
    { name: "no version", text: '{"format":"downlead-limits"}', reason: /its version should be 1/ },
    {
      name: "a word of no meaning",
      text: file({ colour: "red" }),
      reason: /does not know its value “colour”/,
    },
    {
      name: "a level beyond its range",
      text: file({ limits: [{ service: "tv", minDbuv: 47, maxDbuv: 700 }] }),
      reason: /^My own limits, row 1: Max is 700 dBµV; allowed is 0 to 120 dBµV\.$/,
    },
    {
      name: "least above most",
      text: file({ limits: [{ service: "tv", minDbuv: 80, maxDbuv: 70 }] }),
      reason: /^Row 1: the lowest level is above the highest\.$/,
    },
    {
      name: "a range that ends before it begins",
      text: file({ isolation: [{ fromMHz: 862, toMHz: 47, db: 40 }] }),
      reason: /^Row 1: the range must end above its beginning\.$/,
    },
    {
      name: "text where a number stands",
      text: file({ reserveDb: "much" }),
      reason: /^My own reserve is “much”; allowed is 0 to 20 dB\.$/,
    },
    { name: "far too much", text: `"${"x".repeat(200_000)}"`, reason: /it is too large\.$/ },
    {
      name: "a prototype",
      text: file({}).replace("}", ',"__proto__":{"limits":[]}}'),
      reason: /does not know its value “__proto__”/,
    },
  ])("PF4: refuses $name, with the reason", ({ text, reason }) => {
    const edit = takeProfileFile(EMPTY_DESIGN, text);
    expect(edit.ok).toBe(false);
    expect(edit.ok ? "" : edit.reason).toMatch(reason);
  });
});
