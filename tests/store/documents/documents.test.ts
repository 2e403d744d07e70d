import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type Design, EMPTY_DESIGN } from "../../../src/design/design.ts";
import { writeDesign } from "../../../src/design/file.ts";
import { NoAnswerError } from "../../../src/store/documents/database.ts";
import { readDocument } from "../../../src/store/documents/documentReading.ts";
import { createDocuments } from "../../../src/store/documents/documents.ts";
import { type MemoryStorage, memoryStorage, storedTitles } from "./memoryStorage.ts";

/** A window of the browser on a storage that others may use too; its canvas shows at once what it turns to. */
function windowOn(storage: MemoryStorage, name = "a") {
  let count = 0;
  const newId = () => `${name}${++count}`;
  const documents = createDocuments({ storage, now: Date.now, newId, gapMs: 150 }).getState;
  const up = () => documents().cameUp(documents().current);
  return {
    now: documents,
    change: (design: Design) => documents().changed(design),
    begin: async (design: Design) => {
      await documents().begin(design);
      await up();
    },
    create: async (design: Design) => {
      await documents().create(design);
      await up();
    },
    open: async (id: string) => {
      const opened = await documents().open(id);
      if (opened.ok) await up();
      return opened;
    },
  };
}

const titled = (title: string): Design => ({ ...EMPTY_DESIGN, title });

