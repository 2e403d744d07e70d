/** What is done from the cures: looking at a proposal, taking it over, keeping it beside the present state. */
import type { Design } from "../../../design/design.ts";
import { done } from "../../../design/edits/edit.ts";
import { addVariant } from "../../../design/edits/variants.ts";
import { freshVariantName } from "../../../design/variants.ts";
import type { Proposal } from "../../../remedies/proposal.ts";
import { cureTitle } from "../../../sentences/cures/title.ts";
import { useApp } from "../../../store/app.ts";
import { useCures } from "../../../store/cures.ts";
import { withPlacedCards } from "./placedCards.ts";

/** The design of a proposal as it is shown and taken over. */
export function proposalDesign(proposal: Proposal): Design {
  return withPlacedCards(proposal.design, useCures.getState().document ?? proposal.design);
}

/** What is to be done, in one line. */
export function titleOf(proposal: Proposal): string {
  return cureTitle(proposal, useCures.getState().document ?? proposal.design);
}

/** Takes a proposal over as one undo step. */
export function applyProposal(proposal: Proposal): void {
  const { closePreview, change, notify } = useApp.getState();
  closePreview();
  if (change(done(proposalDesign(proposal))))
    notify(`Done: ${titleOf(proposal)}.`, "info", { undoable: true });
}

/** Goes on in a new variant with the proposal in it; the present state rests beside it. */
export function keepAsVariant(proposal: Proposal): void {
  const { closePreview, design, change, notify } = useApp.getState();
  closePreview();
  const name = freshVariantName(design);
  if (change(addVariant(design, name, proposalDesign(proposal))))
    notify(`Now active: variant “${name}”; the previous design is kept as a variant.`, "info", {
      undoable: true,
    });
}
