/** Progress of a trainee: what is kept, and what happens without a storage. Our own behaviour; no outside source. */
import { describe, expect, test } from "vitest";
import { addHint, addMeasured, isSolved } from "../../src/remedies/training/progress.ts";
import { createTraining, type ProgressShelf, progressOf } from "../../src/store/training.ts";

function memoryShelf(start?: unknown): ProgressShelf & { kept: unknown } {
  const shelf = {
    kept: start,
    read: async () => shelf.kept,
    write: async (text: string) => {
      shelf.kept = text;
    },
  };
  return shelf;
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const LEVEL = { part: "amp", port: "out", quantity: "level", asked: "" } as const;

describe("a trainee's progress", () => {
  test("is kept and read again, case by case", async () => {
    const shelf = memoryShelf();
    const first = createTraining(shelf).getState();
    first.update("lounge-dark", (p) => addMeasured(p, LEVEL));
    first.update("one-strand", (p) => addHint(p, 3));
    await settled();
    const again = createTraining(shelf);
    await again.getState().load();
    expect(progressOf(again.getState().progress, "lounge-dark").measured).toEqual([LEVEL]);
    expect(progressOf(again.getState().progress, "one-strand").hints).toBe(1);
    expect(progressOf(again.getState().progress, "one-strand").measured).toEqual([]);
  });

  test("begins afresh for the one case that is worked on again", async () => {
    const shelf = memoryShelf();
    const training = createTraining(shelf);
    training.getState().update("lounge-dark", (p) => addMeasured(p, LEVEL));
    training.getState().update("one-strand", (p) => addHint(p, 3));
    training.getState().forget("lounge-dark");
    await settled();
    expect(Object.keys(training.getState().progress)).toEqual(["one-strand"]);
    expect(shelf.kept).not.toContain("lounge-dark");
  });

  test.each([
    { name: "no text", kept: 12 },
    { name: "no JSON", kept: "{" },
    { name: "a case that is no object", kept: '{"lounge-dark":7}' },
    { name: "a fault that does not exist", kept: '{"a":{"measured":[],"named":[{"part":"x","type":"y"}]}}' },
  ])("starts empty where what was kept is $name", async ({ kept }) => {
    const training = createTraining(memoryShelf(kept));
    await training.getState().load();
    expect(training.getState().progress).toEqual({});
    expect(training.getState().trouble).toBeNull();
  });

  test("holds in the window, and says so, where the browser denies storage", async () => {
    const denied = async () => {
      throw new Error("denied");
    };
    const training = createTraining({ read: denied, write: denied });
    await training.getState().load();
    training.getState().update("lounge-dark", (p) => addMeasured(p, LEVEL));
    await settled();
    expect(training.getState().trouble).toMatch(/this window only/);
    expect(progressOf(training.getState().progress, "lounge-dark").measured).toHaveLength(1);
  });

  test("of a case called like a thing of the language is none", () => {
    expect(isSolved(progressOf({}, "constructor"))).toBe(false);
    expect(progressOf({}, "__proto__").measured).toEqual([]);
  });
});
