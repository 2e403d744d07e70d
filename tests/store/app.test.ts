/** The store's promises to everyone who reads it. They are our own behaviour; no outside source speaks of it. */
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type Design, EMPTY_DESIGN, wireId } from "../../src/design/design.ts";
import { done, refuse } from "../../src/design/edits/edit.ts";
import { setOption } from "../../src/design/edits/options.ts";
import { rename, retitle } from "../../src/design/edits/parts.ts";
import { removeParts } from "../../src/design/edits/remove.ts";
import { useApp } from "../../src/store/app.ts";
import { findingsOf, wireOf } from "../../src/store/hooks.ts";
import { draw } from "../draw.ts";

const app = () => useApp.getState();
const steps = () => useApp.temporal.getState().pastStates.length;

const twoChains = (): Design =>
  draw(
    {
      uhf: ["aerial-uhf"],
      run: ["cable", { lengthM: 10 }],
      tv: ["receiver-tv"],
      dab: ["aerial-dab"],
      run2: ["cable", { lengthM: 10 }],
      radio: ["receiver-dab"],
    },
    "uhf.out > run.in, run.out > tv.in, dab.out > run2.in, run2.out > radio.in",
  );

beforeEach(() => {
  vi.useFakeTimers();
  app().openDesign(twoChains());
  for (const notice of app().notices) app().dismiss(notice.id);
});
afterEach(() => vi.useRealTimers());

const lengthen = (metres: number) => setOption(app().design, "run", "lengthM", metres);

describe("a change", () => {
  test("is one step back, and the evaluation follows both ways", () => {
    const before = app().design;
    expect(app().change(lengthen(50))).toBe(true);
    const after = app().design;
    expect(steps()).toBe(1);
    expect(app().evaluation.design).toBe(after);
    app().undo();
    expect(app().design).toBe(before);
    expect(app().evaluation.design).toBe(before);
    app().redo();
    expect(app().design).toBe(after);
    expect(app().evaluation.design).toBe(after);
  });

  test("with the key of the change just before joins its step", () => {
    const before = app().design;
    for (const metres of [20, 30, 40]) {
      app().change(lengthen(metres), { merge: "run length" });
      vi.advanceTimersByTime(300);
    }
    expect(steps()).toBe(1);
    app().undo();
    expect(app().design).toBe(before);
  });

  test.each([
    { name: "after a pause", wait: 5000, key: "run length", between: () => {} },
    { name: "with another key", wait: 10, key: "other", between: () => {} },
    {
      name: "after some other change",
      wait: 10,
      key: "run length",
      between: () => app().change(rename(app().design, "tv", "Kitchen")),
    },
  ])("$name is a step of its own", ({ wait, key, between }) => {
    app().change(lengthen(20), { merge: "run length" });
    vi.advanceTimersByTime(wait);
    between();
    const count = steps();
    app().change(lengthen(30), { merge: key });
    expect(steps()).toBe(count + 1);
  });

  test("after an undo does not melt into what is left of the old steps", () => {
    app().change(lengthen(20), { merge: "run length" });
    app().change(rename(app().design, "tv", "Kitchen"));
    app().undo();
    app().change(lengthen(30), { merge: "run length" });
    expect(steps()).toBe(2);
  });

  test("that was refused leaves the design alone and says why", () => {
    const before = app().design;
    expect(app().change(refuse("No room on the roof."))).toBe(false);
    expect(app().design).toBe(before);
    expect(steps()).toBe(0);
    expect(app().notices.map((n) => [n.text, n.tone])).toEqual([["No room on the roof.", "warning"]]);
  });

  test("tells what else happened, with a way back", () => {
    app().change(done({ ...app().design, title: "Other" }, ["A wire fell away."]));
    expect(app().notices.map((n) => [n.text, n.undoable])).toEqual([["A wire fell away.", true]]);
  });

  test("that changes nothing is no step", () => {
    expect(app().change(done(app().design))).toBe(true);
    expect(steps()).toBe(0);
  });

  test("keeps the spectra of wires it does not reach, as objects", () => {
    const spectrum = (id: string) => {
      const wire = wireOf(app().design, id);
      if (!wire) throw new Error(`no wire ${id}`);
      return app().evaluation.spectrum(wire);
    };
    const far = spectrum("run2.out>radio.in");
    const near = spectrum("run.out>tv.in");
    app().change(lengthen(80));
    expect(spectrum("run2.out>radio.in")).toBe(far);
    expect(spectrum("run.out>tv.in")).not.toBe(near);
  });
});

describe("the selection", () => {
  test("lets go of what is deleted, and keeps the rest", () => {
    app().select({ parts: ["run", "tv"], wires: ["run.out>tv.in", "dab.out>run2.in"] });
    app().change(removeParts(app().design, new Set(["tv"]), new Set()));
    expect(app().selection).toEqual({ parts: ["run"], wires: ["dab.out>run2.in"] });
  });

  test("is the same object when it is chosen again", () => {
    app().select({ parts: ["run"] });
    const first = app().selection;
    app().select({ parts: ["run"] });
    expect(app().selection).toBe(first);
  });

  test("is no step back", () => {
    app().select({ parts: ["run"] });
    expect(steps()).toBe(0);
  });
});

describe("opening a design", () => {
  test("starts a history of its own with nothing selected", () => {
    app().change(retitle(app().design, "Changed"));
    app().select({ parts: ["run"] });
    const opened = app().opened;
    app().openDesign(EMPTY_DESIGN);
    expect(steps()).toBe(0);
    expect(app().selection).toEqual({ parts: [], wires: [] });
    expect(app().opened).toBe(opened + 1);
    app().undo();
    expect(app().design).toBe(EMPTY_DESIGN);
  });
});

describe("following another window", () => {
  test("takes over design and way back, keeps selection and view, and closes a preview", () => {
    const before = app().design;
    const after = { ...before, title: "Elsewhere" };
    app().select({ parts: ["run"] });
    app().showPreview({ title: "Tried", design: { ...before, title: "Tried" }, canApply: true });
    const { opened, selection } = app();
    app().follow({ states: [before, after], at: 1 });
    expect(app().preview).toBeNull();
    expect([app().design, app().evaluation.design]).toEqual([after, after]);
    expect([app().opened, app().selection]).toEqual([opened, selection]);
    app().undo();
    expect(app().design).toBe(before);
  });
});

describe("notices", () => {
  test("said again replace themselves, and old ones make room", () => {
    for (const text of ["a", "b", "c", "d", "a", "e"]) app().notify(text);
    expect(app().notices.map((n) => n.text)).toEqual(["c", "d", "a", "e"]);
  });
});

describe("the index of findings", () => {
  test("leads from a part and from a wire to what concerns them", () => {
    app().change(removeParts(app().design, new Set(["uhf"]), new Set()));
    const { findings } = app().report;
    expect(findings.length).toBeGreaterThan(0);
    const index = findingsOf(app().report);
    for (const finding of findings) {
      for (const id of [...finding.parts, ...finding.wires]) expect(index.get(id)).toContain(finding);
    }
    expect(index.get("radio") ?? []).not.toContain(findings.find((f) => f.parts.includes("tv")));
  });

  test("knows every wire of the design by its id", () => {
    for (const wire of app().design.wires) expect(wireOf(app().design, wireId(wire))).toBe(wire);
    expect(wireOf(app().design, "no.such>wire.here")).toBeUndefined();
  });
});
