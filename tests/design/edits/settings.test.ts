/** SE: what a design is judged by changes like everything else: checked, undoable, and short where it is usual. */
import { describe, expect, test } from "vitest";
import { EMPTY_DESIGN } from "../../../src/design/design.ts";
import { setSettings } from "../../../src/design/edits/settings.ts";
import { settingsOf, USUAL_SETTINGS } from "../../../src/design/settings.ts";
import { profileOf } from "../../../src/findings/limits.ts";

function set(key: string, value: unknown, design = EMPTY_DESIGN) {
  const edit = setSettings(design, key, value);
  if (!edit.ok) throw new Error(edit.reason);
  return edit.design;
}

describe("settings of a design", () => {
  test("SE1: a chosen profile judges from then on", () => {
    const design = set("limits", "rd346");
    expect(settingsOf(design).limits).toBe("rd346");
    // Royal Decree 346/2011, Annex I 4.5: satellite 47 to 77 dBµV, slope of at most 20 dB.
    expect(profileOf(design).rows.find((r) => r.service === "satellite")).toMatchObject({
      minDbuv: 47,
      maxDbuv: 77,
    });
    expect(profileOf(design).slopeDb.satellite).toBe(20);
  });

  test("SE2: back at the usual settings the design names none", () => {
    expect(set("limits", undefined, set("limits", "rd346"))).toEqual(EMPTY_DESIGN);
    expect(set("limits", USUAL_SETTINGS.limits, set("limits", "rd346"))).not.toHaveProperty("settings");
  });

  test("SE3: the same value again changes nothing: the same object", () => {
    const design = set("derating", "power");
    expect(set("derating", "power", design)).toBe(design);
    expect(set("derating", "usual")).toBe(EMPTY_DESIGN);
  });

  test.each([
    { name: "no such setting", key: "volume", value: 3, reason: /no setting/ },
    { name: "no such profile", key: "limits", value: "mine", reason: /Limits at outlets/ },
    {
      name: "no list",
      key: "ownLimits",
      value: "47 to 70",
      reason: /^My own limits is “47 to 70”; allowed is a list\.$/,
    },
    {
      name: "a level beyond its range",
      key: "ownLimits",
      value: [{ service: "tv", minDbuv: 47, maxDbuv: 700 }],
      reason: /^My own limits, row 1: Max is 700 dBµV; allowed is 0 to 120 dBµV\.$/,
    },
    {
      name: "least above most",
      key: "ownLimits",
      value: [
        { service: "tv", minDbuv: 40, maxDbuv: 70 },
        { service: "dab", minDbuv: 71, maxDbuv: 70 },
      ],
      reason: /Row 2: .*lowest.*above/,
    },
    { name: "a name every object answers to", key: "constructor", value: 1, reason: /no setting/ },
  ])("SE4: refuses $name, with the reason", ({ key, value, reason }) => {
    const edit = setSettings(EMPTY_DESIGN, key, value);
    expect(edit.ok).toBe(false);
    expect(edit.ok ? "" : edit.reason).toMatch(reason);
  });

  test("SE5: rows of one's own are completed and judge when they are chosen", () => {
    const rows = [{ service: "fm", minDbuv: 55, maxDbuv: 66 }];
    const design = set("limits", "own", set("ownLimits", rows));
    expect(profileOf(design).rows).toEqual([{ service: "fm", mode: "", minDbuv: 55, maxDbuv: 66 }]);
  });
});
