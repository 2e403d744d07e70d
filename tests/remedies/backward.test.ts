/**
 * BW: what practice breaks, the search mends. A fault is put into a sound design; among the first three cures there
 * must be one that serves everybody as before, at the part or the wire where the fault is. The faults and the sound
 * designs are the tradesman's (common practice, no source), not the search's. All of them: `npm run backward`.
 */
import { describe, expect, test } from "vitest";
import { readDesign, writeDesign } from "../../src/design/file.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { cureOf, isCured, isNamed, noticed, told } from "./backward.ts";
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

/** Where a master of the trade would take another part in hand than the one that was spoiled. */
const ARGUABLE: readonly string[] = [
  // An aerial off its aim gives here what others give: behind it nobody needs the pad.
  "strongTransmitter aerial-off:uhf",
  // Without its pad the strong transmitter is what is too strong.
  "strongTransmitter pad-missing:pad",
];

describe("The way back from a fault", () => {
  test.each(QUICK)("BW2: the first of each sort of fault in %s is cured", { timeout: 60_000 }, (name) => {
    const sound = siteOf(SOUND_DESIGNS[name]?.() ?? { title: "", parts: [], wires: [] });
    const all = noticed(sound);
    const first = all.filter(({ fault }, i) => all.findIndex((o) => o.fault.type === fault.type) === i);
    expect(first.length).toBeGreaterThan(4);
    const outcomes = first.map(({ fault, site }) => cureOf(name, sound, fault, site));
    expect(outcomes.filter((o) => !isCured(o)).map(told)).toEqual([]);
  });

  test.each(QUICK)("BW3: every fault in %s is named among the first two causes", (name) => {
    const sound = siteOf(SOUND_DESIGNS[name]?.() ?? { title: "", parts: [], wires: [] });
    const all = noticed(sound);
    expect(all.length).toBeGreaterThan(30);
    const unnamed = all.filter(({ fault, site }) => !isNamed(sound, fault, site));
    expect(unnamed.map(({ fault }) => fault.id).filter((id) => !ARGUABLE.includes(`${name} ${id}`))).toEqual(
      [],
    );
  });
});
