import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type Design, EMPTY_DESIGN } from "../../src/design/design.ts";
import { readDesign } from "../../src/design/file.ts";
import { createDocuments } from "../../src/store/documents.ts";
import { type MemoryShelf, memoryShelf } from "./memoryShelf.ts";

/** A window of the browser on a shelf that others may use too. */
function windowOn(shelf: MemoryShelf, name = "a") {
  let count = 0;
  const newId = () => `${name}${++count}`;
  return createDocuments({ shelf, now: Date.now, newId, delayMs: 500 });
}

const titled = (title: string): Design => ({ ...EMPTY_DESIGN, title });

function storedTitles(shelf: MemoryShelf): string[] {
  return [...shelf.documents.values()].map(({ text }) => {
    const reading = readDesign(text);
    return reading.ok ? reading.design.title : reading.problem;
  });
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe("Saving", () => {
  test("an untouched example is not stored; its first change makes it a document", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    const example = titled("Example");
    await documents.getState().begin(example);
    documents.getState().changed(example);
    await vi.advanceTimersByTimeAsync(1000);
    expect(storedTitles(shelf)).toEqual([]);

    documents.getState().changed(titled("Mine"));
    expect(documents.getState().state).toBe("unsaved");
    await vi.advanceTimersByTimeAsync(1000);
    expect(storedTitles(shelf)).toEqual(["Mine"]);
    expect(documents.getState().state).toBe("saved");
    expect(documents.getState().current).toBe("a1");
  });

  test("changes in quick succession are saved once, with the last of them", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    await documents.getState().create(titled("First"));
    for (const title of ["Second", "Third", "Fourth"]) {
      documents.getState().changed(titled(title));
      await vi.advanceTimersByTimeAsync(200);
    }
    expect(shelf.puts).toBe(1);
    await vi.advanceTimersByTimeAsync(500);
    expect(shelf.puts).toBe(2);
    expect(storedTitles(shelf)).toEqual(["Fourth"]);
  });

  test("flush saves at once, without waiting for the timer", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    documents.getState().changed(titled("Roof"));
    await documents.getState().flush();
    expect(storedTitles(shelf)).toEqual(["Roof"]);
  });

  test("a change during saving is saved after it", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    const stop = documents.subscribe(({ state }) => {
      if (state !== "saving") return;
      stop();
      documents.getState().changed(titled("Late"));
    });
    documents.getState().changed(titled("Early"));
    await documents.getState().flush();
    expect(storedTitles(shelf)).toEqual(["Early"]);
    expect(documents.getState().state).toBe("unsaved");
    await vi.advanceTimersByTimeAsync(1000);
    expect(storedTitles(shelf)).toEqual(["Late"]);
    expect(documents.getState().state).toBe("saved");
  });

  test("undoing back to the saved design while a change is being saved is saved too", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    const before = titled("Before");
    await documents.getState().create(before);
    const stop = documents.subscribe(({ state }) => {
      if (state !== "saving") return;
      stop();
      documents.getState().changed(before);
    });
    documents.getState().changed(titled("After"));
    await documents.getState().flush();
    expect(storedTitles(shelf)).toEqual(["After"]);
    await vi.advanceTimersByTimeAsync(1000);
    expect(storedTitles(shelf)).toEqual(["Before"]);
  });

  test.each([
    { name: "storage full", error: new DOMException("", "QuotaExceededError"), says: "full" },
    { name: "storage denied", error: new DOMException("", "SecurityError"), says: "does not let" },
    {
      name: "no storage at all",
      error: new ReferenceError("indexedDB is not defined"),
      says: "does not let",
    },
  ])("$name: says so and offers the file; a later change tries again", async ({ error, says }) => {
    const shelf = memoryShelf();
    shelf.refusal = error;
    const documents = windowOn(shelf);
    documents.getState().changed(titled("House"));
    await vi.advanceTimersByTimeAsync(1000);
    expect(documents.getState().state).toBe("unavailable");
    expect(documents.getState().reason).toContain(says);
    expect(documents.getState().reason).toContain("download the file");

    shelf.refusal = null;
    documents.getState().changed(titled("House, later"));
    await vi.advanceTimersByTimeAsync(1000);
    expect(documents.getState()).toMatchObject({ state: "saved", reason: null });
    expect(storedTitles(shelf)).toEqual(["House, later"]);
  });

  test("what cannot be saved stays in the list of this window, and opens from there again", async () => {
    const shelf = memoryShelf();
    shelf.refusal = new DOMException("", "SecurityError");
    const documents = windowOn(shelf);
    documents.getState().changed(titled("Mine"));
    await documents.getState().begin(titled("Example"));
    documents.getState().changed(titled("Mine too"));
    await documents.getState().flush();
    expect(documents.getState().list.map(({ id, title, onlyHere }) => ({ id, title, onlyHere }))).toEqual([
      { id: "a1", title: "Mine", onlyHere: true },
      { id: "a2", title: "Mine too", onlyHere: true },
    ]);
    expect(await documents.getState().open("a1")).toMatchObject({ ok: true, design: titled("Mine") });
  });

  test("once the storage takes things again, it takes all that was kept, each once", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    await documents.getState().create(titled("Old"));
    shelf.refusal = new DOMException("", "QuotaExceededError");
    for (const title of ["Old, a", "Old, b"]) {
      documents.getState().changed(titled(title));
      await documents.getState().flush();
    }
    await documents.getState().begin(titled("Example"));
    documents.getState().changed(titled("New"));
    await documents.getState().flush();
    expect(storedTitles(shelf)).toEqual(["Old"]);

    shelf.refusal = null;
    documents.getState().changed(titled("New, changed"));
    await documents.getState().flush();
    expect(storedTitles(shelf).sort()).toEqual(["New, changed", "Old, b"]);
    expect(documents.getState().list.some((head) => head.onlyHere)).toBe(false);
    expect(documents.getState().notice).toBeNull();
  });

  test("a kept design that is opened again and changed is saved as the same document", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    await documents.getState().create(titled("Old"));
    shelf.refusal = new DOMException("", "QuotaExceededError");
    documents.getState().changed(titled("Old, changed"));
    await documents.getState().begin(titled("Example"));
    await documents.getState().open("a1");
    shelf.refusal = null;
    documents.getState().changed(titled("Old, changed again"));
    await documents.getState().flush();
    expect(storedTitles(shelf)).toEqual(["Old, changed again"]);
    expect(documents.getState().notice).toBeNull();
  });

  test("a kept design can be removed and restored", async () => {
    const shelf = memoryShelf();
    shelf.refusal = new DOMException("", "SecurityError");
    const documents = windowOn(shelf);
    documents.getState().changed(titled("Mine"));
    await documents.getState().flush();
    const removed = await documents.getState().remove("a1");
    expect(documents.getState().list).toEqual([]);

    shelf.refusal = null;
    if (!removed) throw new Error("nothing was removed");
    expect(await documents.getState().restore(removed)).toBeNull();
    expect(storedTitles(shelf)).toEqual(["Mine"]);
    expect(documents.getState().list.some((head) => head.onlyHere)).toBe(false);
  });
});

