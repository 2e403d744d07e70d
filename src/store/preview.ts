/** A design looked at before it is taken: what it is, and what is new, changed and gone against the one at work. */

import type { Design, Part } from "../design/design.ts";
import { difference } from "../remedies/difference.ts";
import type { EvaluatedDesign } from "../remedies/faults/symptoms.ts";

/** What somebody wishes to look at. */
export type PreviewRequest = {
  readonly title: string;
  /** One more sentence, if there is one. */
  readonly about?: string;
  readonly design: Design;
  /** Whether it may be taken over; a fault that is only tried out may not. */
  readonly canApply: boolean;
  /** What taking it over does, where it is more than a change of the document. */
  readonly take?: () => void;
};

export type Preview = PreviewRequest & {
  readonly added: ReadonlySet<string>;
  readonly changed: ReadonlySet<string>;
  readonly removed: readonly Part[];
  /** What was worked out of the document, to come back to. */
  readonly document: EvaluatedDesign;
};

export function previewOf(showing: PreviewRequest, document: EvaluatedDesign): Preview {
  const { added, changed, removed } = difference(document.evaluation.design, showing.design);
  return {
    ...showing,
    added: new Set(added.map((p) => p.id)),
    changed: new Set(changed.map((c) => c.after.id)),
    removed,
    document,
  };
}
