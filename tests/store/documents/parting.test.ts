// @vitest-environment happy-dom
import { beforeEach, describe, expect, test } from "vitest";
import { type Design, EMPTY_DESIGN } from "../../../src/design/design.ts";
import { writeDesign } from "../../../src/design/file.ts";
import { createDocuments } from "../../../src/store/documents/documents.ts";
import { browserParting } from "../../../src/store/documents/parting.ts";
import { memoryShelf, storedTitles } from "./memoryShelf.ts";

const titled = (title: string): Design => ({ ...EMPTY_DESIGN, title });

/** A window on a shelf that gets round to saving by itself only after a long while. */
function openWindow(shelf: ReturnType<typeof memoryShelf>, name: string) {
  let count = 0;
  const newId = () => `${name}${++count}`;
  const documents = createDocuments({
    shelf,
    parting: browserParting(),
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

const titles = (shelf: ReturnType<typeof memoryShelf>) => storedTitles(shelf).sort();

beforeEach(() => localStorage.clear());

describe("What a page that goes away had not saved yet", () => {
  test("is on the shelf and opened last when the next page starts, with its way back", async () => {
    const shelf = memoryShelf();
    const leaving = openWindow(shelf, "a");
    const [roof, loft] = [titled("Roof"), titled("Roof and loft")];
    await leaving.create(roof);
    leaving.now().changed(loft, () => ({ states: [roof, loft], at: 1 }));
    leaving.now().part();

    const next = openWindow(shelf, "b");
    await next.now().pickUp();
    const opened = await next.openLast();
    expect(opened).toMatchObject({ ok: true, design: loft, history: { states: [roof, loft], at: 1 } });
    expect(titles(shelf)).toEqual(["Roof and loft"]);
    expect(localStorage.length).toBe(0);
  });

  test("becomes a document where it was none yet", async () => {
    const shelf = memoryShelf();
    const leaving = openWindow(shelf, "a");
    await leaving.begin(titled("Example"));
    leaving.now().changed(titled("Example, tried out"));
    leaving.now().part();
    await openWindow(shelf, "b").now().pickUp();
    expect(titles(shelf)).toEqual(["Example, tried out"]);
  });

  test("stays noted until the storage has confirmed it", async () => {
    const shelf = memoryShelf();
    const leaving = openWindow(shelf, "a");
    await leaving.create(titled("Roof"));
    leaving.now().changed(titled("Loft"));
    leaving.now().part();
    shelf.refusal = new DOMException("", "UnknownError");
    await openWindow(shelf, "b").now().pickUp();
    expect(localStorage.length).toBe(1);
    shelf.refusal = null;
    await openWindow(shelf, "c").now().pickUp();
    expect(titles(shelf)).toEqual(["Loft"]);
    expect(localStorage.length).toBe(0);
  });

  test("is there once only when the saving under way came through after all", async () => {
    const shelf = memoryShelf();
    const leaving = openWindow(shelf, "a");
    await leaving.begin(titled("Example"));
    leaving.now().changed(titled("Example, tried out"));
    // The page writes its note, and saves; then it is gone before it could take the note back.
    leaving.now().part();
    const note = { ...localStorage };
    await leaving.now().flush();
    Object.assign(localStorage, note);
    await openWindow(shelf, "b").now().pickUp();
    expect(titles(shelf)).toEqual(["Example, tried out"]);
    expect(localStorage.length).toBe(0);
  });

  test("is put on top of a write under way that arrived unheard", async () => {
    const shelf = memoryShelf();
    const leaving = openWindow(shelf, "a");
    const states = ["0", "1", "2"].map(titled);
    const change = (at: number) =>
      leaving.now().changed(states[at] ?? EMPTY_DESIGN, () => ({ states: states.slice(0, at + 1), at }));
    await leaving.create(states[0] ?? EMPTY_DESIGN);
    change(1);
    let arrive = () => {};
    const before = shelf.delay;
    shelf.delay = new Promise<void>((resolve) => {
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
    shelf.delay = before;
    expect(titles(shelf)).toEqual(["1"]);
    Object.assign(localStorage, note);
    const next = openWindow(shelf, "b");
    await next.now().pickUp();
    expect(await next.openLast()).toMatchObject({ ok: true, history: { states, at: 2 } });
    expect(shelf.documents.size).toBe(1);
  });

  test("picked up by another window while its own page lives on, is not taken for another's change", async () => {
    const shelf = memoryShelf();
    const page = openWindow(shelf, "a");
    await page.create(titled("Roof"));
    page.now().changed(titled("Loft"));
    page.now().part();
    await openWindow(shelf, "b").now().pickUp();
    page.now().changed(titled("Loft and roof"));
    await page.now().flush();
    expect(titles(shelf)).toEqual(["Loft and roof"]);
    expect(page.now().notice).toBeNull();
  });

  test("goes beside what another window saved in between, not over it", async () => {
    const shelf = memoryShelf();
    const leaving = openWindow(shelf, "a");
    await leaving.create(titled("Roof"));
    const other = openWindow(shelf, "b");
    await other.openLast();
    leaving.now().changed(titled("Mine"));
    leaving.now().part();
    other.now().changed(titled("Theirs"));
    await other.now().flush();
    await openWindow(shelf, "c").now().pickUp();
    expect(titles(shelf)).toEqual(["Mine (copy)", "Theirs"]);
  });

  test("is stored anew where the storage was cleared", async () => {
    const shelf = memoryShelf();
    const leaving = openWindow(shelf, "a");
    await leaving.create(titled("Roof"));
    leaving.now().changed(titled("Loft"));
    leaving.now().part();
    shelf.documents.clear();
    await openWindow(shelf, "b").now().pickUp();
    expect(titles(shelf)).toEqual(["Loft"]);
  });

  test("leaves no note once it is saved, nor where there is nothing to save", async () => {
    const shelf = memoryShelf();
    const page = openWindow(shelf, "a");
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
    const shelf = memoryShelf();
    for (const title of ["One", "Two"]) {
      const page = openWindow(shelf, title);
      await page.create(titled(title));
      page.now().changed(titled(`${title} more`));
      page.now().part();
    }
    await openWindow(shelf, "c").now().pickUp();
    expect(titles(shelf)).toEqual(["One more", "Two more"]);
  });

  test("of a former edition, is a whole text: the next step of its document, or beside it", async () => {
    const shelf = memoryShelf();
    await openWindow(shelf, "a").create(titled("Roof"));
    const note = (title: string, revision: number) =>
      JSON.stringify({ id: "a1", revision, text: writeDesign(titled(title)) });
    localStorage.setItem("downlead.parting.x", note("Loft", 1));
    await openWindow(shelf, "b").now().pickUp();
    expect(titles(shelf)).toEqual(["Loft"]);
    localStorage.setItem("downlead.parting.x", note("Cellar", 1));
    await openWindow(shelf, "c").now().pickUp();
    expect(titles(shelf)).toEqual(["Cellar (copy)", "Loft"]);
    expect(localStorage.length).toBe(0);
  });

  test("is passed over where it is no note of ours", async () => {
    localStorage.setItem("downlead.parting.x", "{nonsense");
    localStorage.setItem("downlead.parting.y", '{"id": 1}');
    const shelf = memoryShelf();
    await openWindow(shelf, "a").now().pickUp();
    expect(shelf.documents.size).toBe(0);
    expect(localStorage.length).toBe(0);
  });

  test("includes which design came up last, also where the page went before the storage heard of it", async () => {
    const shelf = memoryShelf();
    const page = openWindow(shelf, "a");
    await page.create(titled("First"));
    await page.create(titled("Second"));
    // The page goes while the storage still knows the first one.
    void openWindow({ ...shelf, setLastOpened: () => new Promise<never>(() => {}) }, "b")
      .now()
      .cameUp("a1");

    const next = openWindow(shelf, "c");
    await next.now().pickUp();
    const opened = await next.openLast();
    expect(opened?.ok && opened.design.title).toBe("First");
    expect(localStorage.length).toBe(0);
  });

  test("and a design that was begun while the storage was silent is the one that comes up next", async () => {
    const shelf = memoryShelf();
    let isSilent = true;
    const setLastOpened = (id: string | null) =>
      isSilent ? Promise.reject(new Error("silent")) : shelf.setLastOpened(id);
    const page = openWindow({ ...shelf, setLastOpened }, "a");
    await page.begin(titled("Example"));
    isSilent = false;
    page.now().changed(titled("Mine"));
    await page.now().flush();

    const next = openWindow(shelf, "b");
    await next.now().pickUp();
    const opened = await next.openLast();
    expect(opened?.ok && opened.design.title).toBe("Mine");
  });
});
