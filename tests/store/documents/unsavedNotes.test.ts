// @vitest-environment happy-dom
import { beforeEach, describe, expect, test } from "vitest";
import { type Design, EMPTY_DESIGN } from "../../../src/design/design.ts";
import { writeDesign } from "../../../src/design/file.ts";
import { createDocuments } from "../../../src/store/documents/documents.ts";
import { browserUnsavedNotes } from "../../../src/store/documents/unsavedNotes.ts";
import { memoryStorage, storedTitles } from "./memoryStorage.ts";

const titled = (title: string): Design => ({ ...EMPTY_DESIGN, title });

/** A window on a storage that gets round to saving by itself only after a long while. */
function openWindow(storage: ReturnType<typeof memoryStorage>, name: string) {
  let count = 0;
  const newId = () => `${name}${++count}`;
  const documents = createDocuments({
    storage,
    unsavedNotes: browserUnsavedNotes(),
    now: () => 0,
    newId,
    gapMs: 1e9,
  }).getState;
  const up = () => documents().cameUp(documents().current);
  return {
    now: documents,
    create: (design: Design) => documents().create(design).then(up),
    begin: (design: Design) => documents().begin(design).then(up),
    openLast: async () => {
      const opened = await documents().openLast();
      await up();
      return opened;
    },
  };
}

const titles = (storage: ReturnType<typeof memoryStorage>) => storedTitles(storage).sort();

beforeEach(() => localStorage.clear());

