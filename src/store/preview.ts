/** A design looked at before it is taken: what it is, and what is new, changed and gone against the one at work. */
import type { Design, Part } from "../design/design.ts";
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { Report } from "../findings/finding.ts";
import { difference } from "../remedies/difference.ts";

/** What somebody wishes to look at. */
export type Showing = {
  readonly title: string;
  /** One more sentence, if there is one. */
  readonly about?: string;
  readonly design: Design;
  /** Whether it may be taken over; a fault that is only tried out may not. */
  readonly canApply: boolean;
  /** What taking it over does, where it is more than a change of the document. */
  readonly take?: () => void;
};

export type Preview = Showing & {
  readonly added: ReadonlySet<string>;
  readonly changed: ReadonlySet<string>;
  readonly removed: readonly Part[];
  /** What was worked out of the document, to come back to. */
  readonly aside: Aside;
};

export type Aside = { readonly evaluation: Evaluation; readonly report: Report };

export function previewOf(showing: Showing, aside: Aside): Preview {
  const { added, changed, removed } = difference(aside.evaluation.design, showing.design);
  return {
    ...showing,
    added: new Set(added.map((p) => p.id)),
    changed: new Set(changed.map((c) => c.after.id)),
    removed,
    aside,
  };
}
