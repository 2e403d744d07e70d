import type { Verdict } from "../../../findings/finding.ts";
import { verdictSentence } from "../../../sentences/verdict.ts";
import { useApp } from "../../../store/app.ts";
import { stateLook } from "../../kit/told/stateLook.ts";

/** How a receiver or an outlet stands, with mark and sentence. */
export function VerdictLine({ verdict }: { readonly verdict: Verdict }) {
  const sentence = useApp((s) => verdictSentence(verdict, s.evaluation));
  const { Icon, word, tone } = stateLook(verdict);
  return (
    <p className={`state ${tone}`}>
      <Icon size={16} role="img" aria-label={word} /> {sentence}
    </p>
  );
}
