/** Two windows on one document. Each is an app of its own here: a design with history, tied to the same storage. */
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type Design, EMPTY_DESIGN } from "../../../src/design/design.ts";
import { setOption } from "../../../src/design/edits/options.ts";
import { rename } from "../../../src/design/edits/parts.ts";
import { removeParts } from "../../../src/design/edits/remove.ts";
import { createDocuments } from "../../../src/store/documents/documents.ts";
import { type History, historyOf, presentOf, withStep } from "../../../src/store/documents/history.ts";
import { drawn, must } from "../../design/house.ts";
import { type MemoryStorage, memoryStorage, storedTitles } from "./memoryStorage.ts";

const chain: Design = {
  ...drawn(["aerial-uhf", "cable", "receiver-tv"], ["aerial1/out > cable1/in", "cable1/out > tv1/in"]),
  title: "House",
};

function windowOn(storage: MemoryStorage, name: string) {
  let count = 0;
  const newId = () => `${name}${++count}`;
  const documents = createDocuments({ storage, now: Date.now, newId, gapMs: 150 });
  let history: History = historyOf(EMPTY_DESIGN);
  const show = async (shown: History) => {
    history = shown;
    await documents.getState().cameUp(documents.getState().current);
  };
  documents.subscribe(({ incoming }) => {
    if (!incoming) return;
    documents.setState({ incoming: null });
    history = incoming;
    documents.getState().changed(presentOf(history), () => history);
  });
  return {
    now: documents.getState,
    design: () => presentOf(history),
    history: () => history,
    edit: (step: (design: Design) => ReturnType<typeof rename>) => {
      history = withStep(history, must(step(presentOf(history))));
      documents.getState().changed(presentOf(history), () => history);
    },
    undo: () => {
      history = { ...history, at: history.at - 1 };
      documents.getState().changed(presentOf(history), () => history);
    },
    create: async (design: Design) => {
      await documents.getState().create(design);
      await show(historyOf(design));
    },
    open: async (id: string) => {
      const opened = await documents.getState().open(id);
      if (opened.ok) await show(opened.history);
    },
  };
}

async function twoWindows() {
  const storage = memoryStorage();
  const [first, second] = [windowOn(storage, "a"), windowOn(storage, "b")];
  await first.create(chain);
  await second.open("a1");
  return { storage, first, second };
}

const labelOf = (design: Design, id: string) => design.parts.find((part) => part.id === id)?.label;
const lengthOf = (design: Design) => design.parts.find((part) => part.id === "cable1")?.options.lengthM;
const named = (id: string, label: string) => (design: Design) => rename(design, id, label);
const long = (metres: number) => (design: Design) => setOption(design, "cable1", "lengthM", metres);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe("A window in which nothing was edited", () => {
  test("follows the other, with its way back, and keeps the objects that are the same", async () => {
    const { first, second } = await twoWindows();
    const before = second.design();
    first.edit(named("tv1", "Kitchen"));
    await first.now().flush();
    await second.now().heard("a1", first.now().revision ?? 0);
    expect(labelOf(second.design(), "tv1")).toBe("Kitchen");
    expect(second.design().parts[0]).toBe(before.parts[0]);
    expect(second.design().wires).toBe(before.wires);
    expect(second.now()).toMatchObject({ state: "saved", notice: null, current: "a1" });
    second.undo();
    await second.now().flush();
    await first.now().heard("a1", second.now().revision ?? 0);
    expect(first.design()).toEqual(chain);
  });

  test("does not take what it follows for a change of its own", async () => {
    const { storage, first, second } = await twoWindows();
    first.edit(named("tv1", "Kitchen"));
    await first.now().flush();
    const writes = storage.writes.length;
    await second.now().heard("a1", first.now().revision ?? 0);
    await vi.advanceTimersByTimeAsync(2000);
    expect(storage.writes.length).toBe(writes);
  });

  test("lets another document be", async () => {
    const { first, second } = await twoWindows();
    await second.create({ ...chain, title: "Other" });
    first.edit(named("tv1", "Kitchen"));
    await first.now().flush();
    await second.now().heard("a1", first.now().revision ?? 0);
    expect(second.design().title).toBe("Other");
    expect(
      second
        .now()
        .list.map(({ title }) => title)
        .sort(),
    ).toEqual(["House", "Other"]);
  });
});

