/** Progress of a trainee: what is kept, and what happens without a storage. Our own behaviour; no outside source. */
import { describe, expect, test } from "vitest";
import { addHint, addMeasured, isSolved } from "../../src/remedies/training/progress.ts";
import { createTraining, progressOf } from "../../src/store/training.ts";
import { deniedPlace, memoryStorage, settled } from "./documents/memoryPlace.ts";

const LEVEL = { part: "amp", port: "out", quantity: "level", asked: "" } as const;

describe("a trainee's progress", () => {
  test("is kept and read again, case by case", async () => {
    const storage = memoryStorage();
    const first = createTraining(storage.window()).getState();
    first.update("lounge-dark", (p) => addMeasured(p, LEVEL));
    first.update("one-strand", (p) => addHint(p, 3));
    await settled();
    const again = createTraining(storage.window());
    await again.getState().load();
    expect(progressOf(again.getState().progress, "lounge-dark").measured).toEqual([LEVEL]);
    expect(progressOf(again.getState().progress, "one-strand").hints).toBe(1);
    expect(progressOf(again.getState().progress, "one-strand").measured).toEqual([]);
  });

  test("begins afresh for the one case that is worked on again", async () => {
    const storage = memoryStorage();
    const training = createTraining(storage.window());
    training.getState().update("lounge-dark", (p) => addMeasured(p, LEVEL));
    training.getState().update("one-strand", (p) => addHint(p, 3));
    training.getState().forget("lounge-dark");
    await settled();
    expect(Object.keys(training.getState().progress)).toEqual(["one-strand"]);
    expect(Object.keys(Object(storage.kept))).toEqual(["one-strand"]);
  });

  test.each([
    { name: "no text", kept: 12 },
    { name: "no JSON", kept: "{" },
    { name: "a case that is no object", kept: '{"lounge-dark":7}' },
    { name: "a fault that does not exist", kept: '{"a":{"measured":[],"named":[{"part":"x","type":"y"}]}}' },
  ])("starts empty where what was kept is $name", async ({ kept }) => {
    const training = createTraining(memoryStorage(kept).window());
    await training.getState().load();
    expect(training.getState().progress).toEqual({});
    expect(training.getState().trouble).toBeNull();
  });

  test("holds in the window, and says so, where the browser denies storage", async () => {
    const training = createTraining(deniedPlace);
    await training.getState().load();
    training.getState().update("lounge-dark", (p) => addMeasured(p, LEVEL));
    await settled();
    expect(training.getState().trouble).toMatch(/this window only/);
    expect(progressOf(training.getState().progress, "lounge-dark").measured).toHaveLength(1);
  });

  test("of two cases worked on in two windows is kept for both, and shown in both", async () => {
    const storage = memoryStorage();
    const [one, two] = [createTraining(storage.window()), createTraining(storage.window())];
    await Promise.all([one.getState().load(), two.getState().load()]);
    one.getState().update("lounge-dark", (p) => addMeasured(p, LEVEL));
    two.getState().update("one-strand", (p) => addHint(p, 3));
    await settled();
    for (const { progress } of [one.getState(), two.getState()]) {
      expect(progressOf(progress, "lounge-dark").measured).toEqual([LEVEL]);
      expect(progressOf(progress, "one-strand").hints).toBe(1);
    }
  });

  test("as former versions kept it, one text for all cases, is read case by case", async () => {
    const solved = { measured: [LEVEL], named: [], hints: 2, shown: false };
    const storage = memoryStorage(JSON.stringify({ "lounge-dark": solved, broken: { hints: -1 } }));
    const training = createTraining(storage.window());
    await training.getState().load();
    expect(training.getState().progress).toEqual({ "lounge-dark": solved });
    training.getState().update("one-strand", (p) => addHint(p, 3));
    await settled();
    // What cannot be read stays where it is.
    expect(storage.kept).toMatchObject({ "lounge-dark": solved, broken: { hints: -1 } });
  });

  test("of a case called like a thing of the language is none", () => {
    expect(isSolved(progressOf({}, "constructor"))).toBe(false);
    expect(progressOf({}, "__proto__").measured).toEqual([]);
  });
});
