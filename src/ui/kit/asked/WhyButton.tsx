import { ChevronDown, ChevronUp } from "lucide-react";
import type { Finding } from "../../../findings/finding.ts";
import { Message } from "../told/Message.tsx";
import { setExplained } from "./explained.ts";

/** Opens and closes the explanation of a finding. */
export function WhyButton({
  finding,
  isOpen,
  controls,
}: {
  readonly finding: Finding;
  readonly isOpen: boolean;
  /** Id of what it opens. */
  readonly controls: string;
}) {
  return (
    <button
      type="button"
      className="why-button"
      aria-expanded={isOpen}
      aria-controls={isOpen ? controls : undefined}
      onClick={() => setExplained(finding, !isOpen)}
    >
      Why?
      <span className="unseen">
        {" "}
        <Message finding={finding} />
      </span>
      {isOpen ? <ChevronUp size={14} aria-hidden /> : <ChevronDown size={14} aria-hidden />}
    </button>
  );
}
