import { Footprints, X } from "lucide-react";
import { capital } from "../../sentences/explain/plainWords.ts";
import type { HighlightedPart } from "./highlight.ts";

/** How a card on the way looks: where one stands, where it is lost, or simply passed. */
export function walkLook({ isHere, trouble }: HighlightedPart): string {
  return [isHere ? "here" : "on", trouble?.kind ?? ""].join(" ").trim();
}

/** The number of a card on the way, that one stands there, and what goes wrong there, in a word. */
export function WalkMark({ part, lit }: { readonly part: string; readonly lit: HighlightedPart }) {
  const { number, isHere, trouble } = lit;
  return (
    <span className="walk-mark" id={`card-${part}-walk`}>
      <span className="unseen">{isHere ? `Step ${number}, you are here` : `Step ${number}`}</span>
      {isHere ? <Footprints size={12} aria-hidden="true" /> : null}
      <span aria-hidden="true">{number}</span>
      {trouble ? (
        <strong className={`walk-trouble ${trouble.kind}`}>
          <X size={12} strokeWidth={2.6} aria-hidden="true" /> {capital(trouble.mark)}
        </strong>
      ) : null}
    </span>
  );
}