describe("Opening", () => {
  test("a document comes back as it was saved, and counts as opened last in another window", async () => {
    const shelf = memoryShelf();
    await windowOn(shelf).getState().create(titled("House"));
    const later = windowOn(shelf, "b");
    expect(await later.getState().openLast()).toMatchObject({ ok: true, design: titled("House") });
    expect(later.getState().current).toBe("a1");
  });

  test("the first start has no last document", async () => {
    expect(await windowOn(memoryShelf()).getState().openLast()).toBeNull();
  });

  test("opening another document saves the changes of the one before", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    await documents.getState().create(titled("One"));
    await documents.getState().create(titled("Two"));
    documents.getState().changed(titled("Two, changed"));
    await documents.getState().open("a1");
    expect(storedTitles(shelf)).toEqual(["One", "Two, changed"]);
    expect(documents.getState().current).toBe("a1");
  });

  test("what was just opened is not saved again", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    await documents.getState().create(titled("One"));
    const opened = await documents.getState().open("a1");
    if (!opened.ok) throw new Error(opened.problem);
    documents.getState().changed(opened.design);
    await vi.advanceTimersByTimeAsync(1000);
    expect(shelf.puts).toBe(1);
  });

  test("a document that cannot be read is reported, kept, and its text handed out", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    await documents.getState().create(titled("Good"));
    const head = { id: "bad", title: "Broken", changed: 0, parts: 3, revision: 4 };
    shelf.documents.set("bad", { head, text: '{"format": "downlead", "ver' });
    const opened = await documents.getState().open("bad");
    expect(opened).toMatchObject({ ok: false, text: '{"format": "downlead", "ver' });
    expect(opened.ok ? "" : opened.problem).toMatch(/“Broken” cannot be read: .*line 1, column/);
    expect(documents.getState().current).toBe("a1");
    expect(await documents.getState().text("bad")).toBe('{"format": "downlead", "ver');
  });
});

