/** A change worth trying, and what thinks of it. Whether it helps is for the evaluator to say. */
import type { Design } from "../design/design.ts";
import type { Finding } from "../findings/finding.ts";
import type { Site } from "./site.ts";

export type Candidate = {
  /** The idea behind it, for instance "phone-filter". */
  readonly idea: string;
  /** The part it is about. */
  readonly place: string;
  /** Unique among the candidates of a design: idea, parts and values. */
  readonly id: string;
  /** One line: what is to be done. */
  readonly title: string;
  /** One line: why it should help. */
  readonly reason: string;
  /** The design with the change; null where it cannot be made there. */
  readonly apply: (design: Design) => Design | null;
};

/** What one idea proposes for one finding. */
export type Idea = (site: Site, finding: Finding) => readonly Candidate[];

/** Puts a candidate together; `about` tells it from others of the same idea. */
export function candidate(
  idea: string,
  about: readonly [place: string, ...more: (string | number)[]],
  words: { readonly title: string; readonly reason: string },
  apply: Candidate["apply"],
): Candidate {
  return { idea, place: about[0], id: [idea, ...about].join(":"), ...words, apply };
}
