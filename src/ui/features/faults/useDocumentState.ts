import { useMemo } from "react";
import type { EvaluatedDesign } from "../../../remedies/faults/symptoms.ts";
import { useApp } from "../../../store/app.ts";

/** The document with all that is known of it, also while a preview is shown in its place. */
export function useDocumentState(): EvaluatedDesign {
  const evaluation = useApp((s) => s.preview?.document.evaluation ?? s.evaluation);
  const report = useApp((s) => s.preview?.document.report ?? s.report);
  return useMemo(() => ({ evaluation, report }), [evaluation, report]);
}
