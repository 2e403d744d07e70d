/** What is proposed: a proved change with its work and its cost, and which of several are worth offering. */
import type { Design, PartId } from "../design/design.ts";
import type { Candidate } from "./candidate.ts";
import { type Cost, costOf } from "./cost.ts";
import type { CureStep, IdeaId } from "./cureStep.ts";
import { difference } from "./difference.ts";
import { type GivenUp, placesGivenUp } from "./givenUp.ts";
import type { PriceList } from "./prices.ts";
import type { Proof } from "./proof.ts";
import { byRank, isFarDearer, type SearchAim } from "./rank.ts";
import type { Site } from "./site.ts";
import { type Work, workOf } from "./work.ts";

/** A change that is proved: the evaluator has seen it work, and nothing else suffer. */
export type Proposal = {
  readonly id: string;
  /** What is to be done, in order; one to three steps. */
  readonly steps: readonly CureStep[];
  /** The design with all of it done. */
  readonly design: Design;
  /** What has to be done, part by part and wire by wire. */
  readonly work: readonly Work[];
  readonly proof: Proof;
  /** Receivers that could use more tuners before, though they did not serve. */
  readonly givesUp: readonly GivenUp[];
  readonly cost: Cost;
};

const MOST_PROPOSALS = 12;

/** What was found, with its work and its cost. */
export function proposalOf(
  start: Site,
  {
    steps,
    site,
    proof,
  }: { readonly steps: readonly Candidate[]; readonly site: Site; readonly proof: Proof },
  prices: PriceList,
): Proposal {
  const diff = difference(start.design, site.design);
  const work = workOf(diff, prices);
  return {
    id: steps.map((s) => s.id).join(" + "),
    steps: steps.map((s) => s.step),
    design: site.design,
    work,
    proof,
    givesUp: placesGivenUp(start, site),
    cost: costOf(diff, prices, work),
  };
}

/** Whether nothing of what is sought is left. */
export function isWhole(proof: Proof, aim: SearchAim): boolean {
  if (aim === "one finding") return true;
  return proof.errorsLeft === 0 && (aim === "errors" || proof.warningsLeft === 0);
}

/** Adds a proposal, unless a better one does the same; drops those that it makes needless. */
export function withProposal(
  proposals: readonly Proposal[],
  one: Proposal,
  { aim, culprits }: { readonly aim: SearchAim; readonly culprits: ReadonlySet<PartId> },
): readonly Proposal[] {
  const putRight = (p: Proposal) => isWhole(p.proof, aim) && isPutRight(p, culprits);
  const ranked = [...proposals, one].sort(byRank(aim));
  const hasWhole = ranked.some((p) => isWhole(p.proof, aim));
  return ranked
    .filter((p, i) => !ranked.slice(0, i).some((other) => isNeedless(p, other) || isFarDearer(p, other)))
    .filter((p) => !ranked.some((better) => p !== better && putRight(better) && isWorkaround(p, better)))
    .filter((p) => !hasWhole || isWhole(p.proof, aim))
    .slice(0, MOST_PROPOSALS);
}

/** Ideas that put right what is wrong with a part or a lead, instead of making up for it elsewhere. */
const PUTS_RIGHT: readonly IdeaId[] = [
  "mend",
  "plug-in",
  "swap-leads",
  "other-socket",
  "other-output",
  "supply-on",
  "sound-joint",
  "pad-away",
  "input-pad",
  "block-away",
  "filter-before",
];
/** One tap for another, or several: which of the two is the better way stays the installer's choice. */
const TAPS: readonly IdeaId[] = ["tap-value", "graded-taps"];

/** What costs no more than this is done before anything else is bought or turned [min]. */
const QUICK_MINUTES = 15;

/** A quick hand on what is wrong: a setting or a lead put right, or the very tap that is named exchanged. */
function isPutRight({ steps, proof, cost, givesUp }: Proposal, culprits: ReadonlySet<PartId>): boolean {
  const [only] = steps;
  if (steps.length > 1 || !only || proof.caused.length > 0 || givesUp.length > 0) return false;
  if (only.idea === "tap-value") return culprits.has(only.place);
  return PUTS_RIGHT.includes(only.idea) && cost.partsPrice === 0 && cost.workMinutes <= QUICK_MINUTES;
}

/** Makes up elsewhere for what is wrong, and leaves no more in order than putting it right does. */
function isWorkaround({ steps, proof }: Proposal, better: Proposal): boolean {
  return (
    better.proof.warningsLeft <= proof.warningsLeft &&
    better.proof.edgesLeft <= proof.edgesLeft &&
    steps.every(
      (s) =>
        !PUTS_RIGHT.includes(s.idea) && !(better.steps[0]?.idea === "tap-value" && TAPS.includes(s.idea)),
    )
  );
}

/** The same cure at the same parts with another value, or with something on top that cures no more. */
function isNeedless(p: Proposal, better: Proposal): boolean {
  const known = new Set(p.steps.map((s) => `${s.idea}@${s.place}`));
  return (
    better.proof.errorsLeft <= p.proof.errorsLeft &&
    better.steps.every((s) => known.has(`${s.idea}@${s.place}`))
  );
}
