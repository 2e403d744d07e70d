/**
 * A single value that all windows of this browser share: prices, practice. Every change is a step from whatever
 * stands in the storage at that moment, read and written in one transaction, so that no window overwrites another
 * with its own old copy. What the storage refuses holds in this window, and goes along with the next change.
 */
import { isSameValue } from "../../design/options.ts";
import { readValue, updateValue } from "./database.ts";

export type KeptPlace = {
  readonly read: () => Promise<unknown>;
  /** Puts in the place of the value what `step` makes of it, in one transaction; yields the new one. */
  readonly update: (step: (before: unknown) => unknown) => Promise<unknown>;
  /** Calls whenever another window has changed the value. */
  readonly listen: (heard: () => void) => void;
};

export type Kept<T> = {
  /** Reads what was kept, and follows other windows from then on; the first call counts. */
  readonly load: () => Promise<void>;
  /** Shows at once what the step makes of the value, and keeps it. */
  readonly change: (step: (value: T) => T) => void;
};

export function createKept<T>(around: {
  readonly place: KeptPlace;
  /** Whatever was stored as a value; `undefined`: nothing was. */
  readonly read: (stored: unknown) => T;
  /** The form in which it is stored, in the place of `before`. */
  readonly write: (value: T, before: unknown) => unknown;
  readonly show: (value: T) => void;
  /** Told how the last attempt went: whether the value is kept. */
  readonly tell: (isKept: boolean) => void;
}): Kept<T> {
  const { place, read, write, tell } = around;
  let stored = read(undefined);
  let shown = stored;
  /** Steps that the storage has not confirmed yet. */
  const pending: ((value: T) => T)[] = [];
  let loading: Promise<void> | null = null;
  let isKeeping = false;

  const applied = (value: T) => pending.reduce((before, step) => step(before), value);

  /** The same value stays the same object for whoever draws it. */
  function show(value: T): void {
    if (isSameValue(value, shown)) return;
    shown = value;
    around.show(value);
  }

  async function reload(): Promise<void> {
    try {
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

/** A value in the database of this browser. Every call may reject: storage can be denied, full, or silent. */
export function browserPlace(key: string): KeptPlace {
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
  };
}
