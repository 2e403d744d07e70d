/** A change worth trying. Whether it helps is for the evaluator to say. */
import type { Design, PartId } from "../design/design.ts";
import type { Finding } from "../findings/finding.ts";
import type { CureStep, FactsByIdea, IdeaId } from "./cureStep.ts";
import type { Site } from "./site.ts";

export type Candidate = {
  /** What is to be done, as facts. */
  readonly step: CureStep;
  /** Unique among the candidates of a design: idea, parts and values. */
  readonly id: string;
  /** How many places later than others of its idea it is tried: what little speaks for. */
  readonly doubt?: number;
  /** The design with the change; null where it cannot be made there. */
  readonly apply: (design: Design) => Design | null;
};

/** What one idea proposes for one finding. */
export type Idea = (site: Site, finding: Finding) => readonly Candidate[];

/** Puts a candidate together; `about` tells it from others of the same idea. */
export function candidate<I extends IdeaId>(
  idea: I,
  about: readonly [place: PartId, ...more: (string | number)[]],
  facts: FactsByIdea[I],
  apply: Candidate["apply"],
): Candidate {
  // Idea and facts belong together by the signature; the compiler cannot pair them in a union.
  const step = { idea, place: about[0], facts } as unknown as CureStep;
  return { step, id: [idea, ...about].join(":"), apply };
}
