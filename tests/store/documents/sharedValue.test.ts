/** A value that all windows share. What must come out is counted by hand: every change of every window is there. */
import { describe, expect, test } from "vitest";
import {
  createSharedValue,
  type SharedValuePlace,
  type ValueChange,
  withValueChange,
} from "../../../src/store/documents/sharedValue.ts";
import { memoryStorage, settled } from "./memoryPlace.ts";

type Tally = Readonly<Record<string, number>>;

function windowOn(place: SharedValuePlace) {
  const seen = { value: {} as Tally, isKept: null as boolean | null, shown: 0 };
  const kept = createSharedValue<Tally>({
    place,
    read: (stored) => (typeof stored === "object" && stored !== null ? { ...(stored as Tally) } : {}),
    write: (value) => value,
    show: (value) => {
      seen.value = value;
      seen.shown += 1;
    },
    tell: (isKept) => {
      seen.isKept = isKept;
    },
  });
  const count = (key: string) => kept.change((all) => ({ ...all, [key]: (all[key] ?? 0) + 1 }));
  return { seen, kept, count };
}

describe("A value shared by windows", () => {
  test("loses no change of any of them, whether it has read the other's or not", async () => {
    const storage = memoryStorage();
    const [one, two] = [windowOn(storage.window()), windowOn(storage.window())];
    for (let n = 0; n < 5; n += 1) {
      one.count("a");
      two.count("b");
      two.count("both");
      one.count("both");
      if (n % 2 === 0) await settled();
    }
    await settled();
    expect(storage.kept).toEqual({ a: 5, b: 5, both: 10 });
  });

  test("shows the changes of the other as they come, once it was loaded", async () => {
    const storage = memoryStorage();
    const [one, two] = [windowOn(storage.window()), windowOn(storage.window())];
    await two.kept.load();
    one.count("a");
    await settled();
    expect(two.seen.value).toEqual({ a: 1 });
  });

  test("shows its own changes at once, also such as were made while the storage was still opening", async () => {
    const { seen, kept, count } = windowOn(memoryStorage({ a: 4 }).window());
    const loading = kept.load();
    count("a");
    expect(seen.value).toEqual({ a: 1 });
    await loading;
    await settled();
    expect(seen.value).toEqual({ a: 5 });
  });

  test("is not shown again while nothing about it has changed", async () => {
    const { seen, kept, count } = windowOn(memoryStorage().window());
    await kept.load();
    count("a");
    await settled();
    expect(seen.shown).toBe(1);
  });

  test("says while it is not kept, and keeps all of it once the storage takes it", async () => {
    const storage = memoryStorage({ a: 1 });
    const place = storage.window();
    let isDenied = true;
    const { seen, count } = windowOn({
      ...place,
      update: (step) => (isDenied ? Promise.reject(new Error("full")) : place.update(step)),
    });
    count("a");
    count("b");
    await settled();
    expect(seen).toMatchObject({ value: { a: 1, b: 1 }, isKept: false });
    isDenied = false;
    count("b");
    await settled();
    expect(storage.kept).toEqual({ a: 2, b: 2 });
    expect(seen).toMatchObject({ value: { a: 2, b: 2 }, isKept: true });
  });
});

describe("What a page that goes away had not kept yet", () => {
  test("is put down, and into the value by the next page, beside what others have changed since", async () => {
    const storage = memoryStorage({ a: 1, b: 1 });
    const notes = new Map<string, ValueChange>();
    const withNotes = (key: string, leave: { ask: () => ValueChange | null }): SharedValuePlace => ({
      ...storage.window(),
      unsaved: {
        onLeave: (pending) => {
          leave.ask = pending;
        },
        left: () => [...notes].map(([name, change]) => ({ key: name, change })),
        remove: (name) => void notes.delete(name),
      },
      ...(key === "silent" ? { update: () => new Promise<never>(() => {}) } : {}),
    });
    const leaving = { ask: (): ValueChange | null => null };
    const first = windowOn(withNotes("silent", leaving));
    await first.kept.load();
    expect(leaving.ask()).toBeNull();
    first.count("a");
    const change = leaving.ask();
    expect(change).toEqual({ from: { a: 1, b: 1 }, to: { a: 2, b: 1 } });
    if (change) notes.set("note", change);

    storage.kept = { a: 1, b: 7, c: 3 };
    const next = windowOn(withNotes("next", { ask: () => null }));
    await next.kept.load();
    expect(next.seen.value).toEqual({ a: 2, b: 7, c: 3 });
    expect(storage.kept).toEqual({ a: 2, b: 7, c: 3 });
    expect(notes.size).toBe(0);
  });

  // By hand: only what differs between before and after counts, at any depth; what was taken out goes.
  test.each([
    {
      name: "an entry that was changed",
      now: { x: { p: 1, q: 9 } },
      from: { x: { p: 1 } },
      to: { x: { p: 2 } },
      is: { x: { p: 2, q: 9 } },
    },
    { name: "an entry that came", now: { y: 1 }, from: {}, to: { x: [1] }, is: { x: [1], y: 1 } },
    { name: "an entry that went", now: { x: 1, y: 1 }, from: { x: 1 }, to: {}, is: { y: 1 } },
    { name: "nothing", now: { x: 5 }, from: { x: 1 }, to: { x: 1 }, is: { x: 5 } },
    { name: "a value where there was none", now: undefined, from: undefined, to: { x: 1 }, is: { x: 1 } },
  ])("$name", ({ now, from, to, is }) => {
    expect(withValueChange(now, { from, to })).toEqual(is);
  });
});
