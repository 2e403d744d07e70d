/** The ways into the pane of faults, and looking at a fault on the canvas without putting it into the design. */
import type { Fault } from "../../remedies/faults/fault.ts";
import { useApp } from "../../store/app.ts";
import { showPane } from "../panes.ts";
import { type Subject, useFaultsView } from "./state.ts";

export function askWhatFails(subject: Subject): void {
  useApp.getState().closePreview();
  useFaultsView.setState({ mode: "what-if", subject, chosen: null });
  showPane("faults");
}

export function findFault(): void {
  useFaultsView.setState({ mode: "find" });
  showPane("faults");
}

/** The title by which a preview is known to be of this fault. */
export function previewTitle(fault: Fault): string {
  return `What if: ${fault.title}`;
}

export function showFault(fault: Fault): void {
  const { design, showPreview, frame } = useApp.getState();
  showPreview({
    title: previewTitle(fault),
    about: "Verdict and strips are those of this fault. It is only looked at: the design stays as it is.",
    design: fault.apply(design),
    canApply: false,
  });
  frame({ parts: fault.parts });
}

export function toggleFault(fault: Fault): void {
  const { preview, closePreview } = useApp.getState();
  if (preview?.title === previewTitle(fault)) closePreview();
  else showFault(fault);
}
