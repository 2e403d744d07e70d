/** The storage over IndexedDB (fake-indexeddb stands in for the browser's), held to the same promises as the one in memory. */
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, describe, expect, test, vi } from "vitest";
import "fake-indexeddb/auto";
import { EMPTY_DESIGN } from "../../../src/design/design.ts";
import { writeDesign } from "../../../src/design/file.ts";
import type {
  DocumentChange,
  DocumentStorage,
  StoredDocument,
} from "../../../src/store/documents/documentStorage.ts";
import { memoryStorage } from "./memoryStorage.ts";

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

async function freshBrowser(): Promise<
  typeof import("../../../src/store/documents/documentStorageBrowser.ts")
> {
  globalThis.indexedDB = new IDBFactory();
  vi.resetModules();
  return await import("../../../src/store/documents/documentStorageBrowser.ts");
}

describe.each([
  { name: "in memory", make: async (): Promise<DocumentStorage> => memoryStorage() },
  {
    name: "of the browser",
    make: async (): Promise<DocumentStorage> => (await freshBrowser()).browserDocumentStorage(),
  },
])("The storage $name", ({ make }) => {
  let storage: DocumentStorage;
  beforeEach(async () => {
    storage = await make();
  });

  test("replaces the steps from one place on, forgets those below another, and keeps the texts that are named", async () => {
    const first = change("a", 1, {
      text: { at: 0, text: text("0") },
      steps: [1, 2, 3].map((at) => ({ at, patch: patch(`${at - 1}`, `${at}`) })),
    });
    expect(await storage.write(first, null)).toEqual({ ok: true });
    const second = change("a", 2, {
      dropFrom: 3,
      dropBelow: 2,
      steps: [{ at: 3, patch: patch("2", "x") }],
      text: { at: 3, text: text("x") },
      keepTexts: [0],
    });
    expect(await storage.write(second, 1)).toEqual({ ok: true });
    const stored = await storage.read("a");
    expect(stored?.head.revision).toBe(2);
    expect(stored?.steps).toEqual([
      { at: 2, patch: patch("1", "2") },
      { at: 3, patch: patch("2", "x") },
    ]);
    expect(stored?.texts.map(({ at }) => at)).toEqual([0, 3]);
    expect(await storage.write(change("a", 3, { dropFrom: 4, dropBelow: 2, keepTexts: [3] }), 2)).toEqual({
      ok: true,
    });
    expect((await storage.read("a"))?.texts).toEqual([{ at: 3, text: text("x") }]);
  });

  test("writes nothing where another revision stands, and says which", async () => {
    await storage.write(change("a", 1, { text: { at: 0, text: text("A") } }), null);
    const refused = await storage.write(change("a", 9, { text: { at: 0, text: text("B") } }), 8);
    expect(refused).toMatchObject({ ok: false, standing: { revision: 1 } });
    expect(await storage.write(change("b", 1), 4)).toEqual({ ok: false, standing: null });
    expect((await storage.read("a"))?.texts).toEqual([{ at: 0, text: text("A") }]);
    expect(await storage.read("b")).toBeUndefined();
  });

  test("takes a document off with its revisions, leaves its neighbours, and puts it back whole", async () => {
    for (const id of ["a", "a1", "b"]) {
      await storage.write(
        change(id, 1, { text: { at: 0, text: text(id) }, revisions: [revision(id, "old")] }),
        null,
      );
    }
    const taken = await storage.take("a");
    expect(taken?.revisions).toEqual([revision("a", "old")]);
    expect((await storage.heads()).map(({ id }) => id).sort()).toEqual(["a1", "b"]);
    expect(await storage.revisions("a")).toEqual([]);
    expect((await storage.revisions("a1")).length).toBe(1);
    if (!taken) throw new Error("nothing was taken");
    expect(await storage.add(taken)).toBe(true);
    expect(await storage.add(taken)).toBe(false);
    expect((await storage.read("a"))?.texts).toEqual([{ at: 0, text: text("a") }]);
    expect(await storage.revision("a:old")).toEqual(revision("a", "old"));
    await storage.dropRevisions(["a:old"]);
    expect(await storage.revision("a:old")).toBeUndefined();
  });

  test("remembers what was opened last", async () => {
    expect(await storage.lastOpened()).toBeNull();
    await storage.setLastOpened("a");
    expect(await storage.lastOpened()).toBe("a");
  });
});

test("A write that the storage refuses half-way leaves nothing behind", async () => {
  const storage = (await freshBrowser()).browserDocumentStorage();
  await storage.write(change("a", 1, { text: { at: 0, text: text("A") } }), null);
  const put = vi.spyOn(IDBObjectStore.prototype, "put");
  put.mockImplementation(() => {
    throw new DOMException("full", "QuotaExceededError");
  });
  const refused = storage.write(change("a", 2, { dropFrom: 0, text: { at: 1, text: text("B") } }), 1);
  await expect(refused).rejects.toMatchObject({ name: "QuotaExceededError" });
  put.mockRestore();
  expect((await storage.read("a"))?.texts).toEqual([{ at: 0, text: text("A") }]);
  expect((await storage.heads()).map((each) => each.revision)).toEqual([1]);
});

describe("Where the index is damaged", () => {
  async function damaged() {
    const { browserDocumentStorage } = await freshBrowser();
    const { writeTransaction } = await import("../../../src/store/documents/database.ts");
    const storage = browserDocumentStorage();
    const document: StoredDocument = {
      head: head("a", 7),
      texts: [{ at: 0, text: text("Roof") }],
      steps: [{ at: 1, patch: patch("Roof", "Roof and loft") }],
      revisions: [],
    };
    await storage.add(document);
    await storage.add({ ...document, head: head("b", 2), texts: [{ at: 0, text: "{nonsense" }], steps: [] });
    await writeTransaction(["heads"], async (tx) => {
      await tx.objectStore("heads").put({ id: "a", title: 5 }, "a");
      await tx.objectStore("heads").delete("b");
    });
    return storage;
  }

  test("every text still has its row, readable or not, and opens", async () => {
    const storage = await damaged();
    const heads = await storage.heads();
    expect(heads.map(({ id, title }) => [id, title])).toEqual([
      ["a", "Roof and loft"],
      ["b", "Recovered design"],
    ]);
    expect((await storage.read("a"))?.texts).toEqual([{ at: 0, text: text("Roof") }]);
  });

  test("a save puts the head right again", async () => {
    const storage = await damaged();
    const standing = (await storage.read("a"))?.head.revision ?? null;
    expect(await storage.write(change("a", 1, { dropFrom: 2, keepTexts: [0] }), standing)).toEqual({
      ok: true,
    });
    expect((await storage.heads()).find(({ id }) => id === "a")?.title).toBe("a");
  });
});