const denied = new DOMException("", "SecurityError");
const full = new DOMException("", "QuotaExceededError");

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe("Saving", () => {
  test("an untouched example is not stored; its first change makes it a document", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    const example = titled("Example");
    await page.begin(example);
    page.change(example);
    await vi.advanceTimersByTimeAsync(1000);
    expect(storedTitles(storage)).toEqual([]);

    page.change(titled("Mine"));
    expect(page.now().state).toBe("unsaved");
    await vi.advanceTimersByTimeAsync(200);
    expect(storedTitles(storage)).toEqual(["Mine"]);
    expect(page.now().state).toBe("saved");
    expect(page.now().current).toBe("a1");
  });

  test("a change is on the disk within half a second, however fast others follow", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("0"));
    const late: number[] = [];
    for (let n = 1; n <= 200; n += 1) {
      page.change(titled(`${n}`));
      await vi.advanceTimersByTimeAsync(20);
      // What was typed half a second (25 changes) ago lies there.
      if (Number(storedTitles(storage)[0]) < n - 25) late.push(n);
    }
    expect(late).toEqual([]);
    // Four seconds at one write in 150 ms.
    expect(storage.writes.length).toBeLessThanOrEqual(30);
  });

  test("flush saves at once, without waiting for the timer", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    page.change(titled("Roof"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["Roof"]);
  });

  test("says saved only once the storage has confirmed it", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    let confirm = () => {};
    storage.delay = new Promise<void>((resolve) => {
      confirm = resolve;
    });
    page.change(titled("Slow"));
    await vi.advanceTimersByTimeAsync(5000);
    expect(page.now().state).toBe("saving");
    page.change(titled("Slower"));
    expect(page.now().state).toBe("unsaved");
    confirm();
    await vi.advanceTimersByTimeAsync(500);
    expect(page.now().state).toBe("saved");
    expect(storedTitles(storage)).toEqual(["Slower"]);
  });

  test("undoing back to the saved design while a change is being saved is saved too", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    const before = titled("Before");
    await page.create(before);
    let confirm = () => {};
    storage.delay = new Promise<void>((resolve) => {
      confirm = resolve;
    });
    page.change(titled("After"));
    const flushed = page.now().flush();
    await vi.advanceTimersByTimeAsync(0);
    page.change(before);
    confirm();
    await flushed;
    expect(storedTitles(storage)).toEqual(["After"]);
    await vi.advanceTimersByTimeAsync(500);
    expect(storedTitles(storage)).toEqual(["Before"]);
  });

  test.each([
    { name: "storage full", error: full, says: "full" },
    { name: "storage denied", error: denied, says: "does not let" },
    {
      name: "no storage at all",
      error: new ReferenceError("indexedDB is not defined"),
      says: "does not let",
    },
    { name: "storage silent", error: new NoAnswerError("…"), says: "does not answer" },
    { name: "storage broken", error: new DOMException("", "UnknownError"), says: "reports an error" },
  ])("$name: says so and offers the file; it is tried again by itself", async ({ error, says }) => {
    const storage = memoryStorage();
    storage.refusal = error;
    const page = windowOn(storage);
    page.change(titled("House"));
    await vi.advanceTimersByTimeAsync(1000);
    expect(page.now().state).toBe("unavailable");
    expect(page.now().reason).toContain(says);
    expect(page.now().reason).toMatch(/download the file/i);
    page.change(titled("House, later"));
    expect(page.now().state).toBe("unavailable");

    storage.refusal = null;
    await vi.advanceTimersByTimeAsync(6000);
    expect(page.now()).toMatchObject({ state: "saved", reason: null });
    expect(storedTitles(storage)).toEqual(["House, later"]);
  });

  test("a storage that could not be read at the start is found again without a change", async () => {
    const storage = memoryStorage();
    await windowOn(storage).create(titled("House"));
    storage.refusal = new NoAnswerError("…");
    const page = windowOn(storage, "b");
    expect(await page.now().openLast()).toBeNull();
    await page.begin(titled("Example"));
    expect(page.now().state).toBe("unavailable");
    expect(page.now().reason).toContain("does not answer");
    storage.refusal = null;
    await vi.advanceTimersByTimeAsync(6000);
    expect(page.now()).toMatchObject({ state: "saved", reason: null });
    expect(page.now().notice).toContain("works again");
    expect(page.now().list.map(({ title }) => title)).toEqual(["House"]);
  });

  test("what cannot be saved stays in the list of this window, and opens from there again as unsaved", async () => {
    const storage = memoryStorage();
    storage.refusal = denied;
    const page = windowOn(storage);
    page.change(titled("Mine"));
    await page.begin(titled("Example"));
    page.change(titled("Mine too"));
    await page.now().flush();
    const rows = page.now().list.map(({ id, title, onlyHere }) => ({ id, title, onlyHere }));
    expect(rows).toEqual([
      { id: "a2", title: "Mine too", onlyHere: true },
      { id: "a1", title: "Mine", onlyHere: true },
    ]);
    expect(await page.open("a1")).toMatchObject({ ok: true, design: titled("Mine") });
    expect(page.now().state).not.toBe("saved");
  });

  test("once the storage takes things again, it takes all that was kept, each once", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("Old"));
    storage.refusal = full;
    for (const title of ["Old, a", "Old, b"]) {
      page.change(titled(title));
      await page.now().flush();
    }
    await page.begin(titled("Example"));
    page.change(titled("New"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["Old"]);

    storage.refusal = null;
    page.change(titled("New, changed"));
    await page.now().flush();
    expect(storedTitles(storage).sort()).toEqual(["New, changed", "Old, b"]);
    expect(page.now().list.some((head) => head.onlyHere)).toBe(false);
    expect(page.now().notice).toBeNull();
  });

  test("a kept design that is opened again and changed is saved as the same document", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("Old"));
    storage.refusal = full;
    page.change(titled("Old, changed"));
    await page.begin(titled("Example"));
    await page.open("a1");
    storage.refusal = null;
    page.change(titled("Old, changed again"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["Old, changed again"]);
    expect(page.now().notice).toBeNull();
  });

  test("a kept design can be removed and restored", async () => {
    const storage = memoryStorage();
    storage.refusal = denied;
    const page = windowOn(storage);
    page.change(titled("Mine"));
    await page.now().flush();
    await page.begin(titled("Example"));
    const removed = await page.now().remove("a1");
    expect(page.now().list).toEqual([]);

    storage.refusal = null;
    if (!removed) throw new Error("nothing was removed");
    expect(await page.now().restore(removed)).toBeNull();
    expect(storedTitles(storage)).toEqual(["Mine"]);
    expect(page.now().list.some((head) => head.onlyHere)).toBe(false);
  });

  test("the open design, deleted and restored, goes on as the same document", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    page.change(titled("House"));
    await page.now().flush();
    const removed = await page.now().remove("a1");
    expect(page.now().current).toBeNull();
    if (!removed) throw new Error("nothing was removed");
    expect(await page.now().restore(removed)).toBeNull();
    expect(page.now().current).toBe("a1");
    page.change(titled("House, changed"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["House, changed"]);
  });

  test("the open design, deleted, changed and restored, is one document with the change in it", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    page.change(titled("House"));
    await page.now().flush();
    const removed = await page.now().remove("a1");
    page.change(titled("House, changed"));
    await page.now().flush();
    if (!removed) throw new Error("nothing was removed");
    expect(await page.now().restore(removed)).toBeNull();
    expect(storedTitles(storage)).toEqual(["House, changed"]);
    expect(page.now()).toMatchObject({ current: "a1", state: "saved" });
    page.change(titled("House, changed again"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["House, changed again"]);
  });

  test("what was opened after a deletion is not taken for what was deleted", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    page.change(titled("House"));
    await page.now().flush();
    const removed = await page.now().remove("a1");
    await page.begin(titled("Example"));
    if (!removed) throw new Error("nothing was removed");
    expect(await page.now().restore(removed)).toBeNull();
    page.change(titled("Example, changed"));
    await page.now().flush();
    expect(storedTitles(storage).sort()).toEqual(["Example, changed", "House"]);
  });

  test("a storage that was cleared in use gets the whole design again", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("House"));
    page.change(titled("House, a"));
    await page.now().flush();
    storage.documents.clear();
    page.change(titled("House, b"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["House, b"]);
    expect(page.now()).toMatchObject({ state: "saved", current: "a1" });
    expect(page.now().notice).toContain("no longer in the browser");
  });

  test("a write that arrived although nobody heard so is not taken for another window's", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("House"));
    const { write } = storage;
    Object.assign(storage, {
      write: async (...all: Parameters<typeof write>) => {
        await write(...all);
        throw new NoAnswerError("…");
      },
    });
    page.change(titled("House, a"));
    await page.now().flush();
    expect(page.now().state).toBe("unavailable");
    Object.assign(storage, { write });
    page.change(titled("House, b"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["House, b"]);
    expect(page.now()).toMatchObject({ state: "saved", notice: null });
  });
});

