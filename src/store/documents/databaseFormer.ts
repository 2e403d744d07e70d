/**
 * Former editions kept designs, prices and practice in databases of their own. They are copied over and never
 * touched: at the first start, and later on where a page of a former edition that was still open saved once more.
 */
import { openDB } from "idb";
import type { Database } from "./database.ts";

/** Revisions of the designs that were copied, by id. */
const COPIED = "copied-from-former";

export async function copyFormer(database: Database): Promise<void> {
  const copied = revisionsOf(await database.get("values", COPIED));
  const [heads, prices, practice] = await Promise.all([
    readFormer("downlead", "designs", (key) => !key.startsWith(TEXT)),
    readFormer("downlead-prices", "prices", (key) => key === "list"),
    readFormer("downlead-practice", "progress", (key) => key === "all"),
  ]);
  const revisionOf = (id: string) => Number(fieldOf(heads.get(`head:${id}`), "revision")) || 0;
  const isNew = (key: string) => key.startsWith(TEXT) && copied.get(idOf(key)) !== revisionOf(idOf(key));
  const texts = await readFormer("downlead", "designs", isNew);

  const tx = database.transaction(["heads", "texts", "values"], "readwrite");
  const values = tx.objectStore("values");
  const singles = [
    ["prices", prices.get("list")],
    ["practice", practice.get("all")],
    ["last-opened", heads.get("last-opened")],
  ] as const;
  for (const [key, value] of singles) {
    if (value !== undefined && (await values.getKey(key)) === undefined) await values.put(value, key);
  }
  for (const [key, text] of texts) {
    const id = idOf(key);
    const revision = revisionOf(id);
    const standing: unknown = await tx.objectStore("heads").get(id);
    // Changed here since it was copied: the newer one of the former edition stands beside it.
    const isChanged = standing !== undefined && fieldOf(standing, "revision") !== copied.get(id);
    const place = isChanged ? `${id}-${revision}` : id;
    const former = heads.get(`head:${id}`);
    const head = typeof former === "object" && former !== null ? former : {};
    await tx.objectStore("heads").put({ ...head, id: place, revision, at: 0 }, place);
    await tx.objectStore("texts").put(text, [place, 0]);
    copied.set(id, revision);
  }
  await values.put(Object.fromEntries(copied), COPIED);
  await tx.done;
}

const TEXT = "text:";
const idOf = (key: string): string => key.slice(TEXT.length);

/** What stands under some of the keys of a former edition; nothing where there is no such database. */
async function readFormer(
  name: string,
  store: string,
  isWanted: (key: string) => boolean,
): Promise<ReadonlyMap<string, unknown>> {
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
      const keys = (await tx.store.getAllKeys()).filter((key) => isWanted(String(key)));
      const values: unknown[] = await Promise.all(keys.map((key) => tx.store.get(key)));
      return new Map(keys.map((key, i) => [String(key), values[i]]));
    } finally {
      database.close();
    }
  } catch (error) {
    if (isNew) return new Map();
    throw error;
  }
}

function revisionsOf(value: unknown): Map<string, unknown> {
  return new Map(typeof value === "object" && value !== null ? Object.entries(value) : []);
}

function fieldOf(value: unknown, key: string): unknown {
  return typeof value === "object" && value !== null ? new Map(Object.entries(value)).get(key) : undefined;
}