describe("Two windows that edit different parts", () => {
  test("are merged, and both show the same in the end", async () => {
    const { storage, first, second } = await twoWindows();
    first.edit(named("tv1", "Kitchen"));
    second.edit(long(44));
    await first.now().flush();
    await second.now().flush();
    expect([labelOf(second.design(), "tv1"), lengthOf(second.design())]).toEqual(["Kitchen", 44]);
    await first.now().heard("a1", second.now().revision ?? 0);
    expect(first.design()).toEqual(second.design());
    expect(storedTitles(storage)).toEqual(["House"]);
    expect(second.now().notice).toContain("the changes of both");
  });

  test("each keep their own steps to undo, on top of the other's", async () => {
    const { first, second } = await twoWindows();
    first.edit(named("tv1", "Kitchen"));
    second.edit(long(44));
    second.edit(named("aerial1", "Roof"));
    await first.now().flush();
    await second.now().flush();
    second.undo();
    expect([
      labelOf(second.design(), "tv1"),
      labelOf(second.design(), "aerial1"),
      lengthOf(second.design()),
    ]).toEqual(["Kitchen", labelOf(chain, "aerial1"), 44]);
    second.undo();
    expect([labelOf(second.design(), "tv1"), lengthOf(second.design())]).toEqual([
      "Kitchen",
      lengthOf(chain),
    ]);
  });

  test("keep what this one had as a revision", async () => {
    const { first, second } = await twoWindows();
    first.edit(named("tv1", "Kitchen"));
    second.edit(long(44));
    await first.now().flush();
    await second.now().flush();
    const [revision] = await second.now().revisions("a1");
    const reading = await second.now().readRevision(revision?.id ?? "");
    expect(reading.ok && [labelOf(reading.design, "tv1"), lengthOf(reading.design)]).toEqual([
      labelOf(chain, "tv1"),
      44,
    ]);
  });

  test("lose nothing that is changed while the merging is under way", async () => {
    const { storage, first, second } = await twoWindows();
    first.edit(named("tv1", "Kitchen"));
    await first.now().flush();
    second.edit(long(44));
    let go = () => {};
    storage.delay = new Promise<void>((resolve) => {
      go = resolve;
    });
    const saving = second.now().flush();
    await vi.advanceTimersByTimeAsync(10);
    second.edit(named("aerial1", "Roof"));
    go();
    await saving;
    await vi.advanceTimersByTimeAsync(1000);
    expect([
      labelOf(second.design(), "tv1"),
      labelOf(second.design(), "aerial1"),
      lengthOf(second.design()),
    ]).toEqual(["Kitchen", "Roof", 44]);
    const third = windowOn(storage, "c");
    await third.open("a1");
    expect(third.design()).toEqual(second.design());
  });

  test("of which one undid what the other built on: both stay", async () => {
    const { storage, first, second } = await twoWindows();
    first.edit((design) => removeParts(design, new Set(["cable1"]), new Set()));
    second.edit(long(44));
    await first.now().flush();
    await second.now().flush();
    expect(storedTitles(storage)).toEqual(["House", "House (copy)"]);
  });
});

describe("Two windows that change the same value", () => {
  test("go on as two documents, and the notice tells which part it is", async () => {
    const { storage, first, second } = await twoWindows();
    first.edit(long(33));
    second.edit(long(44));
    await first.now().flush();
    await second.now().flush();
    expect(storedTitles(storage)).toEqual(["House", "House (copy)"]);
    expect(second.now()).toMatchObject({ current: "b1", state: "saved" });
    expect(second.design().title).toBe("House (copy)");
    expect(second.now().notice).toContain(`“${labelOf(chain, "cable1")}” (Length)`);
    expect(second.now().notice).toContain("both are kept");
    expect([lengthOf(first.design()), lengthOf(second.design())]).toEqual([33, 44]);

    second.edit(long(45));
    await second.now().flush();
    expect(storedTitles(storage)).toEqual(["House", "House (copy)"]);
    second.undo();
    second.undo();
    expect(second.design()).toEqual({ ...chain, title: "House (copy)" });
  });
});