describe("Opening", () => {
  test("a document comes back as it was saved, and counts as opened last in another window", async () => {
    const storage = memoryStorage();
    await windowOn(storage).create(titled("House"));
    const later = windowOn(storage, "b");
    expect(await later.now().openLast()).toMatchObject({ ok: true, design: titled("House") });
    expect(later.now().current).toBe("a1");
  });

  test("the first start has no last document", async () => {
    expect(await windowOn(memoryStorage()).now().openLast()).toBeNull();
  });

  test("a design that has not come up does not count as opened last, and what is changed meanwhile is the one before", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("Heavy"));
    await page.create(titled("Light"));
    await page.now().open("a1");
    page.change(titled("Light, changed"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["Heavy", "Light, changed"]);
    expect(await storage.lastOpened()).toBe("a2");
    page.now().stay();
    expect(page.now().current).toBe("a2");
    page.change(titled("Light, more"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["Heavy", "Light, more"]);
  });

  test("of two designs turned to in a row, what is changed meanwhile is still the one on the canvas", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    for (const title of ["One", "Two", "Shown"]) await page.create(titled(title));
    await page.now().open("a1");
    await page.now().open("a2");
    page.change(titled("Shown, changed"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["One", "Two", "Shown, changed"]);
    await page.now().cameUp("a2");
    page.change(titled("Two, changed"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["One", "Two, changed", "Shown, changed"]);
  });

  test("a design seen on the canvas has come up, whether anybody said so or not", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("One"));
    await page.create(titled("Two"));
    const opened = await page.now().open("a1");
    if (!opened.ok) throw new Error(opened.problem);
    page.change(opened.design);
    page.change(titled("One, changed"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["One, changed", "Two"]);
  });

  test("opening another document saves the changes of the one before", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("One"));
    await page.create(titled("Two"));
    page.change(titled("Two, changed"));
    await page.open("a1");
    expect(storedTitles(storage)).toEqual(["One", "Two, changed"]);
    expect(page.now().current).toBe("a1");
  });

  test("what was just opened is not saved again", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("One"));
    const opened = await page.open("a1");
    if (!opened.ok) throw new Error(opened.problem);
    page.change(opened.design);
    await vi.advanceTimersByTimeAsync(1000);
    expect(storage.writes.length).toBe(1);
  });

  test("a document that cannot be read is reported, kept, and its text handed out", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("Good"));
    const head = { id: "bad", title: "Broken", changed: 0, parts: 3, revision: 4, at: 0 };
    const text = '{"format": "downlead", "ver';
    storage.documents.set("bad", { head, texts: [{ at: 0, text }], steps: [], revisions: [] });
    const opened = await page.open("bad");
    expect(opened).toMatchObject({ ok: false, text });
    expect(opened.ok ? "" : opened.problem).toMatch(/^“Broken” cannot be read: /);
    expect(page.now().current).toBe("a1");
    expect(await page.now().text("bad")).toBe(text);
    expect(await page.now().duplicate("bad")).toBeNull();
    expect(storage.documents.get("a2")?.texts[0]?.text).toBe(text);
  });
});

