/** Revisions of a document: when one is taken by itself, and which of those make room in time. */
import type { Design } from "../../design/design.ts";
import { writeDesign } from "../../design/file.ts";
import type { RevisionHead, StoredRevision } from "./documentStorage.ts";

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** After so much work the state before the next change is kept. */
export const BETWEEN_REVISIONS_MS = 10 * MINUTE;

/** Ages up to which one revision is kept in each span; beyond the last, one in each of the longest [ms]. */
const SPANS: readonly { readonly upTo: number; readonly oneIn: number }[] = [
  { upTo: 3 * HOUR, oneIn: MINUTE },
  { upTo: DAY, oneIn: HOUR },
  { upTo: 30 * DAY, oneIn: DAY },
  { upTo: Number.POSITIVE_INFINITY, oneIn: 30 * DAY },
];

export function revisionOf(
  design: Design,
  about: Pick<RevisionHead, "document" | "when" | "by" | "name"> & { readonly id: string },
): StoredRevision {
  const { id, document, ...rest } = about;
  // The ids of one document's revisions begin with its own.
  return {
    head: { id: `${document}:${id}`, document, ...rest, parts: design.parts.length },
    text: writeDesign(design),
  };
}

/** Ids of the revisions that make room: taken by itself, unnamed, and a later one stands in the same span. */
export function surplusRevisions(revisions: readonly RevisionHead[], now: number): readonly string[] {
  const taken = new Set<string>();
  return [...revisions]
    .filter(({ by, name }) => by === "itself" && name === undefined)
    .sort((a, b) => b.when - a.when)
    .filter(({ when }) => {
      const { upTo, oneIn } = SPANS.find((span) => now - when <= span.upTo) ?? { upTo: 0, oneIn: 1 };
      const slot = `${upTo} ${Math.floor(when / oneIn)}`;
      if (!taken.has(slot)) {
        taken.add(slot);
        return false;
      }
      return true;
    })
    .map(({ id }) => id);
}
