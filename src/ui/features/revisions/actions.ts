/** What is done with a revision: looking at it, comparing it with the present state, going back to it. */
import type { Design } from "../../../design/design.ts";
import { activeName, variantDesign } from "../../../design/variants.ts";
import { useApp } from "../../../store/app.ts";
import type { RevisionHead } from "../../../store/documents/documentStorage.ts";
import { type Opened, useDocuments } from "../../../store/documents/documents.ts";
import { focusPreview } from "../../canvas/preview/focus.ts";
import { compareWithFormer } from "../../kit/asked/compared.ts";
import { openDialog } from "../../kit/panes.ts";
import { revisionWords } from "./days.ts";

/** Why a revision cannot be used, with the text that lies there, if any. */
export type Unreadable = Extract<Opened, { readonly ok: false }>;

/** Shows a revision on the canvas; these yield null, or why not. */
export async function lookAtRevision(head: RevisionHead): Promise<Unreadable | null> {
  const opened = await read(head);
  if (!opened.ok) return opened;
  openDialog(null);
  useApp.getState().showPreview({
    title: revisionWords(head),
    about: "Apply restores this state. The present one is kept as a revision.",
    design: opened.design,
    canApply: true,
    take: () => void restoreOrTell(head),
  });
  focusPreview();
  return null;
}

/** The before and after, with the revision before and the present state after. */
export async function compareRevision(head: RevisionHead): Promise<Unreadable | null> {
  const opened = await read(head);
  if (!opened.ok) return opened;
  compareWithFormer(sameVariant(opened.design, useApp.getState().design), revisionWords(head));
  return null;
}

/** Goes back to a revision as one undo step; yields null, or a sentence that says why not. */
export async function restoreRevision(head: RevisionHead): Promise<string | null> {
  const before = useApp.getState().design;
  const problem = await useDocuments.getState().restoreRevision(head.id);
  if (problem !== null) return problem;
  openDialog(null);
  const { design, notify } = useApp.getState();
  if (design === before)
    notify(`The design is the same as in “${revisionWords(head)}”: nothing was changed.`);
  else
    notify(`Restored: ${revisionWords(head)}. The state before is kept as a revision.`, "info", {
      undoable: true,
    });
  return null;
}

async function read(head: RevisionHead): Promise<Opened> {
  const opened = await useDocuments.getState().readRevision(head.id);
  // Where there is no text, the sentence is about the storage.
  if (opened.ok || opened.text === null) return opened;
  return { ...opened, problem: `This revision cannot be read. ${opened.problem}` };
}

async function restoreOrTell(head: RevisionHead): Promise<void> {
  const problem = await restoreRevision(head);
  if (problem !== null) useApp.getState().notify(problem, "error");
}

/** How the variant that is at work now was then; where there was none of that name, what was at work then. */
function sameVariant(then: Design, now: Design): Design {
  return variantDesign(then, activeName(now)) ?? then;
}