describe("A damaged document", () => {
  async function withJournal() {
    const storage = memoryStorage();
    const page = windowOn(storage);
    const states = ["0", "1", "2", "3"].map(titled);
    await page.create(states[0] ?? EMPTY_DESIGN);
    for (const at of [1, 2, 3]) {
      page.now().changed(states[at] ?? EMPTY_DESIGN, () => ({ states: states.slice(0, at + 1), at }));
      await vi.advanceTimersByTimeAsync(200);
    }
    const stored = storage.documents.get("a1");
    if (!stored) throw new Error("nothing stored");
    return { storage, stored };
  }

  test("opens at the last state that can be read, says so, and keeps what lies there", async () => {
    const { storage, stored } = await withJournal();
    const steps = stored.steps.map((step) => (step.at === 3 ? { ...step, patch: { title: 7 } } : step));
    storage.documents.set("a1", { ...stored, steps });
    const page = windowOn(storage, "b");
    const opened = await page.open("a1");
    expect(opened).toMatchObject({ ok: true, design: titled("2"), history: { at: 2 } });
    expect(opened.ok && opened.notes.join(" ")).toContain("The last change of “3” could not be read.");
    page.change(titled("2, on"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["2, on"]);
    const kept = await page.now().revisions("a1");
    expect(kept.map(({ name }) => name)).toContain("Damaged journal, kept as it is");
  });

  test("with one of its texts damaged loses nothing", async () => {
    const { storage, stored } = await withJournal();
    const text = { at: 3, text: writeDesign(titled("3")) };
    storage.documents.set("a1", { ...stored, texts: [{ at: 0, text: "{" }, text] });
    const opened = await windowOn(storage, "b").open("a1");
    expect(opened).toMatchObject({ ok: true, design: titled("3"), notes: [] });
    expect(opened.ok && opened.history.states).toEqual(["0", "1", "2", "3"].map(titled));
  });

  test("without any readable text opens as its latest revision", async () => {
    const { storage, stored } = await withJournal();
    const head = { id: "a1:r", document: "a1", when: 5, by: "itself", parts: 0 } as const;
    storage.kept.set(head.id, { head, text: writeDesign(titled("Earlier")) });
    storage.documents.set("a1", { ...stored, texts: [{ at: 0, text: "{" }] });
    const page = windowOn(storage, "b");
    const opened = await page.open("a1");
    expect(opened).toMatchObject({ ok: true, design: titled("Earlier") });
    expect(opened.ok && opened.notes.join(" ")).toContain("could not be read");
    page.change(titled("Earlier, on"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["Earlier, on"]);
    expect([...storage.kept.values()].map(({ text }) => text)).toContain("{");
  });
});

describe("The list", () => {
  test("shows title, part count and date, latest first", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    vi.setSystemTime(1_000);
    await page.create(titled("Old"));
    vi.setSystemTime(2_000);
    await page.create(titled("New"));
    const rows = page.now().list.map(({ id, title, changed, parts }) => ({ id, title, changed, parts }));
    expect(rows).toEqual([
      { id: "a2", title: "New", changed: 2_000, parts: 0 },
      { id: "a1", title: "Old", changed: 1_000, parts: 0 },
    ]);
  });

  test("rename changes the stored title, and that of the open design as one step", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("House"));
    expect(await page.now().rename("a1", "Cottage")).toBeNull();
    expect(storedTitles(storage)).toEqual(["Cottage"]);
    expect(page.now().incoming).toEqual({ states: [titled("House"), titled("Cottage")], at: 1 });
    page.change(titled("Cottage"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["Cottage"]);
  });

  test("rename of a document that is not open is a step of its journal", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("House"));
    await page.create(titled("Other"));
    expect(await page.now().rename("a1", "Cottage")).toBeNull();
    const opened = await page.open("a1");
    expect(opened.ok && opened.history.states).toEqual([titled("House"), titled("Cottage")]);
  });

  test("an empty title is refused with a sentence", async () => {
    const page = windowOn(memoryStorage());
    await page.create(titled("House"));
    expect(await page.now().rename("a1", "  ")).toBe("A design needs a title.");
  });

  test("duplicate stores a second one under another title", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("House"));
    expect(await page.now().duplicate("a1")).toBeNull();
    expect(storedTitles(storage)).toEqual(["House", "House (copy)"]);
  });

  test("what was removed comes back whole, its revisions too", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("House"));
    await page.now().takeRevision("First");
    const before = storage.documents.get("a1");
    const removed = await page.now().remove("a1");
    expect(storedTitles(storage)).toEqual([]);
    expect(await page.now().revisions("a1")).toEqual([]);
    expect(page.now().list).toEqual([]);
    if (!removed) throw new Error("nothing was removed");
    expect(await page.now().restore(removed)).toBeNull();
    expect(storage.documents.get("a1")).toEqual(before);
    expect((await page.now().revisions("a1")).map(({ name }) => name)).toEqual(["First"]);
  });

  test("a removed open design that is changed again becomes a new document", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("House"));
    await page.now().remove("a1");
    page.change(titled("House again"));
    await page.now().flush();
    expect(storedTitles(storage)).toEqual(["House again"]);
    expect(page.now().current).toBe("a2");
  });

  test("all of it goes out with its revisions, and comes in beside what is there", async () => {
    const storage = memoryStorage();
    const page = windowOn(storage);
    await page.create(titled("House"));
    await page.now().takeRevision("First");
    const documents = await page.now().everything();
    expect(documents).toMatchObject([
      {
        title: "House",
        parts: 0,
        text: writeDesign(titled("House")),
        revisions: [{ name: "First", by: "user" }],
      },
    ]);
    expect(await page.now().takeIn(documents)).toBeNull();
    expect(storedTitles(storage)).toEqual(["House", "House"]);
    expect(new Set(page.now().list.map(({ id }) => id)).size).toBe(2);
    expect([...storage.kept.values()].map(({ head }) => head.name)).toEqual(["First", "First"]);
  });
});

