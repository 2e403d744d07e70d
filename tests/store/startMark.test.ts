// @vitest-environment happy-dom
/** Marks of starts under way, with two windows beside each other. */
import { beforeEach, describe, expect, test, vi } from "vitest";
import { browserStartMarks } from "../../src/store/startMark.ts";

/** Locks as the browser keeps them: a window's are held until freed, or until the window is gone. */
let held: Set<string>;

beforeEach(() => {
  localStorage.clear();
  held = new Set();
  vi.stubGlobal("navigator", {
    locks: {
      request: (name: string, work: () => Promise<void>) => {
        held.add(name);
        return work().then(() => held.delete(name));
      },
      query: async () => ({ held: [...held].map((name) => ({ name })) }),
    },
  });
});

const MILL = { id: "1-2-3", title: "The mill" };
const BARN = { id: "4-5-6", title: "The barn" };

describe("a start", () => {
  test("that came to its end leaves nothing", async () => {
    browserStartMarks().leave(MILL)();
    expect(await browserStartMarks().takeFailed()).toBeNull();
  });

  test("whose window is gone is told once, at the next start", async () => {
    browserStartMarks().leave(MILL);
    held.clear();
    expect(await browserStartMarks().takeFailed()).toEqual(MILL);
    expect(await browserStartMarks().takeFailed()).toBeNull();
  });

  test("that is under way in another window is no failure", async () => {
    const unmark = browserStartMarks().leave(MILL);
    expect(await browserStartMarks().takeFailed()).toBeNull();
    unmark();
    expect(await browserStartMarks().takeFailed()).toBeNull();
  });

  test("that has been under way for more than a minute has failed, although its window lives", async () => {
    let time = 1000;
    browserStartMarks(() => time).leave(MILL);
    time += 61_000;
    expect(await browserStartMarks(() => time).takeFailed()).toEqual(MILL);
  });

  test("of one window that is gone is told apart from that of one that lives", async () => {
    let time = 1000;
    browserStartMarks(() => time).leave(MILL);
    held.clear();
    time = 2000;
    browserStartMarks(() => time).leave(BARN);
    expect(await browserStartMarks(() => time).takeFailed()).toEqual(MILL);
    held.clear();
    expect(await browserStartMarks(() => time).takeFailed()).toEqual(BARN);
  });

  test("that is left at once is a reload or a change of mind; later it is a failure", async () => {
    let time = 1000;
    browserStartMarks(() => time).leave(MILL);
    time += 500;
    window.dispatchEvent(new Event("pagehide"));
    held.clear();
    expect(await browserStartMarks(() => time).takeFailed()).toBeNull();
    browserStartMarks(() => time).leave(MILL);
    time += 5000;
    window.dispatchEvent(new Event("pagehide"));
    held.clear();
    expect(await browserStartMarks(() => time).takeFailed()).toEqual(MILL);
  });
});

test("a start that failed before stays marked, however soon its page is left", async () => {
  browserStartMarks().leave(MILL, { isFailed: true });
  window.dispatchEvent(new Event("pagehide"));
  held.clear();
  expect(await browserStartMarks().takeFailed()).toEqual(MILL);
});

test.each(["", "{", "[]", "null", '{"id":1,"title":"x"}'])("a mark that reads %j is none", async (text) => {
  localStorage.setItem("downlead.start.9-9", text);
  expect(await browserStartMarks().takeFailed()).toBeNull();
});

test("without locks a mark that is found is a failure", async () => {
  vi.stubGlobal("navigator", {});
  browserStartMarks().leave(MILL);
  expect(await browserStartMarks().takeFailed()).toEqual(MILL);
});

test("where nothing can be stored nothing failed either", async () => {
  vi.stubGlobal("localStorage", {
    setItem: () => {
      throw new Error("denied");
    },
    removeItem: () => {
      throw new Error("denied");
    },
  });
  const unmark = browserStartMarks().leave(MILL);
  unmark();
  expect(await browserStartMarks().takeFailed()).toBeNull();
  vi.unstubAllGlobals();
});
