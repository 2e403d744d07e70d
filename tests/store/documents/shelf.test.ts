/** The shelf over IndexedDB (fake-indexeddb stands in for the browser's), held to the same promises as the one in memory. */
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, describe, expect, test, vi } from "vitest";
import "fake-indexeddb/auto";
import { EMPTY_DESIGN } from "../../../src/design/design.ts";
import { writeDesign } from "../../../src/design/file.ts";
import type { DocumentChange, Shelf, StoredDocument } from "../../../src/store/documents/shelf.ts";
import { memoryShelf } from "./memoryShelf.ts";

const text = (title: string) => writeDesign({ ...EMPTY_DESIGN, title });
const head = (id: string, revision: number) => ({ id, title: id, changed: 5, parts: 0, revision, at: 0 });
const patch = (before: string, after: string) => ({ title: [before, after] });

const change = (id: string, revision: number, more: Partial<DocumentChange> = {}): DocumentChange => ({
  head: head(id, revision),
  dropFrom: 0,
  dropBelow: 1,
  steps: [],
  text: null,
  keepTexts: [],
  revisions: [],
  ...more,
});
const revision = (document: string, name: string) => ({
  head: { id: `${document}:${name}`, document, when: 1, by: "user" as const, parts: 0, name },
  text: text(name),
});

async function freshBrowser(): Promise<typeof import("../../../src/store/documents/shelfBrowser.ts")> {
  globalThis.indexedDB = new IDBFactory();
  vi.resetModules();
  return await import("../../../src/store/documents/shelfBrowser.ts");
}

describe.each([
  { name: "in memory", make: async (): Promise<Shelf> => memoryShelf() },
  { name: "of the browser", make: async (): Promise<Shelf> => (await freshBrowser()).browserShelf() },
])("The shelf $name", ({ make }) => {
  let shelf: Shelf;
  beforeEach(async () => {
    shelf = await make();
  });

  test("replaces the steps from one place on, forgets those below another, and keeps the texts that are named", async () => {
    const first = change("a", 1, {
      text: { at: 0, text: text("0") },
      steps: [1, 2, 3].map((at) => ({ at, patch: patch(`${at - 1}`, `${at}`) })),
    });
    expect(await shelf.write(first, null)).toEqual({ ok: true });
    const second = change("a", 2, {
      dropFrom: 3,
      dropBelow: 2,
      steps: [{ at: 3, patch: patch("2", "x") }],
      text: { at: 3, text: text("x") },
      keepTexts: [0],
    });
    expect(await shelf.write(second, 1)).toEqual({ ok: true });
    const stored = await shelf.read("a");
    expect(stored?.head.revision).toBe(2);
    expect(stored?.steps).toEqual([
      { at: 2, patch: patch("1", "2") },
      { at: 3, patch: patch("2", "x") },
    ]);
    expect(stored?.texts.map(({ at }) => at)).toEqual([0, 3]);
    expect(await shelf.write(change("a", 3, { dropFrom: 4, dropBelow: 2, keepTexts: [3] }), 2)).toEqual({
      ok: true,
    });
    expect((await shelf.read("a"))?.texts).toEqual([{ at: 3, text: text("x") }]);
  });

  test("writes nothing where another revision stands, and says which", async () => {
    await shelf.write(change("a", 1, { text: { at: 0, text: text("A") } }), null);
    const refused = await shelf.write(change("a", 9, { text: { at: 0, text: text("B") } }), 8);
    expect(refused).toMatchObject({ ok: false, standing: { revision: 1 } });
    expect(await shelf.write(change("b", 1), 4)).toEqual({ ok: false, standing: null });
    expect((await shelf.read("a"))?.texts).toEqual([{ at: 0, text: text("A") }]);
    expect(await shelf.read("b")).toBeUndefined();
  });

  test("takes a document off with its revisions, leaves its neighbours, and puts it back whole", async () => {
    for (const id of ["a", "a1", "b"]) {
      await shelf.write(
        change(id, 1, { text: { at: 0, text: text(id) }, revisions: [revision(id, "old")] }),
        null,
      );
    }
    const taken = await shelf.take("a");
    expect(taken?.revisions).toEqual([revision("a", "old")]);
    expect((await shelf.heads()).map(({ id }) => id).sort()).toEqual(["a1", "b"]);
    expect(await shelf.revisions("a")).toEqual([]);
    expect((await shelf.revisions("a1")).length).toBe(1);
    if (!taken) throw new Error("nothing was taken");
    expect(await shelf.add(taken)).toBe(true);
    expect(await shelf.add(taken)).toBe(false);
    expect((await shelf.read("a"))?.texts).toEqual([{ at: 0, text: text("a") }]);
    expect(await shelf.revision("a:old")).toEqual(revision("a", "old"));
    await shelf.dropRevisions(["a:old"]);
    expect(await shelf.revision("a:old")).toBeUndefined();
  });

  test("remembers what was opened last", async () => {
    expect(await shelf.lastOpened()).toBeNull();
    await shelf.setLastOpened("a");
    expect(await shelf.lastOpened()).toBe("a");
  });
});

test("A write that the storage refuses half-way leaves nothing behind", async () => {
  const shelf = (await freshBrowser()).browserShelf();
  await shelf.write(change("a", 1, { text: { at: 0, text: text("A") } }), null);
  const put = vi.spyOn(IDBObjectStore.prototype, "put");
  put.mockImplementation(() => {
    throw new DOMException("full", "QuotaExceededError");
  });
  const refused = shelf.write(change("a", 2, { dropFrom: 0, text: { at: 1, text: text("B") } }), 1);
  await expect(refused).rejects.toMatchObject({ name: "QuotaExceededError" });
  put.mockRestore();
  expect((await shelf.read("a"))?.texts).toEqual([{ at: 0, text: text("A") }]);
  expect((await shelf.heads()).map((each) => each.revision)).toEqual([1]);
});

describe("Where the index is damaged", () => {
  async function damaged() {
    const { browserShelf } = await freshBrowser();
    const { readwrite } = await import("../../../src/store/documents/database.ts");
    const shelf = browserShelf();
    const document: StoredDocument = {
      head: head("a", 7),
      texts: [{ at: 0, text: text("Roof") }],
      steps: [{ at: 1, patch: patch("Roof", "Roof and loft") }],
      revisions: [],
    };
    await shelf.add(document);
    await shelf.add({ ...document, head: head("b", 2), texts: [{ at: 0, text: "{nonsense" }], steps: [] });
    await readwrite(["heads"], async (tx) => {
      await tx.objectStore("heads").put({ id: "a", title: 5 }, "a");
      await tx.objectStore("heads").delete("b");
    });
    return shelf;
  }

  test("every text still has its row, readable or not, and opens", async () => {
    const shelf = await damaged();
    const heads = await shelf.heads();
    expect(heads.map(({ id, title }) => [id, title])).toEqual([
      ["a", "Roof and loft"],
      ["b", "Recovered design"],
    ]);
    expect((await shelf.read("a"))?.texts).toEqual([{ at: 0, text: text("Roof") }]);
  });

  test("a save puts the head right again", async () => {
    const shelf = await damaged();
    const standing = (await shelf.read("a"))?.head.revision ?? null;
    expect(await shelf.write(change("a", 1, { dropFrom: 2, keepTexts: [0] }), standing)).toEqual({
      ok: true,
    });
    expect((await shelf.heads()).find(({ id }) => id === "a")?.title).toBe("a");
  });
});
