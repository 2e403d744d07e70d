/**
 * The one connection to the database in which this browser keeps what the page knows: opened when first asked for,
 * opened again when it was lost, closed when the page goes away. Every call may reject: storage can be denied, full
 * or damaged, and it can leave a question unanswered, which after a while counts as a refusal too.
 */
import { type IDBPDatabase, type IDBPTransaction, openDB } from "idb";
import { copyFormer } from "./databaseFormer.ts";

/** What stands in the storage may stem from any edition, or from a hand in the developer tools: it is checked on reading. */
export type Schema = {
  /** Of each document, by its id: what the list shows, and where in the journal it stands. */
  readonly heads: { readonly key: string; readonly value: unknown };
  /** Whole texts of a document, by its id and the place in the journal where it read so. */
  readonly texts: { readonly key: [document: string, at: number]; readonly value: unknown };
  /** The journal: how a document got from the place before to this one. */
  readonly steps: { readonly key: [document: string, at: number]; readonly value: unknown };
  readonly revisions: { readonly key: string; readonly value: unknown };
  readonly revisionTexts: { readonly key: string; readonly value: unknown };
  /** Single values: the id opened last, prices, practice, settings of the page. */
  readonly values: { readonly key: string; readonly value: unknown };
};
export type StoreName = keyof Schema;
export type Database = IDBPDatabase<Schema>;
export type Transaction<M extends "readonly" | "readwrite" = "readwrite"> = IDBPTransaction<
  Schema,
  StoreName[],
  M
>;

/** A name of its own: a page of a former edition that is still open cannot stand in the way of an upgrade. */
const NAME = "downlead-2";
const VERSION = 1;
const STORES: readonly StoreName[] = ["heads", "texts", "steps", "revisions", "revisionTexts", "values"];

/** Longest wait for an answer [ms]: within three seconds of its start the page says how things stand. */
const ANSWER_MS = 2200;
const TURN_MS = 100;
/** So long a storage that did not answer is left alone; every call rejects at once meanwhile [ms]. */
const REST_MS = 4000;

/** Thrown where the storage did not answer in time. */
export class NoAnswerError extends Error {
  override readonly name = "NoAnswerError";
}

/** Thrown while the page goes away: a connection opened now would be left hanging for the next page. */
export class LeavingError extends Error {
  override readonly name = "LeavingError";
}

type Abortable = { readonly abort: () => void };

let opening: Promise<Database> | null = null;
/** Counts the attempts: one that was given up must not come back as the connection. */
let attempts = 0;
let connected: Database | null = null;
let isFormerCopied = false;
let isLeaving = false;
let restUntil = Number.NEGATIVE_INFINITY;
const running = new Set<Abortable>();

/**
 * The promise's own outcome, or a `NoAnswerError` when there is none within so many milliseconds. They are counted in
 * short turns: while the page itself is busy or asleep, no answer could be heard, and none counts as missing.
 */
