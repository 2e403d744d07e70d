// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type Design, EMPTY_DESIGN } from "../../../src/design/design.ts";
import { retitle } from "../../../src/design/edits/parts.ts";
import { openHistory, useApp } from "../../../src/store/app.ts";
import { attachAutosave } from "../../../src/store/documents/autosave.ts";
import { createDocuments } from "../../../src/store/documents/documents.ts";
import { type History, historyOf } from "../../../src/store/documents/history.ts";
import { type MemoryStorage, memoryStorage, storedTitles } from "./memoryStorage.ts";

const titled = (title: string): Design => ({ ...EMPTY_DESIGN, title });

/** An app with an open design, tied to a storage. */
function app(storage: MemoryStorage, name = "a") {
  let count = 0;
  const documents = createDocuments({
    storage,
    now: Date.now,
    newId: () => `${name}${++count}`,
    gapMs: 150,
  });
  const listeners = new Set<(design: Design) => void>();
  const followed: History[] = [];
  let history = historyOf(EMPTY_DESIGN);
  const letGo = attachAutosave(
    {
      subscribe: (listener) => {
        listeners.add(listener);
        return () => void listeners.delete(listener);
      },
      history: () => history,
      follow: (incoming) => void followed.push(incoming),
    },
    documents,
  );
  detach.push(letGo);
  const change = (design: Design) => {
    history = historyOf(design);
    for (const listener of listeners) listener(design);
  };
  const open = async (id: string) => {
    await documents.getState().open(id);
    await documents.getState().cameUp(id);
  };
  const create = async (design: Design) => {
    await documents.getState().create(design);
    await documents.getState().cameUp(documents.getState().current);
  };
  return { documents, change, create, open, followed, letGo };
}

const detach: (() => void)[] = [];

function hide(state: "hidden" | "visible"): void {
  vi.spyOn(document, "visibilityState", "get").mockReturnValue(state);
  document.dispatchEvent(new Event("visibilitychange"));
}

function leavingIsAsked(): boolean {
  const event = new Event("beforeunload", { cancelable: true });
  window.dispatchEvent(event);
  return event.defaultPrevented;
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  for (const letGo of detach.splice(0)) letGo();
  vi.useRealTimers();
  vi.restoreAllMocks();
});

describe("The open design", () => {
  test("is saved in the same breath, and a second change a moment later", async () => {
    const storage = memoryStorage();
    const { change } = app(storage);
    change(titled("Roof"));
    await vi.advanceTimersByTimeAsync(1);
    expect(storedTitles(storage)).toEqual(["Roof"]);
    change(titled("Roof, changed"));
    await vi.advanceTimersByTimeAsync(100);
    expect(storedTitles(storage)).toEqual(["Roof"]);
    await vi.advanceTimersByTimeAsync(100);
    expect(storedTitles(storage)).toEqual(["Roof, changed"]);
  });

  test("is saved without waiting when the page is hidden, and needs nothing when it is shown again", async () => {
    const storage = memoryStorage();
    const { change } = app(storage);
    change(titled("Roof"));
    await vi.advanceTimersByTimeAsync(1);
    change(titled("Roof, changed"));
    hide("visible");
    await vi.advanceTimersByTimeAsync(1);
    expect(storedTitles(storage)).toEqual(["Roof"]);
    hide("hidden");
    await vi.advanceTimersByTimeAsync(1);
    expect(storedTitles(storage)).toEqual(["Roof, changed"]);
  });

  test("is asked about on leaving only where it would be lost", async () => {
    const storage = memoryStorage();
    const { change, documents } = app(storage);
    change(titled("Roof"));
    await documents.getState().flush();
    expect(leavingIsAsked()).toBe(false);

    storage.refusal = new DOMException("", "QuotaExceededError");
    change(titled("Roof, changed"));
    await documents.getState().flush();
    expect(leavingIsAsked()).toBe(true);

    // Kept in this window only: turning to an example doesn't make it safe.
    await documents.getState().begin(titled("Example"));
    expect(leavingIsAsked()).toBe(true);
  });

  test("takes the title of the copy under which it goes on", async () => {
    const storage = memoryStorage();
    const first = app(storage, "a");
    const second = app(storage, "b");
    await first.create(titled("House"));
    await second.open("a1");
    first.change(titled("Cottage"));
    await first.documents.getState().flush();
    second.change(titled("Villa"));
    await second.documents.getState().flush();
    expect(second.followed).toEqual([historyOf(titled("Villa (copy)"))]);
    expect(second.documents.getState().incoming).toBeNull();
    expect(first.followed).toEqual([]);
  });

  test("is no longer followed once let go", async () => {
    const storage = memoryStorage();
    const { change, letGo } = app(storage);
    letGo();
    change(titled("Roof"));
    await vi.advanceTimersByTimeAsync(1000);
    expect(storedTitles(storage)).toEqual([]);
  });
});

