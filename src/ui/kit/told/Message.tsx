import type { Evaluation } from "../../../evaluate/evaluation.ts";
import type { Finding } from "../../../findings/finding.ts";
import { messageOf } from "../../../sentences/finding.ts";
import { useApp } from "../../../store/app.ts";

type Props = {
  readonly finding: Finding;
  /** The evaluation that it was found in, where that is not the one shown. */
  readonly evaluation?: Evaluation;
};

/** What a finding says, in the labels of its design. Redrawn only when the sentence changes. */
export function Message({ finding, evaluation }: Props) {
  return useApp((s) => messageOf(finding, evaluation ?? s.evaluation));
}
