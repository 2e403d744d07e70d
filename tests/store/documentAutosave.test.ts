// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type Design, EMPTY_DESIGN } from "../../src/design/design.ts";
import { attachAutosave } from "../../src/store/documentAutosave.ts";
import { createDocuments } from "../../src/store/documents.ts";
import { type MemoryShelf, memoryShelf } from "./memoryShelf.ts";

const titled = (title: string): Design => ({ ...EMPTY_DESIGN, title });

/** An app with an open design, tied to a shelf. */
function app(shelf: MemoryShelf, name = "a") {
  let count = 0;
  const documents = createDocuments({ shelf, now: Date.now, newId: () => `${name}${++count}`, delayMs: 500 });
  const listeners = new Set<(design: Design) => void>();
  const titles: string[] = [];
  const letGo = attachAutosave(
    {
      subscribe: (listener) => {
        listeners.add(listener);
        return () => void listeners.delete(listener);
      },
      retitle: (title) => void titles.push(title),
    },
    documents,
  );
  detach.push(letGo);
  const change = (design: Design) => {
    for (const listener of listeners) listener(design);
  };
  return { documents, change, titles, letGo };
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
  test("is saved half a second after a change", async () => {
    const shelf = memoryShelf();
    app(shelf).change(titled("Roof"));
    await vi.advanceTimersByTimeAsync(400);
    expect(shelf.puts).toBe(0);
    await vi.advanceTimersByTimeAsync(200);
    expect(shelf.puts).toBe(1);
  });

  test.each([
    { name: "hidden", leave: () => hide("hidden"), puts: 1 },
    { name: "left", leave: () => window.dispatchEvent(new Event("pagehide")), puts: 1 },
    { name: "only shown again", leave: () => hide("visible"), puts: 0 },
  ])("is saved without waiting when the page is hidden or left: $name", async ({ leave, puts }) => {
    const shelf = memoryShelf();
    app(shelf).change(titled("Roof"));
    leave();
    await vi.advanceTimersByTimeAsync(50);
    expect(shelf.puts).toBe(puts);
  });

  test("is asked about on leaving only where it would be lost", async () => {
    const shelf = memoryShelf();
    const { change, documents } = app(shelf);
    change(titled("Roof"));
    await documents.getState().flush();
    expect(leavingIsAsked()).toBe(false);

    shelf.refusal = new DOMException("", "QuotaExceededError");
    change(titled("Roof, changed"));
    await documents.getState().flush();
    expect(leavingIsAsked()).toBe(true);

    // Kept in this window only: turning to an example doesn't make it safe.
    await documents.getState().begin(titled("Example"));
    expect(leavingIsAsked()).toBe(true);
  });

  test("takes the title of the copy under which it goes on", async () => {
    const shelf = memoryShelf();
    const first = app(shelf, "a");
    const second = app(shelf, "b");
    await first.documents.getState().create(titled("House"));
    await second.documents.getState().open("a1");
    first.change({ ...titled("House"), lesson: "first" });
    await first.documents.getState().flush();
    second.change({ ...titled("House"), lesson: "second" });
    await second.documents.getState().flush();
    expect(second.titles).toEqual(["House (copy)"]);
    expect(second.documents.getState().newTitle).toBeNull();
    expect(first.titles).toEqual([]);
  });

  test("is no longer followed once let go", async () => {
    const shelf = memoryShelf();
    const { change, letGo } = app(shelf);
    letGo();
    change(titled("Roof"));
    await vi.advanceTimersByTimeAsync(1000);
    expect(shelf.puts).toBe(0);
  });
});

test("another window with the same document hears of a save", async () => {
  vi.useRealTimers();
  const shelf = memoryShelf();
  const first = app(shelf, "a");
  const second = app(shelf, "b");
  await first.documents.getState().create(titled("House"));
  await second.documents.getState().open("a1");
  first.change(titled("House, changed"));
  await first.documents.getState().flush();
  await vi.waitFor(() => expect(second.documents.getState().notice).toContain("another window"));
  expect(second.documents.getState().list.map((head) => head.title)).toEqual(["House, changed"]);
  expect(first.documents.getState().notice).toBeNull();
});
