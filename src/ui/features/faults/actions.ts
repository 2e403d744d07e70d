/** Looking at a fault on the canvas without putting it into the design. */
import type { Design } from "../../../design/design.ts";
import type { Fault } from "../../../remedies/faults/fault.ts";
import { faultSentence } from "../../../sentences/faults/faultWords.ts";
import { useApp } from "../../../store/app.ts";
import type { Preview } from "../../../store/preview.ts";

/** Which fault a design was made to show. */
const shown = new WeakMap<Design, string>();

/** Whether a preview is of this fault. */
export function isShownFault(preview: Preview | null, fault: Fault): boolean {
  return preview !== null && shown.get(preview.design) === fault.id;
}

export function showFault(fault: Fault): void {
  const { design, showPreview, frame } = useApp.getState();
  const faulty = fault.apply(design);
  shown.set(faulty, fault.id);
  showPreview({
    title: `What if: ${faultSentence(design, fault)}`,
    about: "Verdict and strips are those of this fault. It is only looked at: the design stays as it is.",
    design: faulty,
    canApply: false,
  });
  frame({ parts: fault.parts });
}

export function toggleFault(fault: Fault): void {
  const { preview, closePreview } = useApp.getState();
  if (isShownFault(preview, fault)) closePreview();
  else showFault(fault);
}
