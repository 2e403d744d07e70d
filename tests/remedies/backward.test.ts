/**
 * BW: what practice breaks, the search mends. A fault is put into a sound design; among the first three cures there
 * must be one that serves everybody as before, at the part or the wire where the fault is. The faults and the sound
 * designs are the tradesman's (common practice, no source), not the search's. All of them: `npm run backward`.
 */
import { describe, expect, test } from "vitest";
import { readDesign, writeDesign } from "../../src/design/file.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { cureOf, isCured, noticed, told } from "./backward.ts";
import { SOUND_DESIGNS } from "./soundDesigns.ts";

describe("Sound designs", () => {
  test.each(Object.entries(SOUND_DESIGNS))(
    "BW1: %s is sound: a legal file, nothing wrong, every receiver served",
    (_, make) => {
      const design = make();
      expect(readDesign(writeDesign(design))).toMatchObject({ ok: true, notes: [] });
      const { report } = siteOf(design);
      expect(report.findings.filter((f) => f.severity === "error")).toEqual([]);
      expect(report.verdicts.filter((v) => v.state === "fails")).toEqual([]);
    },
  );
});

/** One fault of each sort in small designs: the whole takes many minutes. */
const QUICK = ["twin", "mastFilter", "singleCable", "terrestrialHouse", "strongTransmitter"] as const;

describe("The way back from a fault", () => {
  test.each(QUICK)("BW2: the first of each sort of fault in %s is cured", { timeout: 60_000 }, (name) => {
    const sound = siteOf(SOUND_DESIGNS[name]?.() ?? { title: "", parts: [], wires: [] });
    const all = noticed(sound);
    const first = all.filter(({ fault }, i) => all.findIndex((o) => o.fault.type === fault.type) === i);
    expect(first.length).toBeGreaterThan(4);
    const outcomes = first.map(({ fault, site }) => cureOf(name, sound, fault, site));
    expect(outcomes.filter((o) => !isCured(o)).map(told)).toEqual([]);
  });
});
