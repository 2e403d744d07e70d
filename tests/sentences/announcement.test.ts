/** Sentences that are read out: English grammar by hand, the rest as the style of the house asks. */
import { describe, expect, test } from "vitest";
import { removeParts } from "../../src/design/edits/remove.ts";
import { replaceKind } from "../../src/design/edits/replace.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { editFacts } from "../../src/remedies/editFacts.ts";
import { receiverTurns } from "../../src/remedies/receiverTurns.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { editSentence, receiversSentence } from "../../src/sentences/announcement.ts";
import { draw } from "../draw.ts";

const NONE = { gained: [], lost: [], better: [], worse: [] };
const THREE = draw({ den: ["receiver-tv"], hall: ["receiver-tv"], loft: ["receiver-tv"] }, "");

describe("what was done", () => {
  const [den, hall] = THREE.parts;
  if (!den || !hall) throw new Error("no parts");

  test.each([
    [{ what: "added", parts: [den], wires: 1 }, "“den” added and connected."],
    [{ what: "added", parts: [den], wires: 0 }, "“den” added."],
    [{ what: "added", parts: [den, hall], wires: 3 }, "2 parts added."],
    [{ what: "removed", parts: [den], isClosed: true }, "“den” deleted, and its wire closed again."],
    [{ what: "removed", parts: [den, hall], isClosed: true }, "2 parts deleted."],
    [{ what: "connected", wires: [{ from: hall, to: den }] }, "“hall” connected to “den”."],
    [{ what: "disconnected", wires: [{ from: hall, to: den }] }, "Wire from “hall” to “den” deleted."],
    [{ what: "moved", parts: [den], isAll: false }, "“den” moved."],
    [{ what: "moved", parts: [den, hall], isAll: true }, "All parts moved."],
    [{ what: "several", added: 1, removed: 0, changed: 2 }, "1 part added and 2 parts changed."],
  ] as const)("%o: %s", (facts, words) => {
    expect(editSentence(facts)).toBe(words);
  });

  test("of a value names the part, the option and the value with its unit", () => {
    const before = draw({ run: ["cable", { lengthM: 10 }] }, "");
    const after = draw({ run: ["cable", { lengthM: 50 }] }, "");
    const facts = editFacts(before, after);
    expect(facts && editSentence(facts)).toBe("“run”: Length set to 50 m.");
  });
});

describe("what became of the receivers", () => {
  test.each([
    [{ of: 3, working: 3, ...NONE }, "All 3 receivers work."],
    [{ of: 3, working: 2, ...NONE, lost: ["den"] }, "2 of 3 receivers work; lost: “den”."],
    [
      { of: 3, working: 1, ...NONE, lost: ["den", "hall"], gained: ["loft"] },
      "1 of 3 receivers works; lost: “den” and “hall”. Gained: “loft”.",
    ],
    [{ of: 3, working: 3, ...NONE, worse: ["den"] }, "All 3 receivers work; gets less: “den”."],
    [{ of: 0, working: 0, ...NONE }, ""],
  ])("%o: %s", (turns, words) => {
    expect(receiversSentence(turns, THREE)).toBe(words);
  });

  // The lesson of the second example: the first with a wideband LNB, where 3 of 7 work (as in e2e/examples.spec.ts).
  test("of a house whose LNB becomes a wideband one: four of seven are lost", () => {
    const design = EXAMPLES.find((e) => e.key === "house-universal")?.load();
    const lnb = design?.parts.find((p) => p.kind === "lnb-universal");
    if (!design || !lnb) throw new Error("no LNB");
    const edit = replaceKind(design, lnb.id, "lnb-wideband");
    if (!edit.ok) throw new Error(edit.reason);
    const before = siteOf(design);
    const turns = receiverTurns(before.report, siteOf(edit.design, before.evaluation).report);
    expect(turns).toMatchObject({ of: 7, gained: [] });
    expect(turns.working + turns.lost.length).toBe(7);
    expect(turns.lost.length).toBeGreaterThan(0);
  });

  test("a receiver that was deleted is neither lost nor counted", () => {
    const design = draw(
      { uhf: ["aerial-uhf"], tv: ["receiver-tv"], other: ["receiver-tv"] },
      "uhf.out > tv.in",
    );
    const edit = removeParts(design, new Set(["tv"]), new Set());
    if (!edit.ok) throw new Error(edit.reason);
    expect(receiverTurns(siteOf(design).report, siteOf(edit.design).report)).toEqual({
      of: 0,
      working: 0,
      ...NONE,
    });
  });
});
