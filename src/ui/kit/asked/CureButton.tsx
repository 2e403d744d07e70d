import { Search } from "lucide-react";
import type { Finding } from "../../../findings/finding.ts";
import { CURABLE_RULES } from "../../../remedies/candidates/curable.ts";
import { useApp } from "../../../store/app.ts";
import { Message } from "../told/Message.tsx";
import { findCures, findCuresFor } from "./findCures.ts";

const curable = new Set<string>(CURABLE_RULES);

/** At a finding: looks for changes that cure it. Not in a preview, whose findings are not those of the design. */
export function CureButton({ finding }: { readonly finding: Finding }) {
  const isPreview = useApp((s) => s.preview !== null);
  if (isPreview || !curable.has(finding.rule)) return null;
  return (
    <button type="button" className="button small" onClick={() => findCuresFor(finding)}>
      <Search size={14} aria-hidden /> Find cures
      <span className="unseen">
        {" "}
        for: <Message finding={finding} />
      </span>
    </button>
  );
}

/** For the whole design, while something is wrong with it. */
export function CureAllButton() {
  const isWrong = useApp((s) => s.preview === null && s.report.findings.some((f) => f.severity !== "note"));
  if (!isWrong) return null;
  return (
    <button type="button" className="button main" onClick={() => void findCures()}>
      <Search size={16} aria-hidden /> Find cures
    </button>
  );
}
