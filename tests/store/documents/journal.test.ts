/** The journal over any course of work. What must hold: what was written is what is read, and damage costs little. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Design, EMPTY_DESIGN } from "../../../src/design/design.ts";
import { readDocument } from "../../../src/store/documents/documentReading.ts";
import type { StoredDocument } from "../../../src/store/documents/documentStorage.ts";
import { HISTORY_LIMIT, type History, historyOf, presentOf } from "../../../src/store/documents/history.ts";
import { journalChange, type OnDisk } from "../../../src/store/documents/journal.ts";
import { memoryStorage } from "./memoryStorage.ts";

type Act = "edit" | "keystroke" | "undo" | "redo" | "save" | "close";

/** Mostly edits, so that texts and the limit come into play. */
const anyWork = (length: number): fc.Arbitrary<readonly Act[]> =>
  fc.array(
    fc.oneof(
      { weight: 6, arbitrary: fc.constant<Act>("edit") },
      { weight: 4, arbitrary: fc.constantFrom<Act>("keystroke", "undo", "redo", "save", "close") },
    ),
    { minLength: 1, maxLength: length },
  );

let counter = 0;
function next(): Design {
  counter += 1;
  return { ...EMPTY_DESIGN, title: `${counter}` };
}

/** As the store of the open design does it: an edit forgets what redo had, a keystroke replaces the last state. */
function after({ states, at }: History, act: Act): History {
  const kept = states.slice(0, at + 1);
  switch (act) {
    case "edit": {
      const all = [...kept, next()].slice(-HISTORY_LIMIT - 1);
      return { states: all, at: all.length - 1 };
    }
    case "keystroke":
      return at === 0
        ? { states, at }
        : { states: [...states.slice(0, at), next(), ...states.slice(at + 1)], at };
    case "undo":
      return { states, at: Math.max(0, at - 1) };
    case "redo":
      return { states, at: Math.min(states.length - 1, at + 1) };
    default:
      return { states, at };
  }
}

/** Works and saves on a storage; yields what lies there at the end, and the history that it should tell. */
async function worked(
  acts: readonly Act[],
): Promise<{ readonly stored: StoredDocument; readonly history: History }> {
  const storage = memoryStorage();
  let history = historyOf(next());
  let disk: OnDisk | null = null;
  let revision: number | null = null;
  const save = async (wantsText: boolean) => {
    const plan = journalChange(disk, history, wantsText);
    const number = (revision ?? 0) + 1;
    const head = { id: "a", title: "", changed: 0, parts: 0, revision: number, at: plan.at };
    await storage.write({ ...plan.change, head, revisions: [] }, revision);
    [disk, revision] = [plan.disk, number];
  };
  for (const act of acts) {
    history = after(history, act);
    if (act === "save" || act === "close") await save(act === "close");
  }
  await save(false);
  const stored = storage.documents.get("a");
  if (!stored) throw new Error("nothing was stored");
  return { stored, history };
}

describe("A journal", () => {
  test("tells the whole history after any work, from any of its texts", async () => {
    await fc.assert(
      fc.asyncProperty(anyWork(150), async (acts) => {
        const { stored, history } = await worked(acts);
        expect(readDocument(stored)).toMatchObject({ ok: true, history, lost: 0, isDamaged: false });
        for (const text of stored.texts) {
          const found = readDocument({ ...stored, texts: [text] });
          expect(found.ok && found.history).toEqual(history);
        }
        // The present is never far from a text, and texts are few.
        expect(stored.texts.length).toBeLessThanOrEqual(3);
        expect(Math.min(...stored.texts.map(({ at }) => Math.abs(at - (stored.head.at ?? 0))))).toBeLessThan(
          30,
        );
      }),
      { numRuns: 60 },
    );
  });

  test("forgets with undo what lies beyond its limit, and still reads", async () => {
    const acts = Array.from({ length: 1000 }, (_, i): Act => (i % 7 === 0 ? "save" : "edit"));
    const { stored, history } = await worked(acts);
    expect(history.states.length).toBe(HISTORY_LIMIT + 1);
    expect(stored.steps.length).toBe(HISTORY_LIMIT);
    const found = readDocument(stored);
    expect(found.ok && found.history).toEqual(history);
  });

  test("with one entry damaged still opens, at a state that was once there, and says that something is lost", async () => {
    await fc.assert(
      fc.asyncProperty(
        anyWork(80),
        fc.nat(),
        fc.constantFrom(null, "{", 7, { title: ["x", "y"] }),
        async (acts, n, junk) => {
          const { stored, history } = await worked(acts);
          fc.pre(stored.steps.length > 0);
          const hit = stored.steps[n % stored.steps.length];
          const steps = stored.steps.map((step) => (step === hit ? { ...step, patch: junk } : step));
          const found = readDocument({ ...stored, steps });
          if (!found.ok) throw new Error(found.problem);
          expect(history.states.map(({ title }) => title)).toContain(presentOf(found.history).title);
          expect(found.isDamaged).toBe(true);
        },
      ),
      { numRuns: 80 },
    );
  });
});
