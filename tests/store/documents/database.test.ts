/** The connection to the database, against an independent implementation of IndexedDB (fake-indexeddb). */
import { IDBFactory } from "fake-indexeddb";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import "fake-indexeddb/auto";

type Module = typeof import("../../../src/store/documents/database.ts");

/** The module as a page that just starts has it. */
async function page(): Promise<Module> {
  vi.resetModules();
  return await import("../../../src/store/documents/database.ts");
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

describe("A single value", () => {
  test("is read and written in one transaction: two windows that count lose no count", async () => {
    const [one, two] = [await page(), await page()];
    const count = (module: Module) => module.updateValue("n", (before) => Number(before ?? 0) + 1);
    await Promise.all([count(one), count(two), count(one), count(two)]);
    expect(await one.readValue("n")).toBe(4);
  });

  test("stays as it was where the step throws", async () => {
    const { updateValue, readValue } = await page();
    await updateValue("n", () => 1);
    const failing = updateValue("n", () => {
      throw new RangeError("no");
    });
    await expect(failing).rejects.toThrow("no");
    expect(await readValue("n")).toBe(1);
  });
});

describe("The connection", () => {
  test("is opened again after somebody cleared the storage in use", async () => {
    const { updateValue, readValue } = await page();
    await updateValue("n", () => 1);
    await new Promise((resolve, reject) => {
      const request = indexedDB.deleteDatabase("downlead-2");
      request.onsuccess = resolve;
      request.onerror = reject;
      request.onblocked = () => reject(new Error("the page kept its connection"));
    });
    expect(await readValue("n")).toBeUndefined();
    await updateValue("n", () => 2);
    expect(await readValue("n")).toBe(2);
  });

  test("is closed for a leaving page, which undoes what is under way, and comes back with the page", async () => {
    const { updateValue, readValue, writeTransaction, closeDatabase, reopenDatabase } = await page();
    await updateValue("n", () => 1);
    const cut = writeTransaction(["values"], async (tx) => {
      await tx.objectStore("values").put(2, "n");
      closeDatabase();
      await tx.objectStore("values").get("n");
    });
    await expect(cut).rejects.toThrow();
    await expect(readValue("n")).rejects.toMatchObject({ name: "LeavingError" });
    reopenDatabase();
    expect(await readValue("n")).toBe(1);
  });

  test("that never answers is given up within three seconds, left alone for a while, and tried again", async () => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout", "performance"] });
    const { readValue } = await page();
    const open = vi.spyOn(indexedDB, "open").mockImplementation(() => new IDBOpenDBRequest());
    const first = expect(readValue("n")).rejects.toMatchObject({ name: "NoAnswerError" });
    await vi.advanceTimersByTimeAsync(3000);
    await first;
    const asked = open.mock.calls.length;
    await expect(readValue("n")).rejects.toMatchObject({ name: "NoAnswerError" });
    expect(open.mock.calls.length).toBe(asked);

    open.mockRestore();
    vi.useRealTimers();
    vi.spyOn(performance, "now").mockReturnValue(1e9);
    expect(await readValue("n")).toBeUndefined();
  });
});

describe("Databases of a former edition", () => {
  async function former(name: string, store: string, entries: Readonly<Record<string, unknown>>) {
    const database = await openDB(name, 1, {
      upgrade: (fresh) => void (fresh.objectStoreNames.contains(store) || fresh.createObjectStore(store)),
    });
    const tx = database.transaction(store, "readwrite");
    for (const [key, value] of Object.entries(entries)) await tx.store.put(value, key);
    await tx.done;
    database.close();
  }
  const head = (id: string, revision: number) => ({ id, title: id, changed: 5, parts: 1, revision });
  const everything = (module: Module) =>
    module.readTransaction(["heads", "texts"], async (tx) => ({
      heads: await tx.objectStore("heads").getAllKeys(),
      texts: await tx.objectStore("texts").getAll(),
    }));

  test("are copied once, and left as they are", async () => {
    await former("downlead", "designs", { "head:a": head("a", 3), "text:a": "A", "last-opened": "a" });
    await former("downlead-prices", "prices", { list: { currency: "kr" } });
    await former("downlead-practice", "progress", { all: "{}" });
    const module = await page();
    expect(await everything(module)).toEqual({ heads: ["a"], texts: ["A"] });
    expect(await module.readValue("last-opened")).toBe("a");
    expect(await module.readValue("prices")).toEqual({ currency: "kr" });
    expect(await module.readValue("practice")).toBe("{}");

    // Deleted here, it does not come back with the next start.
    await module.writeTransaction(["heads", "texts"], async (tx) => {
      await tx.objectStore("heads").clear();
      await tx.objectStore("texts").clear();
    });
    expect(await everything(await page())).toEqual({ heads: [], texts: [] });
    const old = await openDB("downlead");
    expect(await old.get("designs", "text:a")).toBe("A");
    old.close();
  });

  test("that a page of that edition still writes to are followed, beside what was changed here", async () => {
    await former("downlead", "designs", {
      "head:a": head("a", 3),
      "text:a": "A",
      "head:b": head("b", 1),
      "text:b": "B",
    });
    const module = await page();
    await module.writeTransaction(["heads"], (tx) => tx.objectStore("heads").put(head("b", 2), "b"));
    await former("downlead", "designs", {
      "head:a": head("a", 4),
      "text:a": "A2",
      "head:b": head("b", 2),
      "text:b": "B2",
    });
    expect(await everything(await page())).toEqual({
      heads: ["a", "b", "b-2"],
      texts: ["A2", "B", "B2"],
    });
  });

  test("that were never there are not made", async () => {
    await (await page()).readValue("n");
    expect((await indexedDB.databases()).map(({ name }) => name)).toEqual(["downlead-2"]);
  });
});
