/** The revisions of documents, as commands of the page. */
import type { Design } from "../../design/design.ts";
import { readStoredDesign } from "../../design/file.ts";
import { applyPatch, patchBetween } from "../../design/patch.ts";
import type { RevisionHead } from "./documentStorage.ts";
import { historyOf, presentOf, withStep } from "./history.ts";
import type { DocumentServices, OpenDocument } from "./openDocument.ts";
import { revisionOf } from "./revisions.ts";
import type { DocumentsState, Opened } from "./state.ts";

const GONE = "This revision is no longer in the browser’s storage.";
const MOST_NAME_LENGTH = 80;

type Commands = Pick<
  DocumentsState,
  | "revisions"
  | "readRevision"
  | "takeRevision"
  | "nameRevision"
  | "removeRevision"
  | "putBackRevision"
  | "restoreRevision"
>;

export function revisionCommands(around: DocumentServices, openDocument: OpenDocument): Commands {
  const { storage } = around;

  async function read(id: string): Promise<Opened> {
    const stored = await storage.revision(id);
    if (!stored) return { ok: false, problem: GONE, text: null };
    const reading = readStoredDesign(stored.text);
    if (!reading.ok) return { ...reading, text: stored.text };
    return { ...reading, history: historyOf(reading.design) };
  }

  function keep(design: Design, id: string, about: Pick<RevisionHead, "by" | "name">): Promise<void> {
    return storage.putRevision(
      revisionOf(design, { id: around.newId(), document: id, when: around.now(), ...about }),
    );
  }

  function command(work: () => Promise<string | null>): Promise<string | null> {
    return openDocument.inTurn(() => work().catch(openDocument.refused));
  }

  return {
    revisions: (document) =>
      openDocument.inTurn(async () => {
        const heads = await storage.revisions(document).catch((error: unknown) => {
          openDocument.refused(error);
          return [];
        });
        return [...heads].sort((a, b) => b.when - a.when);
      }),

    readRevision: (id) =>
      openDocument.inTurn(() =>
        read(id).catch((error: unknown) => ({
          ok: false as const,
          problem: openDocument.refused(error),
          text: null,
        })),
      ),

    takeRevision: (name) =>
      command(async () => {
        const problem = whyNotName(name);
        if (problem !== null) return problem;
        await openDocument.saveAll(false);
        const { work, settled } = openDocument.session();
        if (!work || !settled) return "This design is not yet one of your own. Change something first.";
        await keep(settled, work.id, { by: "user", name: name.trim() });
        return null;
      }),

    nameRevision: (id, name) =>
      command(async () => {
        const problem = whyNotName(name);
        if (problem !== null) return problem;
        const stored = await storage.revision(id);
        if (!stored) return GONE;
        await storage.putRevision({ ...stored, head: { ...stored.head, name: name.trim() } });
        return null;
      }),

    removeRevision: (id) =>
      openDocument.inTurn(async () => {
        try {
          const stored = await storage.revision(id);
          await storage.dropRevisions([id]);
          return stored ?? null;
        } catch (error) {
          openDocument.refused(error);
          return null;
        }
      }),

    putBackRevision: (revision) =>
      command(async () => {
        await storage.putRevision(revision);
        return null;
      }),

    restoreRevision: (id) =>
      command(async () => {
        const reading = await read(id);
        if (!reading.ok) return `This revision cannot be read: ${reading.problem}`;
        await openDocument.saveAll(false);
        const { work, history } = openDocument.session();
        if (!work) return "This design is not yet one of your own. Change something first.";
        const present = presentOf(history());
        const patch = patchBetween(present, reading.design);
        if (!patch) return null;
        await keep(present, work.id, { by: "itself" });
        // What is the same stays the same object, so that only what changed is worked out and drawn.
        openDocument.put(withStep(history(), applyPatch(patch, present) ?? reading.design));
        await openDocument.saveAll(true);
        return null;
      }),
  };
}

function whyNotName(name: string): string | null {
  if (name.trim() === "") return "A revision needs a name.";
  if (name.length > MOST_NAME_LENGTH)
    return `A name has at most ${MOST_NAME_LENGTH} characters; this one has ${name.length}.`;
  return null;
}
