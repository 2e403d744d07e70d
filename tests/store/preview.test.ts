/** What the store promises while another design is only looked at. Our own behaviour; no outside source speaks of it. */
import { beforeEach, describe, expect, test } from "vitest";
import { rename } from "../../src/design/edits/parts.ts";
import { removeParts } from "../../src/design/edits/remove.ts";
import { replaceKind } from "../../src/design/edits/replace.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { useApp } from "../../src/store/app.ts";

const app = () => useApp.getState();
const steps = () => useApp.temporal.getState().pastStates.length;

beforeEach(() => {
  const house = EXAMPLES.find((e) => e.key === "house-universal")?.load();
  if (house) app().openDesign(house);
});

const lnb = () => app().design.parts.find((p) => p.kind.startsWith("lnb-"))?.id ?? "";

function look(canApply = true) {
  const edit = replaceKind(app().design, lnb(), "lnb-wideband");
  if (!edit.ok) throw new Error(edit.reason);
  app().showPreview({ title: "Wideband LNB", design: edit.design, canApply });
  return edit.design;
}

describe("a preview", () => {
  test("shows what it would give and leaves the document and its history alone", () => {
    const { design, evaluation } = app();
    const tried = look();
    expect(app().design).toBe(design);
    expect(app().evaluation.design).toBe(tried);
    expect(app().evaluation.record(lnb())?.kind.kind).toBe("lnb-wideband");
    expect(app().preview?.changed.has(lnb())).toBe(true);
    expect(steps()).toBe(0);
    app().closePreview();
    expect(app().evaluation).toBe(evaluation);
    expect(app().preview).toBeNull();
  });

  test("refuses every edit with a reason, and joins nothing", () => {
    const { design } = app();
    look();
    expect(app().change(rename(design, lnb(), "Another"))).toBe(false);
    expect(app().design).toBe(design);
    expect(app().notices.at(-1)?.text).toMatch(/preview/);
    app().setConnecting([lnb(), "v"]);
    expect(app().connecting).toBeNull();
  });

  test("that is applied is one step, and one undo brings the very document back", () => {
    const { design } = app();
    const tried = look();
    expect(app().applyPreview()).toBe(true);
    expect(app().design).toBe(tried);
    expect(app().evaluation.records).toEqual(evaluate(tried).records);
    expect(steps()).toBe(1);
    app().undo();
    expect(app().design).toBe(design);
    expect(app().evaluation.design).toBe(design);
  });

  test("that is only for looking cannot be applied", () => {
    const { design } = app();
    look(false);
    expect(app().applyPreview()).toBe(false);
    expect(app().design).toBe(design);
  });

  test("is closed by undo, which then takes nothing else back", () => {
    expect(app().change(rename(app().design, lnb(), "Another"))).toBe(true);
    const { design } = app();
    const before = steps();
    look();
    app().undo();
    expect(app().preview).toBeNull();
    expect(app().design).toBe(design);
    expect(steps()).toBe(before);
  });

  test("in the place of another one still leads back to the document", () => {
    const { design, evaluation } = app();
    look();
    const second = removeParts(design, new Set([lnb()]), new Set());
    if (!second.ok) throw new Error(second.reason);
    app().select({ parts: [lnb()] });
    app().showPreview({ title: "Without", design: second.design, canApply: true });
    expect(app().preview?.removed.map((p) => p.id)).toEqual([lnb()]);
    expect(app().selection.parts).toEqual([]);
    app().closePreview();
    expect(app().evaluation).toBe(evaluation);
  });

  test("ends with the design that it was of", () => {
    look();
    const other = EXAMPLES[1]?.load();
    if (other) app().openDesign(other);
    expect(app().preview).toBeNull();
    expect(app().evaluation.design).toBe(app().design);
    app().closePreview();
    expect(app().evaluation.design).toBe(app().design);
  });
});
