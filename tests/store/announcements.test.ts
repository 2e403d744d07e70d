/** One announcement for each thing that happens. Our own behaviour; what WCAG 2.2 asks for is 4.1.3, status messages. */
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { refuse } from "../../src/design/edits/edit.ts";
import { setOption } from "../../src/design/edits/options.ts";
import { removeParts } from "../../src/design/edits/remove.ts";
import { attachAnnouncer, useAnnouncement } from "../../src/store/announcements.ts";
import { useApp } from "../../src/store/app.ts";
import { draw } from "../draw.ts";

const app = () => useApp.getState();
let said: string[] = [];
let end: () => void = () => {};
let stop: () => void = () => {};

const HOUSE = draw(
  { uhf: ["aerial-uhf"], run: ["cable", { lengthM: 10 }], tv: ["receiver-tv"] },
  "uhf.out > run.in, run.out > tv.in",
);

beforeEach(() => {
  vi.useFakeTimers();
  app().openDesign(HOUSE);
  end = attachAnnouncer();
  said = [];
  stop = useAnnouncement.subscribe(({ text }) => said.push(text));
});
afterEach(() => {
  end();
  stop();
  vi.useRealTimers();
});

const settle = () => vi.advanceTimersByTime(2000);
const remove = (...ids: string[]) => app().change(removeParts(app().design, new Set(ids), new Set()));

describe("read out is", () => {
  test("an edit with what became of the receivers", () => {
    remove("uhf");
    settle();
    expect(said).toEqual([
      expect.stringMatching(/^“uhf” deleted\. The receiver does not work; lost: “tv”\.$/),
    ]);
  });

  test("a step taken back and made again, each as the edit that it was", () => {
    remove("uhf");
    settle();
    app().undo();
    settle();
    app().redo();
    settle();
    expect(said.slice(1)).toEqual([
      "Undone: “uhf” deleted. The receiver works; gained: “tv”.",
      "Redone: “uhf” deleted. The receiver does not work; lost: “tv”.",
    ]);
  });

  test("a refusal with its reason, each time that it is tried", () => {
    for (let times = 0; times < 2; times++) {
      app().change(refuse("That does not fit."));
      settle();
    }
    expect(said).toEqual(["That does not fit.", "That does not fit."]);
  });

  test("a value that is turned quickly once, as it stands at the end", () => {
    for (const metres of [20, 30, 40]) app().change(setOption(app().design, "run", "lengthM", metres));
    settle();
    expect(said).toHaveLength(1);
    expect(said[0]).toContain("40 m");
  });

  test("a preview with what it would change, and nothing when it is closed", () => {
    app().showPreview({ title: "Without wires", design: { ...HOUSE, wires: [] }, canApply: true });
    settle();
    app().closePreview();
    settle();
    expect(said).toEqual(["Preview, nothing is changed yet: Without wires."]);
  });

  test("an opened design with how its receivers stand", () => {
    app().openDesign(HOUSE);
    settle();
    expect(said).toEqual(["“Test design” is open. The receiver works."]);
  });

  test("nothing of a choice", () => {
    app().select({ parts: ["tv"] });
    settle();
    expect(said).toEqual([]);
  });
});
