import { Footprints, X } from "lucide-react";
import { capital } from "../../sentences/explain/plainWords.ts";
import type { HighlightedPart } from "./highlight.ts";

/** How a card on the way looks: where one stands, where it is lost, or simply passed. */
export function walkLook({ isHere, trouble }: HighlightedPart): string {
  return [isHere ? "here" : "on", trouble?.kind ?? ""].join(" ").trim();
}

/** The same for those who do not see the mark. */
export function walkWords({ number, isHere }: HighlightedPart): string {
  return isHere ? `Step ${number}, you are here` : `Step ${number}`;
}

type Props = {
  /** Of a card that is named by its mark as well. */
  readonly part?: string;
  readonly lit: HighlightedPart;
  /** Where there is room for marks alone. */
  readonly isNarrow?: boolean;
};

/** The number of a card on the way, that one stands there, and what goes wrong there, in a word. */
export function WalkMark({ part, lit, isNarrow = false }: Props) {
  const { number, isHere, trouble } = lit;
  return (
    <span className="walk-mark" id={part === undefined ? undefined : `card-${part}-walk`}>
      <span className="unseen">{walkWords(lit)}</span>
      {isHere ? <Footprints size={12} aria-hidden="true" /> : null}
      <span aria-hidden="true">{number}</span>
      {trouble ? (
        <strong className={`walk-trouble ${trouble.kind}`}>
          <X size={12} strokeWidth={2.6} aria-hidden="true" />{" "}
          <span className={isNarrow ? "unseen" : undefined}>{capital(trouble.mark)}</span>
        </strong>
      ) : null}
    </span>
  );
}
