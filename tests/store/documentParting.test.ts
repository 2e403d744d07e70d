// @vitest-environment happy-dom
import { beforeEach, describe, expect, test } from "vitest";
import { type Design, EMPTY_DESIGN } from "../../src/design/design.ts";
import { browserParting } from "../../src/store/documentParting.ts";
import { createDocuments } from "../../src/store/documents.ts";
import { memoryShelf } from "./memoryShelf.ts";

const titled = (title: string): Design => ({ ...EMPTY_DESIGN, title });

/** A window on a shelf that never gets round to saving by itself. */
function openWindow(shelf: ReturnType<typeof memoryShelf>, name: string) {
  let count = 0;
  const newId = () => `${name}${++count}`;
  return createDocuments({ shelf, parting: browserParting(), now: () => 0, newId, delayMs: 1e9 }).getState;
}

const titles = (shelf: ReturnType<typeof memoryShelf>) =>
  [...shelf.documents.values()].map((each) => each.head.title).sort();

beforeEach(() => localStorage.clear());

describe("What a page that goes away had not saved yet", () => {
  test("is on the shelf and opened last when the next page starts", async () => {
    const shelf = memoryShelf();
    const leaving = openWindow(shelf, "a");
    await leaving().create(titled("Roof"));
    leaving().changed(titled("Roof and loft"));
    leaving().part();

    const next = openWindow(shelf, "b");
    await next().pickUp();
    const opened = await next().openLast();
    expect(opened?.ok && opened.design.title).toBe("Roof and loft");
    expect(titles(shelf)).toEqual(["Roof and loft"]);
    expect(localStorage.length).toBe(0);
  });

  test("becomes a document where it was none yet", async () => {
    const shelf = memoryShelf();
    const leaving = openWindow(shelf, "a");
    await leaving().begin(titled("Example"));
    leaving().changed(titled("Example, tried out"));
    leaving().part();
    await openWindow(shelf, "b")().pickUp();
    expect(titles(shelf)).toEqual(["Example, tried out"]);
  });

  test("is there once only when the saving under way came through after all", async () => {
    const shelf = memoryShelf();
    const leaving = openWindow(shelf, "a");
    await leaving().begin(titled("Example"));
    leaving().changed(titled("Example, tried out"));
    // The page writes its note, and saves; then it is gone before it could take the note back.
    leaving().part();
    const note = { ...localStorage };
    await leaving().flush();
    Object.assign(localStorage, note);
    await openWindow(shelf, "b")().pickUp();
    expect(titles(shelf)).toEqual(["Example, tried out"]);
  });

  test("goes beside what another window saved in between, not over it", async () => {
    const shelf = memoryShelf();
    const leaving = openWindow(shelf, "a");
    await leaving().create(titled("Roof"));
    const other = openWindow(shelf, "b");
    await other().openLast();
    leaving().changed(titled("Mine"));
    leaving().part();
    other().changed(titled("Theirs"));
    await other().flush();
    await openWindow(shelf, "c")().pickUp();
    expect(titles(shelf)).toEqual(["Mine (copy)", "Theirs"]);
  });

  test("leaves no note once it is saved, nor where there is nothing to save", async () => {
    const shelf = memoryShelf();
    const page = openWindow(shelf, "a");
    await page().create(titled("Roof"));
    page().part();
    expect(localStorage.length).toBe(0);
    page().changed(titled("Loft"));
    page().part();
    expect(localStorage.length).toBe(1);
    await page().flush();
    expect(localStorage.length).toBe(0);
  });

  test("of two windows that close together, both are picked up", async () => {
    const shelf = memoryShelf();
    for (const title of ["One", "Two"]) {
      const page = openWindow(shelf, title);
      await page().create(titled(title));
      page().changed(titled(`${title} more`));
      page().part();
    }
    await openWindow(shelf, "c")().pickUp();
    expect(titles(shelf)).toEqual(["One more", "Two more"]);
  });

  test("is passed over where it is no note of ours", async () => {
    localStorage.setItem("downlead.parting.x", "{nonsense");
    localStorage.setItem("downlead.parting.y", '{"id": 1}');
    const shelf = memoryShelf();
    await openWindow(shelf, "a")().pickUp();
    expect(shelf.documents.size).toBe(0);
  });
});
