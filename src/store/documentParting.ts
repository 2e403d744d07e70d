/**
 * What a page that goes away still had to save. The large storage answers too late for that; the small one takes
 * a text in one breath, and the next page picks it up from there.
 */

export type PartingNote = {
  readonly id: string;
  /** Revision that the design was based on; null for one that was never stored. */
  readonly revision: number | null;
  /** Its file. */
  readonly text: string;
};

export type Parting = {
  readonly leave: (note: PartingNote) => void;
  /** Takes back the own note: the page lives on, and has saved. */
  readonly drop: () => void;
  /** Hands out and removes whatever pages have left. */
  readonly take: () => readonly PartingNote[];
};

const PREFIX = "downlead.parting.";

/** In this browser's local storage, one place for each window: two that close together overwrite nothing. */
export function browserParting(): Parting {
  const own = PREFIX + crypto.getRandomValues(new Uint32Array(2)).join("-");
  return {
    leave: (note) => quietly(() => localStorage.setItem(own, JSON.stringify(note))),
    drop: () => quietly(() => localStorage.removeItem(own)),
    take: () => {
      const notes: PartingNote[] = [];
      quietly(() => {
        const keys = Object.keys(localStorage).filter((key) => key.startsWith(PREFIX));
        for (const key of keys) {
          const note = noteOf(localStorage.getItem(key));
          if (note) notes.push(note);
          localStorage.removeItem(key);
        }
      });
      return notes;
    },
  };
}

/** Where nothing can be stored, this is no worse than without it; the page says so for itself. */
function quietly(work: () => void): void {
  try {
    work();
  } catch {
    // Denied or full.
  }
}

function noteOf(text: string | null): PartingNote | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text ?? "");
  } catch {
    return undefined;
  }
  if (typeof value !== "object" || value === null) return undefined;
  const note: Partial<Record<keyof PartingNote, unknown>> = value;
  const { id, revision, text: file } = note;
  if (typeof id !== "string" || typeof file !== "string") return undefined;
  return { id, revision: typeof revision === "number" ? revision : null, text: file };
}