describe("Two windows on one document", () => {
  async function twoWindows() {
    const shelf = memoryShelf();
    const [first, second] = [windowOn(shelf, "a"), windowOn(shelf, "b")];
    await first.getState().create(titled("House"));
    await second.getState().open("a1");
    return { shelf, first, second };
  }

  test("the later one is kept as a copy, under a title of its own", async () => {
    const { shelf, first, second } = await twoWindows();
    first.getState().changed({ ...titled("House"), lesson: "first" });
    await first.getState().flush();
    second.getState().changed({ ...titled("House"), lesson: "second" });
    await second.getState().flush();
    expect(storedTitles(shelf)).toEqual(["House", "House (copy)"]);
    expect(shelf.documents.get("a1")?.text).toContain("first");
    expect(shelf.documents.get("b1")?.text).toContain("second");
    expect(second.getState()).toMatchObject({ current: "b1", newTitle: "House (copy)", state: "saved" });
    expect(second.getState().notice).toContain("both are kept");
  });

  test("the copy goes on being saved as the copy", async () => {
    const { shelf, first, second } = await twoWindows();
    first.getState().changed(titled("House"));
    await first.getState().flush();
    second.getState().changed(titled("House"));
    await second.getState().flush();
    second.getState().changed(titled("Flat"));
    await second.getState().flush();
    expect(storedTitles(shelf)).toEqual(["House", "Flat"]);
  });

  test("a document deleted in one window is kept by the other that goes on with it", async () => {
    const { shelf, first, second } = await twoWindows();
    await first.getState().remove("a1");
    second.getState().changed(titled("House, changed"));
    await second.getState().flush();
    expect(storedTitles(shelf)).toEqual(["House, changed"]);
    expect(second.getState().notice).toContain("deleted in another window");
  });

  test("a window is told at once that another saved the same document", async () => {
    const { second } = await twoWindows();
    await second.getState().heard("a1", 1);
    expect(second.getState().notice).toBeNull();
    await second.getState().heard("a1", 2);
    expect(second.getState().notice).toContain("another window");
  });
});

describe("The list", () => {
  test("shows title, part count and date, latest first", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    vi.setSystemTime(1_000);
    await documents.getState().create(titled("Old"));
    vi.setSystemTime(2_000);
    await documents.getState().create(titled("New"));
    expect(documents.getState().list).toEqual([
      { id: "a2", title: "New", changed: 2_000, parts: 0, revision: 1 },
      { id: "a1", title: "Old", changed: 1_000, parts: 0, revision: 1 },
    ]);
  });

  test("rename changes the stored title, and that of the open design", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    await documents.getState().create(titled("House"));
    expect(await documents.getState().rename("a1", "Cottage")).toBeNull();
    expect(storedTitles(shelf)).toEqual(["Cottage"]);
    expect(documents.getState().newTitle).toBe("Cottage");
    // The open design may go on: its revision is known.
    documents.getState().changed(titled("Cottage"));
    await documents.getState().flush();
    expect(storedTitles(shelf)).toEqual(["Cottage"]);
  });

  test("an empty title is refused with a sentence", async () => {
    const documents = windowOn(memoryShelf());
    await documents.getState().create(titled("House"));
    expect(await documents.getState().rename("a1", "  ")).toBe("A design needs a title.");
  });

  test("duplicate stores a second one under another title", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    await documents.getState().create(titled("House"));
    expect(await documents.getState().duplicate("a1")).toBeNull();
    expect(storedTitles(shelf)).toEqual(["House", "House (copy)"]);
  });

  test("what was removed comes back whole", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    await documents.getState().create(titled("House"));
    const before = shelf.documents.get("a1");
    const removed = await documents.getState().remove("a1");
    expect(storedTitles(shelf)).toEqual([]);
    expect(documents.getState().list).toEqual([]);
    if (!removed) throw new Error("nothing was removed");
    expect(await documents.getState().restore(removed)).toBeNull();
    expect(shelf.documents.get("a1")).toEqual(before);
  });

  test("a removed open design that is changed again becomes a new document", async () => {
    const shelf = memoryShelf();
    const documents = windowOn(shelf);
    await documents.getState().create(titled("House"));
    await documents.getState().remove("a1");
    documents.getState().changed(titled("House again"));
    await documents.getState().flush();
    expect(storedTitles(shelf)).toEqual(["House again"]);
    expect(documents.getState().current).toBe("a2");
  });
});
