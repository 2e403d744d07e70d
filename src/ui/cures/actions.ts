/** What is done from the cures: looking at a proposal, taking it over, keeping it beside the present state. */
import type { Design } from "../../design/design.ts";
import { done } from "../../design/edits/edit.ts";
import { addVariant } from "../../design/edits/variants.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Proposal } from "../../remedies/search.ts";
import { stepTitle } from "../../sentences/cures/step.ts";
import { namesIn } from "../../sentences/cures/told.ts";
import { useApp } from "../../store/app.ts";
import { type Complaint, useCures } from "../../store/cures.ts";
import { usePrices } from "../../store/prices.ts";
import { plural } from "../../words/plural.ts";
import { showPane } from "../panes.ts";
import { freshName } from "../variants/actions.ts";
import { placed } from "./placed.ts";

/** Opens the pane and begins to search. */
export async function findCures(complaint: Complaint = {}): Promise<void> {
  showPane("cures");
  // Ranked by the user's own prices, so these come first.
  await usePrices.getState().load();
  useCures.getState().start(complaint);
}

export function findCuresFor(finding: Finding): void {
  void findCures({ target: finding });
}

/** The design of a proposal as it is shown and taken over. */
export function designOf(proposal: Proposal): Design {
  return placed(proposal.design, useCures.getState().document ?? proposal.design);
}

/** What is to be done in one line; where it is not the whole cure, it says so. */
export function titleOf({ steps, design, proof }: Proposal): string {
  const names = namesIn(useCures.getState().document ?? design, design);
  const title = steps.map((s) => stepTitle(s, names)).join("; then ");
  return proof.errorsLeft === 0
    ? title
    : plural(proof.errorsLeft, {
        one: (n) => `${title} (leaves ${n} error)`,
        other: (n) => `${title} (leaves ${n} errors)`,
      });
}

/** Shows a proposal on the canvas, or puts it away again. */
export function togglePreview(proposal: Proposal): void {
  const { preview, showPreview, closePreview, frame } = useApp.getState();
  const design = designOf(proposal);
  if (preview?.design === design) {
    closePreview();
    return;
  }
  showPreview({ title: titleOf(proposal), design, canApply: true });
  const shown = useApp.getState().preview;
  if (shown) frame({ parts: [...shown.added, ...shown.changed] });
}

/** Takes a proposal over as one undo step. */
export function applyProposal(proposal: Proposal): void {
  const { closePreview, change, notify } = useApp.getState();
  closePreview();
  if (change(done(designOf(proposal)))) notify(`Done: ${titleOf(proposal)}.`, "info", { undoable: true });
}

/** Goes on in a new variant with the proposal in it; the present state rests beside it. */
export function keepAsVariant(proposal: Proposal): void {
  const { closePreview, design, change, notify } = useApp.getState();
  closePreview();
  const name = freshName(design);
  if (change(addVariant(design, name, designOf(proposal))))
    notify(`Now at work on variant “${name}”; what was before rests beside it.`, "info", { undoable: true });
}
