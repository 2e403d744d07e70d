import { useApp } from "../../../store/app.ts";
import { type CureRequest, useCures } from "../../../store/cures.ts";

/**
 * The same question about the document as it is now: a finding is looked up anew, since its figures may have
 * changed; one that is gone, or a change that was made to another state, is no longer asked about.
 */
export function currentCureRequest(complaint: CureRequest): CureRequest {
  const { design, report } = useApp.getState();
  if (useCures.getState().document === design) return complaint;
  const key = complaint.target?.id;
  const target = report.findings.find((f) => f.id === key);
  return target ? { target } : {};
}
