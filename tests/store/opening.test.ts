/** Trying designs out before they come up; without workers here, so in slices on this thread. */
import { afterEach, describe, expect, test, vi } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { useApp } from "../../src/store/app.ts";
import { DEADLINE_MS, evaluateOnPage, tryDesign, useOpening } from "../../src/store/opening.ts";
// Loaded at need: not on the clock of the first trial.
import "../../src/store/searchTask.ts";
import { largeDesign } from "../bench/largeDesign.ts";
import { aerialLadder, star } from "../structures.ts";

const opening = () => useOpening.getState();

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
  useOpening.setState({ working: null, problem: null });
});

/** A worker that takes an order and then says what it is told to say. */
class Puppet {
  static last: Puppet | undefined;
  onmessage: ((event: { readonly data: unknown }) => void) | null = null;
  onerror: ((event: { readonly message: string; preventDefault: () => void }) => void) | null = null;
  isTerminated = false;
  constructor() {
    Puppet.last = this;
  }
  postMessage(): void {}
  terminate(): void {
    this.isTerminated = true;
  }
  say(type: "progress" | "done", progress: object): void {
    this.onmessage?.({
      data: { type, progress: { stage: "signals", total: 10, isTooLarge: false, ...progress } },
    });
  }
}

describe("trying out", () => {
  test("a design that is no trouble fits, and shows nothing on the way", async () => {
    const seen: boolean[] = [];
    const stop = useOpening.subscribe((s) => s.working && seen.push(s.working.isShown));
    expect(await tryDesign(aerialLadder(2), { isShown: false })).toBe("fits");
    stop();
    expect(seen).not.toContain(true);
    expect(opening().working).toBeNull();
  });

  test("shows how far it is once it takes longer than a moment, and can be stopped", async () => {
    vi.useFakeTimers();
    vi.stubGlobal("Worker", Puppet);
    const tried = tryDesign(aerialLadder(2), { isShown: false });
    expect(opening().working?.isShown).toBe(false);
    vi.advanceTimersByTime(301);
    Puppet.last?.say("progress", { done: 4 });
    expect(opening().working).toMatchObject({ isShown: true, done: 4, total: 10, canStop: true });
    opening().stop();
    expect(await tried).toBe("stopped");
    expect(Puppet.last?.isTerminated).toBe(true);
    expect(opening().working).toBeNull();
  });

  test("ends at the deadline, whether or not anything was heard", async () => {
    vi.useFakeTimers();
    vi.stubGlobal("Worker", Puppet);
    const tried = tryDesign(aerialLadder(2), { isShown: true });
    vi.advanceTimersByTime(DEADLINE_MS + 1);
    expect(await tried).toBe("late");
    expect(Puppet.last?.isTerminated).toBe(true);
  });

  test("a worker that dies on the way has failed", async () => {
    vi.stubGlobal("Worker", Puppet);
    const tried = tryDesign(aerialLadder(2), { isShown: true });
    Puppet.last?.say("progress", { done: 1 });
    Puppet.last?.onerror?.({ message: "out of memory", preventDefault: () => undefined });
    expect(await tried).toBe("failed");
  });

  test("what goes beyond the budget is said to be too large", async () => {
    vi.stubGlobal("Worker", Puppet);
    const tried = tryDesign(aerialLadder(2), { isShown: true });
    Puppet.last?.say("done", { done: 4, isTooLarge: true });
    expect(await tried).toBe("too large");
  });

  test("another design that is opened meanwhile overtakes the first", async () => {
    vi.stubGlobal("Worker", Puppet);
    const first = tryDesign(aerialLadder(2), { isShown: true });
    const second = tryDesign(aerialLadder(3), { isShown: true });
    expect(await first).toBe("overtaken");
    expect(opening().working?.title).toBe("Ladder of 3 stages");
    Puppet.last?.say("done", { done: 10 });
    expect(await second).toBe("fits");
  });
});

describe("working out on the page", () => {
  test("a large design in slices comes to the same as in one go, with progress on the way", async () => {
    const design = largeDesign(400);
    const seen: number[] = [];
    const stop = useOpening.subscribe((s) => s.working && seen.push(s.working.done));
    const worked = await evaluateOnPage(design);
    stop();
    expect(seen.length).toBeGreaterThan(1);
    expect(worked?.report).toEqual(report(evaluate(largeDesign(400))));
    expect(worked?.evaluation.design).toBe(design);
    expect(opening().working).toBeNull();
  });
});

test("an edit that would make the design too large is refused, and the design stays", () => {
  const app = () => useApp.getState();
  app().openDesign(aerialLadder(2));
  const before = app();
  // 1,100 aerials at every one of 1,024 outputs and their plates: millions of carriers and bands.
  expect(app().change({ ok: true, design: star({ sources: 1100 }), notes: [] })).toBe(false);
  expect(app().design).toBe(before.design);
  expect(app().evaluation).toBe(before.evaluation);
  expect(app().notices.at(-1)?.text).toMatch(/too large to calculate/);
  expect(useApp.temporal.getState().pastStates).toHaveLength(0);
});
