/** What is done from the cures: looking at a proposal, taking it over, keeping it beside the present state. */
import { addVariant } from "../../design/edits/variants.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Proposal } from "../../remedies/search.ts";
import { useApp } from "../../store/app.ts";
import { type Complaint, useCures } from "../../store/cures.ts";
import { usePrices } from "../../store/prices.ts";
import { showPane } from "../panes.ts";
import { freshName } from "../variants/actions.ts";

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

export function titleOf(proposal: Proposal): string {
  return proposal.steps.map((s) => s.title).join("; then ");
}

/** Shows a proposal on the canvas, or puts it away again. */
export function togglePreview(proposal: Proposal): void {
  const { preview, showPreview, closePreview, frame } = useApp.getState();
  if (preview?.design === proposal.design) {
    closePreview();
    return;
  }
  showPreview({ title: titleOf(proposal), design: proposal.design, canApply: true });
  const shown = useApp.getState().preview;
  if (shown) frame({ parts: [...shown.added, ...shown.changed] });
}

/** Takes a proposal over as one undo step. */
export function applyProposal(proposal: Proposal): void {
  const { closePreview, change, notify } = useApp.getState();
  closePreview();
  if (change({ ok: true, design: proposal.design, notes: [] }))
    notify(`Done: ${titleOf(proposal)}.`, "info", { undoable: true });
}

/** Goes on in a new variant with the proposal in it; the present state rests beside it. */
export function keepAsVariant(proposal: Proposal): void {
  const { closePreview, design, change, notify } = useApp.getState();
  closePreview();
  const name = freshName(design);
  if (change(addVariant(design, name, proposal.design)))
    notify(`Now at work on variant “${name}”; what was before rests beside it.`, "info", { undoable: true });
}