export function withDeadline<T>(ms: number, promise: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    let left = Math.ceil(ms / TURN_MS);
    let timer = setTimeout(function turn() {
      left -= 1;
      if (left > 0) timer = setTimeout(turn, TURN_MS);
      else reject(new NoAnswerError("The storage did not answer."));
    }, TURN_MS);
    promise.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

export function openDatabase(): Promise<Database> {
  if (isLeaving) return Promise.reject(new LeavingError("The page is going away."));
  opening ??= connect();
  return opening;
}

/** Works within one transaction that only reads. */
export function readTransaction<T>(
  stores: readonly StoreName[],
  work: (tx: Transaction<"readonly">) => Promise<T>,
): Promise<T> {
  return transact((database) => database.transaction([...stores], "readonly"), work);
}

/**
 * Reads and writes within one transaction: no other window can come between. Done when the storage has confirmed it;
 * what `work` throws undoes all of it. Nothing but the transaction may be waited for inside.
 */
export function writeTransaction<T>(
  stores: readonly StoreName[],
  work: (tx: Transaction) => Promise<T>,
): Promise<T> {
  // Confirmed means on the disk: the plug may be pulled the moment after.
  return transact(
    (database) => database.transaction([...stores], "readwrite", { durability: "strict" }),
    work,
  );
}

export function readValue(key: string): Promise<unknown> {
  return readTransaction(["values"], (tx) => tx.objectStore("values").get(key));
}

/** Puts in the place of a single value what `step` makes of the one that stands there; yields the new one. */
export function updateValue<T>(key: string, step: (before: unknown) => T): Promise<T> {
  return writeTransaction(["values"], async (tx) => {
    const store = tx.objectStore("values");
    const after = step(await store.get(key));
    await store.put(after, key);
    return after;
  });
}

/** Aborts what is under way and closes: for a page that goes away. Nothing is opened before `reopenDatabase`. */
export function closeDatabase(): void {
  isLeaving = true;
  for (const tx of running) abort(tx);
  disconnect();
}

/** The page is there again. */
export function reopenDatabase(): void {
  isLeaving = false;
  restUntil = Number.NEGATIVE_INFINITY;
}

async function transact<M extends "readonly" | "readwrite", T>(
  begin: (database: Database) => Transaction<M>,
  work: (tx: Transaction<M>) => Promise<T>,
): Promise<T> {
  if (performance.now() < restUntil) throw new NoAnswerError("The storage did not answer a moment ago.");
  let own: Transaction<M> | null = null;
  try {
    return await withDeadline(
      ANSWER_MS,
      (async () => {
        const tx = await started(begin);
        own = tx;
        running.add(tx);
        const result = await settled(tx, work).finally(() => running.delete(tx));
        restUntil = Number.NEGATIVE_INFINITY;
        return result;
      })(),
    );
  } catch (error) {
    if (error instanceof NoAnswerError) {
      restUntil = performance.now() + REST_MS;
      if (own) abort(own);
      disconnect();
    }
    throw error;
  }
}

/** A connection may have been closed unheard, by a newer edition or by whoever clears the storage: it is opened once more. */
async function started<M extends "readonly" | "readwrite">(
  begin: (database: Database) => Transaction<M>,
): Promise<Transaction<M>> {
  try {
    return begin(await openDatabase());
  } catch (error) {
    if (!(error instanceof DOMException) || error.name !== "InvalidStateError") throw error;
    disconnect();
    return begin(await openDatabase());
  }
}

async function settled<M extends "readonly" | "readwrite", T>(
  tx: Transaction<M>,
  work: (tx: Transaction<M>) => Promise<T>,
): Promise<T> {
  const done = tx.done;
  // Told through `work` or below: never an error that nobody takes.
  done.catch(() => undefined);
  let result: T;
  try {
    result = await work(tx);
  } catch (error) {
    abort(tx);
    // An aborted transaction knows the cause better than the request that it broke off.
    if (tx.error) throw tx.error;
    throw error;
  }
  await done;
  return result;
}

async function connect(): Promise<Database> {
  attempts += 1;
  const own = attempts;
  try {
    const database = await openDB<Schema>(NAME, VERSION, {
      upgrade: (fresh) => {
        for (const name of STORES) if (!fresh.objectStoreNames.contains(name)) fresh.createObjectStore(name);
      },
      // A newer edition, or whoever clears the storage, waits for this connection to end.
      blocking: () => forget(database),
      terminated: () => forget(database),
    });
    if (isLeaving || (attempts !== own && opening)) {
      // The page is gone, or asks a second time already.
      database.close();
      if (isLeaving) throw new LeavingError("The page is going away.");
      throw new NoAnswerError("The storage answered too late.");
    }
    // A late answer is an answer.
    opening ??= Promise.resolve(database);
    restUntil = Number.NEGATIVE_INFINITY;
    connected = database;
    if (!isFormerCopied) {
      // Where the former databases do not answer, their turn comes with the next start.
      await withDeadline(ANSWER_MS / 2, copyFormer(database)).catch(() => undefined);
      isFormerCopied = true;
    }
    return database;
  } catch (error) {
    if (attempts === own) opening = null;
    throw error;
  }
}

function forget(database: Database): void {
  database.close();
  if (connected === database) {
    connected = null;
    opening = null;
  }
}

function disconnect(): void {
  attempts += 1;
  connected?.close();
  connected = null;
  opening = null;
}

function abort(tx: Abortable): void {
  try {
    tx.abort();
  } catch {
    // It had ended already.
  }
}