describe("The promise of the browser to keep things", () => {
  test("is asked for at the first own design, once", async () => {
    const storage = memoryStorage();
    const ask = vi.fn(async () => ({ persisted: "granted" as const, isAnswer: true }));
    let count = 0;
    const documents = createDocuments({
      storage,
      persistence: { state: async () => "unknown", ask },
      now: Date.now,
      newId: () => `a${++count}`,
      gapMs: 150,
    }).getState;
    await documents().begin(titled("Example"));
    await documents().flush();
    expect(ask).not.toHaveBeenCalled();
    await documents().create(titled("One"));
    await documents().create(titled("Two"));
    expect(ask).toHaveBeenCalledTimes(1);
    expect(documents()).toMatchObject({ persisted: "granted", hasAnswered: true });
  });
});

test("a journal that is read back is the history that was saved", async () => {
  const storage = memoryStorage();
  const page = windowOn(storage);
  const states = Array.from({ length: 90 }, (_, i) => titled(`${i}`));
  await page.create(states[0] ?? EMPTY_DESIGN);
  for (let at = 1; at < states.length; at += 1) {
    page.now().changed(states[at] ?? EMPTY_DESIGN, () => ({ states: states.slice(0, at + 1), at }));
    await vi.advanceTimersByTimeAsync(200);
  }
  // Back by twenty, as undo leads.
  page.now().changed(states[69] ?? EMPTY_DESIGN, () => ({ states, at: 69 }));
  await vi.advanceTimersByTimeAsync(200);
  const stored = storage.documents.get("a1");
  const found = stored && readDocument(stored);
  expect(found?.ok && found.history).toEqual({ states, at: 69 });
  // Steps are small and texts are few: one in thirty steps, two kept.
  expect(stored?.texts.length).toBe(2);
  expect(JSON.stringify(storage.writes.at(-2)).length).toBeLessThan(600);
});
