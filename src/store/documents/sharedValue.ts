/**
 * A single value that all windows of this browser share: prices, practice. Every change is a step from whatever
 * stands in the storage at that moment, read and written in one transaction, so that no window overwrites another
 * with its own old copy. What the storage refuses holds in this window, and goes along with the next change.
 */
import { isSameValue } from "../../design/options.ts";
import { isObject } from "../../design/raw.ts";
import { readValue, updateValue } from "./database.ts";
import { ignoringStorageErrors } from "./unsavedNotes.ts";

export type SharedValuePlace = {
  readonly read: () => Promise<unknown>;
  /** Puts in the place of the value what `step` makes of it, in one transaction; yields the new one. */
  readonly update: (step: (before: unknown) => unknown) => Promise<unknown>;
  /** Calls whenever another window has changed the value. */
  readonly listen: (heard: () => void) => void;
  /** What a page that goes away has not kept yet, for the next one; absent where there is no next page. */
  readonly unsaved?: UnsavedValueNotes;
};

/** A value before and after changes that the storage has not confirmed. */
export type ValueChange = { readonly from: unknown; readonly to: unknown };

export type UnsavedValueNotes = {
  /** Calls when the page goes away, and puts down what it is handed, if anything, in one breath. */
  readonly onLeave: (pending: () => ValueChange | null) => void;
  readonly left: () => readonly { readonly key: string; readonly change: ValueChange }[];
  readonly remove: (key: string) => void;
};

export type SharedValue<T> = {
  /** Reads what was kept, and follows other windows from then on; the first call counts. */
  readonly load: () => Promise<void>;
  /** Shows at once what the step makes of the value, and keeps it. */
  readonly change: (step: (value: T) => T) => void;
};

export function createSharedValue<T>(around: {
  readonly place: SharedValuePlace;
  /** Whatever was stored as a value; `undefined`: nothing was. */
  readonly read: (stored: unknown) => T;
  /** The form in which it is stored, in the place of `before`. */
  readonly write: (value: T, before: unknown) => unknown;
  readonly show: (value: T) => void;
  /** Told how the last attempt went: whether the value is kept. */
  readonly tell: (isKept: boolean) => void;
}): SharedValue<T> {
  const { place, read, write, tell } = around;
  let stored = read(undefined);
  let shown = stored;
  /** Steps that the storage has not confirmed yet. */
  const pending: ((value: T) => T)[] = [];
  let loading: Promise<void> | null = null;
  let isKeeping = false;
  place.unsaved?.onLeave(() => {
    if (pending.length === 0) return null;
    return { from: write(stored, undefined), to: write(applied(stored), undefined) };
  });

  const applied = (value: T) => pending.reduce((before, step) => step(before), value);

  /** The same value stays the same object for whoever draws it. */
  function show(value: T): void {
    if (isSameValue(value, shown)) return;
    shown = value;
    around.show(value);
  }

  /** What pages had to leave unsaved; a note goes only once the storage has confirmed what it says. */
  async function pickUp({ left, remove }: UnsavedValueNotes): Promise<void> {
    for (const { key, change } of left()) {
      await place.update((before) => withValueChange(before, change));
      remove(key);
    }
  }

  async function reload(): Promise<void> {
    try {
      if (!loading && place.unsaved) await pickUp(place.unsaved);
      stored = read(await place.read());
      show(applied(stored));
    } catch {
      tell(false);
    }
  }

  async function keep(): Promise<void> {
    if (isKeeping) return;
    isKeeping = true;
    try {
      while (pending.length > 0) {
        let count = 0;
        const after = await place.update((before) => {
          // More may have been changed until the storage was ready.
          count = pending.length;
          return write(applied(read(before)), before);
        });
        stored = read(after);
        pending.splice(0, count);
        tell(true);
      }
      show(stored);
    } catch {
      tell(false);
    } finally {
      isKeeping = false;
    }
  }

  return {
    load: () => {
      if (!loading) {
        loading = reload();
        place.listen(() => void reload());
      }
      return loading;
    },
    change: (step) => {
      pending.push(step);
      show(applied(stored));
      void keep();
    },
  };
}

/** The value that stands there now, with what was changed of it elsewhere, entry by entry. */
export function withValueChange(now: unknown, { from, to }: ValueChange): unknown {
  if (isSameValue(from, to)) return now;
  if (!isObject(from) || !isObject(to)) return to;
  const standing = isObject(now) ? now : {};
  const result: Record<string, unknown> = { ...standing };
  for (const key of new Set([...Object.keys(from), ...Object.keys(to)])) {
    const value = withValueChange(standing[key], { from: from[key], to: to[key] });
    if (value === undefined) delete result[key];
    else result[key] = value;
  }
  return result;
}

/** In this browser's local storage, one place for each window. */
function browserValueParting(value: string): UnsavedValueNotes {
  const prefix = `downlead.left.${value}.`;
  const own = prefix + crypto.getRandomValues(new Uint32Array(2)).join("-");
  const remove = (key: string) => ignoringStorageErrors(() => localStorage.removeItem(key));
  return {
    onLeave: (pending) => {
      globalThis.addEventListener?.("pagehide", () => {
        const change = pending();
        if (change) ignoringStorageErrors(() => localStorage.setItem(own, JSON.stringify(change)));
      });
      // The page is there again, and keeps for itself what it still has to.
      globalThis.addEventListener?.("pageshow", () => remove(own));
    },
    left: () => {
      const found: { key: string; change: ValueChange }[] = [];
      ignoringStorageErrors(() => {
        for (const key of Object.keys(localStorage)) {
          const change: unknown = key.startsWith(prefix) ? JSON.parse(localStorage.getItem(key) ?? "") : null;
          if (isObject(change)) found.push({ key, change: { from: change.from, to: change.to } });
        }
      });
      return found;
    },
    remove,
  };
}

/** A value in the database of this browser. Every call may reject: storage can be denied, full, or silent. */
export function browserSharedValue(key: string): SharedValuePlace {
  let channel: BroadcastChannel | undefined;
  const open = () => {
    channel ??= new BroadcastChannel(`downlead-${key}`);
    return channel;
  };
  return {
    read: () => readValue(key),
    update: async (step) => {
      const after = await updateValue(key, step);
      open().postMessage("changed");
      return after;
    },
    listen: (heard) => {
      open().onmessage = heard;
    },
    unsaved: browserValueParting(key),
  };
}