test("another window with the same document hears of a save and follows", async () => {
  vi.useRealTimers();
  const storage = memoryStorage();
  const first = app(storage, "a");
  const second = app(storage, "b");
  await first.create(titled("House"));
  await second.open("a1");
  first.change(titled("House, changed"));
  await first.documents.getState().flush();
  await vi.waitFor(() => expect(second.followed.at(-1)?.states.at(-1)?.title).toBe("House, changed"));
  await vi.waitFor(() => {
    expect(second.documents.getState().list.map((head) => head.title)).toEqual(["House, changed"]);
  });
  expect(second.documents.getState().notice).toBeNull();
  expect(first.followed).toEqual([]);
});

describe("The real store of the open design", () => {
  const state = useApp.getState;
  function tied(storage: MemoryStorage) {
    let count = 0;
    const documents = createDocuments({
      storage,
      now: Date.now,
      newId: () => `r${++count}`,
      gapMs: 150,
    });
    detach.push(
      attachAutosave(
        {
          subscribe: (listener) =>
            useApp.subscribe((now, before) => now.design !== before.design && listener(now.design)),
          history: openHistory,
          follow: (history) => state().follow(history),
        },
        documents,
      ),
    );
    return documents.getState;
  }

  test("has its undo and redo again after a reload, keystrokes of one field as one step", async () => {
    const storage = memoryStorage();
    const documents = tied(storage);
    const start = titled("0");
    await documents().create(start);
    state().openDesign(start);
    await documents().cameUp(documents().current);
    for (const title of ["1", "2", "3"]) state().change(retitle(state().design, title));
    for (const title of ["3a", "3ab"]) {
      state().change(retitle(state().design, title), { merge: "title" });
      await vi.advanceTimersByTimeAsync(300);
    }
    state().undo();
    await vi.advanceTimersByTimeAsync(300);
    expect(documents().state).toBe("saved");

    for (const letGo of detach.splice(0)) letGo();
    const opened = await tied(storage)().openLast();
    if (!opened?.ok) throw new Error("not opened");
    state().openDesign(opened.design, { history: opened.history });
    expect(state().design.title).toBe("3");
    state().redo();
    expect(state().design.title).toBe("3ab");
    for (const title of ["3", "2", "1", "0", "0"]) {
      state().undo();
      expect(state().design.title).toBe(title);
    }
  });

  test("follows another window without losing its selection, and makes no step of it", async () => {
    state().openDesign({ ...titled("A"), parts: [] });
    state().select({ parts: ["gone"] });
    const selected = state().selection;
    const opened = state().opened;
    state().follow({ states: [titled("A"), titled("B"), titled("C")], at: 1 });
    expect(state().design.title).toBe("B");
    expect(state().opened).toBe(opened);
    expect(openHistory()).toEqual({ states: [titled("A"), titled("B"), titled("C")], at: 1 });
    expect(selected.parts).toEqual(["gone"]);
    expect(state().selection.parts).toEqual([]);
  });
});