describe("A document deleted in one window", () => {
  test("is kept by the other that goes on with it", async () => {
    const { storage, first, second } = await twoWindows();
    await first.now().remove("a1");
    second.edit(named("tv1", "Kitchen"));
    await second.now().flush();
    expect(storedTitles(storage)).toEqual(["House"]);
    expect(second.now().notice).toContain("stored there again");
    second.undo();
    expect(second.design()).toEqual(chain);
  });
});

describe("Revisions", () => {
  const minutes = (n: number) => vi.advanceTimersByTimeAsync(n * 60_000);

  test("are taken by themselves before the first change after ten minutes, and say when it was so", async () => {
    const { first: page } = await twoWindows();
    const at = Date.now();
    page.edit(long(1));
    await page.now().flush();
    await minutes(5);
    page.edit(long(2));
    await page.now().flush();
    expect(await page.now().revisions("a1")).toEqual([]);
    await minutes(6);
    page.edit(long(3));
    await page.now().flush();
    const revisions = await page.now().revisions("a1");
    expect(revisions).toMatchObject([{ by: "itself", when: at + 5 * 60_000, parts: 3 }]);
    const reading = await page.now().readRevision(revisions[0]?.id ?? "");
    expect(reading.ok && lengthOf(reading.design)).toBe(2);
  });

  test("keep how a document was before it is worked on again", async () => {
    const { first, second } = await twoWindows();
    await minutes(60 * 24);
    await second.open("a1");
    second.edit(long(9));
    await second.now().flush();
    const [revision] = await first.now().revisions("a1");
    const reading = await first.now().readRevision(revision?.id ?? "");
    expect(reading.ok && reading.design).toEqual(chain);
  });

  test("are named, renamed, removed; a name must be one", async () => {
    const { first: page } = await twoWindows();
    expect(await page.now().takeRevision(" ")).toBe("A revision needs a name.");
    expect(await page.now().takeRevision("Offer")).toBeNull();
    const [revision] = await page.now().revisions("a1");
    expect(revision).toMatchObject({ name: "Offer", by: "user" });
    expect(await page.now().nameRevision(revision?.id ?? "", "Offer 1")).toBeNull();
    expect((await page.now().revisions("a1"))[0]?.name).toBe("Offer 1");
    const removed = await page.now().removeRevision(revision?.id ?? "");
    expect(await page.now().revisions("a1")).toEqual([]);
    if (!removed) throw new Error("a revision that was there is handed out");
    expect(await page.now().putBackRevision(removed)).toBeNull();
    expect(await page.now().revisions("a1")).toEqual([{ ...revision, name: "Offer 1" }]);
    expect(await page.now().removeRevision("a1:nowhere")).toBeNull();
  });

  test("are restored as one undo step, after the present state was kept", async () => {
    const { first: page } = await twoWindows();
    await page.now().takeRevision("Start");
    page.edit(long(70));
    page.edit(named("tv1", "Kitchen"));
    const before = page.design();
    const start = (await page.now().revisions("a1")).find(({ name }) => name === "Start");
    expect(await page.now().restoreRevision(start?.id ?? "")).toBeNull();
    expect(page.design()).toEqual(chain);
    expect(page.design().parts[0]).toBe(before.parts[0]);
    expect(page.now().state).toBe("saved");
    const kept = (await page.now().revisions("a1")).find(({ by }) => by === "itself");
    const reading = await page.now().readRevision(kept?.id ?? "");
    expect(reading.ok && reading.design).toEqual(before);
    page.undo();
    expect(page.design()).toBe(before);
  });
});
