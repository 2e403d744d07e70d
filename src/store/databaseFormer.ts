/**
 * Former editions kept designs, prices and practice in databases of their own. They are copied over and never
 * touched: at the first start, and later on where a page of a former edition that was still open saved once more.
 */
import { openDB } from "idb";
import type { Database } from "./database.ts";

/** Revisions of the designs that were copied, by id. */
const COPIED = "copied-from-former";

type Former = { readonly id: string; readonly head: Record<string, unknown>; readonly text: string };

export async function copyFormer(database: Database): Promise<void> {
  const [shelf, prices, practice] = await Promise.all([
    readAll("downlead", "designs"),
    readAll("downlead-prices", "prices"),
    readAll("downlead-practice", "progress"),
  ]);
  const tx = database.transaction(["heads", "texts", "values"], "readwrite");
  const [heads, texts, values] = [tx.objectStore("heads"), tx.objectStore("texts"), tx.objectStore("values")];
  const copied = revisionsOf(await values.get(COPIED));
  const singles = [
    ["prices", prices.get("list")],
    ["practice", practice.get("all")],
    ["last-opened", shelf.get("last-opened")],
  ] as const;
  for (const [key, value] of singles) {
    if (value !== undefined && (await values.getKey(key)) === undefined) await values.put(value, key);
  }
  for (const { id, head, text } of designsOf(shelf)) {
    const revision = Number(head.revision) || 0;
    if (copied.get(id) === revision) continue;
    const standing: unknown = await heads.get(id);
    const isOurs = standing !== undefined && fieldOf(standing, "revision") !== copied.get(id);
    const place = isOurs ? `${id}-${revision}` : id;
    await heads.put({ ...head, id: place, revision, at: 0 }, place);
    await texts.put(text, [place, 0]);
    copied.set(id, revision);
  }
  await values.put(Object.fromEntries(copied), COPIED);
  await tx.done;
}

/** All keys and values of a store of a former edition; none where there is no such database. */
async function readAll(name: string, store: string): Promise<ReadonlyMap<string, unknown>> {
  // Quicker than opening, where the browser has it (Firefox does from 126 on).
  const known = await indexedDB.databases?.();
  if (known && !known.some((each) => each.name === name)) return new Map();
  let isNew = false;
  try {
    const database = await openDB(name, undefined, {
      upgrade: (_, __, ___, tx) => {
        // Opening alone would make it: taken back, nothing is left behind.
        isNew = true;
        tx.done.catch(() => undefined);
        tx.abort();
      },
    });
    try {
      if (!database.objectStoreNames.contains(store)) return new Map();
      const tx = database.transaction(store);
      const [keys, values] = await Promise.all([tx.store.getAllKeys(), tx.store.getAll()]);
      return new Map(keys.map((key, i) => [String(key), values[i]]));
    } finally {
      database.close();
    }
  } catch (error) {
    if (isNew) return new Map();
    throw error;
  }
}

/** Every design whose text is there, with its head or without. */
function designsOf(shelf: ReadonlyMap<string, unknown>): readonly Former[] {
  return [...shelf].flatMap(([key, text]) => {
    if (!key.startsWith("text:") || typeof text !== "string") return [];
    const id = key.slice("text:".length);
    const head = shelf.get(`head:${id}`);
    return [{ id, head: typeof head === "object" && head !== null ? { ...head } : {}, text }];
  });
}

function revisionsOf(value: unknown): Map<string, unknown> {
  return new Map(typeof value === "object" && value !== null ? Object.entries(value) : []);
}

function fieldOf(value: unknown, key: string): unknown {
  return typeof value === "object" && value !== null ? new Map(Object.entries(value)).get(key) : undefined;
}