describe("What a page that goes away had not saved yet", () => {
  test("is in the storage and opened last when the next page starts, with its way back", async () => {
    const storage = memoryStorage();
    const leaving = openWindow(storage, "a");
    const [roof, loft] = [titled("Roof"), titled("Roof and loft")];
    await leaving.create(roof);
    leaving.now().changed(loft, () => ({ states: [roof, loft], at: 1 }));
    leaving.now().part();

    const next = openWindow(storage, "b");
    await next.now().pickUp();
    const opened = await next.openLast();
    expect(opened).toMatchObject({ ok: true, design: loft, history: { states: [roof, loft], at: 1 } });
    expect(titles(storage)).toEqual(["Roof and loft"]);
    expect(localStorage.length).toBe(0);
  });

  test("becomes a document where it was none yet", async () => {
    const storage = memoryStorage();
    const leaving = openWindow(storage, "a");
    await leaving.begin(titled("Example"));
    leaving.now().changed(titled("Example, tried out"));
    leaving.now().part();
    await openWindow(storage, "b").now().pickUp();
    expect(titles(storage)).toEqual(["Example, tried out"]);
  });

  test("stays noted until the storage has confirmed it", async () => {
    const storage = memoryStorage();
    const leaving = openWindow(storage, "a");
    await leaving.create(titled("Roof"));
    leaving.now().changed(titled("Loft"));
    leaving.now().part();
    storage.refusal = new DOMException("", "UnknownError");
    await openWindow(storage, "b").now().pickUp();
    expect(localStorage.length).toBe(1);
    storage.refusal = null;
    await openWindow(storage, "c").now().pickUp();
    expect(titles(storage)).toEqual(["Loft"]);
    expect(localStorage.length).toBe(0);
  });

  test("is there once only when the saving under way came through after all", async () => {
    const storage = memoryStorage();
    const leaving = openWindow(storage, "a");
    await leaving.begin(titled("Example"));
    leaving.now().changed(titled("Example, tried out"));
    // The page writes its note, and saves; then it is gone before it could take the note back.
    leaving.now().part();
    const note = { ...localStorage };
    await leaving.now().flush();
    Object.assign(localStorage, note);
    await openWindow(storage, "b").now().pickUp();
    expect(titles(storage)).toEqual(["Example, tried out"]);
    expect(localStorage.length).toBe(0);
  });

  test("is put on top of a write under way that arrived unheard", async () => {
    const storage = memoryStorage();
    const leaving = openWindow(storage, "a");
    const states = ["0", "1", "2"].map(titled);
    const change = (at: number) =>
      leaving.now().changed(states[at] ?? EMPTY_DESIGN, () => ({ states: states.slice(0, at + 1), at }));
    await leaving.create(states[0] ?? EMPTY_DESIGN);
    change(1);
    let arrive = () => {};
    const before = storage.delay;
    storage.delay = new Promise<void>((resolve) => {
      arrive = resolve;
    });
    const saving = leaving.now().flush();
    await Promise.resolve();
    await Promise.resolve();
    change(2);
    leaving.now().part();
    const note = { ...localStorage };
    arrive();
    await saving;
    storage.delay = before;
    expect(titles(storage)).toEqual(["1"]);
    Object.assign(localStorage, note);
    const next = openWindow(storage, "b");
    await next.now().pickUp();
    expect(await next.openLast()).toMatchObject({ ok: true, history: { states, at: 2 } });
    expect(storage.documents.size).toBe(1);
  });

  test("picked up by another window while its own page lives on, is not taken for another's change", async () => {
    const storage = memoryStorage();
    const page = openWindow(storage, "a");
    await page.create(titled("Roof"));
    page.now().changed(titled("Loft"));
    page.now().part();
    await openWindow(storage, "b").now().pickUp();
    page.now().changed(titled("Loft and roof"));
    await page.now().flush();
    expect(titles(storage)).toEqual(["Loft and roof"]);
    expect(page.now().notice).toBeNull();
  });

  test("goes beside what another window saved in between, not over it", async () => {
    const storage = memoryStorage();
    const leaving = openWindow(storage, "a");
    await leaving.create(titled("Roof"));
    const other = openWindow(storage, "b");
    await other.openLast();
    leaving.now().changed(titled("Mine"));
    leaving.now().part();
    other.now().changed(titled("Theirs"));
    await other.now().flush();
    await openWindow(storage, "c").now().pickUp();
    expect(titles(storage)).toEqual(["Mine (copy)", "Theirs"]);
  });

  test("is stored anew where the storage was cleared", async () => {
    const storage = memoryStorage();
    const leaving = openWindow(storage, "a");
    await leaving.create(titled("Roof"));
    leaving.now().changed(titled("Loft"));
    leaving.now().part();
    storage.documents.clear();
    await openWindow(storage, "b").now().pickUp();
    expect(titles(storage)).toEqual(["Loft"]);
  });

  test("leaves no note once it is saved, nor where there is nothing to save", async () => {
    const storage = memoryStorage();
    const page = openWindow(storage, "a");
    await page.create(titled("Roof"));
    page.now().part();
    expect(localStorage.length).toBe(0);
    page.now().changed(titled("Loft"));
    page.now().part();
    expect(localStorage.length).toBe(1);
    await page.now().flush();
    expect(localStorage.length).toBe(0);
  });

  test("of two windows that close together, both are picked up", async () => {
    const storage = memoryStorage();
    for (const title of ["One", "Two"]) {
      const page = openWindow(storage, title);
      await page.create(titled(title));
      page.now().changed(titled(`${title} more`));
      page.now().part();
    }
    await openWindow(storage, "c").now().pickUp();
    expect(titles(storage)).toEqual(["One more", "Two more"]);
  });

  test("of a former edition, is a whole text: the next step of its document, or beside it", async () => {
    const storage = memoryStorage();
    await openWindow(storage, "a").create(titled("Roof"));
    const note = (title: string, revision: number) =>
      JSON.stringify({ id: "a1", revision, text: writeDesign(titled(title)) });
    localStorage.setItem("downlead.parting.x", note("Loft", 1));
    await openWindow(storage, "b").now().pickUp();
    expect(titles(storage)).toEqual(["Loft"]);
    localStorage.setItem("downlead.parting.x", note("Cellar", 1));
    await openWindow(storage, "c").now().pickUp();
    expect(titles(storage)).toEqual(["Cellar (copy)", "Loft"]);
    expect(localStorage.length).toBe(0);
  });

  test("is passed over where it is no note of ours", async () => {
    localStorage.setItem("downlead.parting.x", "{nonsense");
    localStorage.setItem("downlead.parting.y", '{"id": 1}');
    const storage = memoryStorage();
    await openWindow(storage, "a").now().pickUp();
    expect(storage.documents.size).toBe(0);
    expect(localStorage.length).toBe(0);
  });

  test("includes which design came up last, also where the page went before the storage heard of it", async () => {
    const storage = memoryStorage();
    const page = openWindow(storage, "a");
    await page.create(titled("First"));
    await page.create(titled("Second"));
    // The page goes while the storage still knows the first one.
    void openWindow({ ...storage, setLastOpened: () => new Promise<never>(() => {}) }, "b")
      .now()
      .cameUp("a1");

    const next = openWindow(storage, "c");
    await next.now().pickUp();
    const opened = await next.openLast();
    expect(opened?.ok && opened.design.title).toBe("First");
    expect(localStorage.length).toBe(0);
  });

  test("and a design that was begun while the storage was silent is the one that comes up next", async () => {
    const storage = memoryStorage();
    let isSilent = true;
    const setLastOpened = (id: string | null) =>
      isSilent ? Promise.reject(new Error("silent")) : storage.setLastOpened(id);
    const page = openWindow({ ...storage, setLastOpened }, "a");
    await page.begin(titled("Example"));
    isSilent = false;
    page.now().changed(titled("Mine"));
    await page.now().flush();

    const next = openWindow(storage, "b");
    await next.now().pickUp();
    const opened = await next.openLast();
    expect(opened?.ok && opened.design.title).toBe("Mine");
  });
});
