/**
 * The search for cures: changes that come to mind for the findings are tried by the evaluator, alone and in
 * combinations of up to three, and only those that it proves are proposed. A generator: whoever runs it sees
 * each trial go by and may stop at any of them.
 */
import type { Design } from "../design/design.ts";
import type { Finding } from "../findings/finding.ts";
import { openFindings, targetsOf, withCauses } from "./aims.ts";
import type { Candidate } from "./candidate.ts";
import { candidatesFor } from "./candidates/index.ts";
import { costOf } from "./cost.ts";
import { difference } from "./difference.ts";
import { placesGivenUp } from "./givenUp.ts";
import type { PriceList } from "./prices.ts";
import { countOf, type Proof, prove } from "./proof.ts";
import { isWhole, type Proposal, proposalOf, withProposal } from "./proposal.ts";
import { type SearchAim, troubleOf } from "./rank.ts";
import { isOfNewPart, isSecondThought, stepsWith } from "./secondThought.ts";
import { signature } from "./signature.ts";
import { type Site, siteOf } from "./site.ts";

export type SearchOptions = {
  /** The finding to be cured; absent: all errors, or all warnings where there is no error. */
  readonly target?: Finding;
  readonly prices: PriceList;
  /** Most steps of a combination. */
  readonly maxDepth?: 1 | 2 | 3;
  /** Most designs to try. */
  readonly maxTrials?: number;
};

export type SearchProgress = {
  readonly tried: number;
  /** Best first; the same list while none was added. */
  readonly proposals: readonly Proposal[];
};

const MAX_TRIALS = 150;
/** So many whole cures are choice enough: longer combinations are not sought any more. */
const ENOUGH = 3;
/** A whole cure of so little work leaves no longer one to be sought [min]. */
const LITTLE_MINUTES = 20;
/** Trials that are still made once there is choice enough: one of them may be better. */
const AFTER_ENOUGH = 30;
/** So much work and money counts as much as one place further down among the ideas: cheap pairs go before dear singles. */
const TROUBLE_PER_PLACE = 15;
const MOST_PLACES = 12;

/** A state of the design on the way: what was done so far, and what came of it. */
type Node = {
  readonly site: Site;
  readonly steps: readonly Candidate[];
  /** Where it was tried among its siblings: likelier ones come first. */
  readonly priority: number;
};

type Thought = { readonly node: Node; readonly candidate: Candidate; readonly priority: number };

type Trial = Thought & { readonly changed: Design };

/**
 * What waits for its turn: a state of which nobody has asked yet what comes to mind, a thought whose trouble is not known
 * yet, or a change to be tried. The first two stand where the earliest of what may come of them would stand, so that
 * nothing is thought through before its turn comes.
 */
type Waiting =
  | { readonly what: "state"; readonly node: Node; readonly priority: number }
  | ({ readonly what: "thought" } & Thought)
  | ({ readonly what: "trial" } & Trial);

export function* search(
  design: Design,
  options: SearchOptions,
): Generator<SearchProgress, SearchProgress, void> {
  const { prices, maxDepth = 3, maxTrials = MAX_TRIALS } = options;
  const start = siteOf(design);
  const targets = targetsOf(start, options.target);
  const seen = new Set([signature(design)]);
  const aim = aimOf(options.target, targets);
  const culprits = new Set(start.report.causes.map(({ root }) => root.parts[0]));
  const queue: Waiting[] = [];
  let progress: SearchProgress = { tried: 0, proposals: [] };
  if (targets.length === 0) return progress;

  const expand = (node: Node): readonly Waiting[] => {
    const open = openFindings(start, node.site, targets);
    const wanted = options.target ? withCauses(node.site, open) : open;
    return candidatesFor(node.site, wanted).flatMap((candidate, i): readonly Waiting[] => {
      const { step } = candidate;
      if (isOfNewPart(design, step) || node.steps.some((s) => isSecondThought(s.step, step))) return [];
      return [{ what: "thought", node, candidate, priority: node.priority + i + (candidate.doubt ?? 0) }];
    });
  };
  const weigh = ({ node, candidate, priority }: Thought): readonly Waiting[] => {
    const changed = applied(candidate, node.site.design);
    if (!changed || seen.has(signature(changed))) return [];
    const trouble = troubleOf(costOf(difference(node.site.design, changed), prices));
    const places = Math.min(MOST_PLACES, trouble / TROUBLE_PER_PLACE);
    return [{ what: "trial", node, candidate, changed, priority: priority + places }];
  };
  const nextTrial = (): Trial | undefined => {
    for (;;) {
      const next = queue.shift();
      if (!next || next.what === "trial") return next;
      queue.push(...(next.what === "state" ? expand(next.node) : weigh(next)));
      queue.sort((a, b) => a.priority - b.priority);
    }
  };
  const wait = (node: Node) => {
    queue.push({ what: "state", node, priority: node.priority });
    queue.sort((a, b) => a.priority - b.priority);
  };
  wait({ site: start, steps: [], priority: 0 });

  let after = 0;
  while (progress.tried < maxTrials && after < AFTER_ENOUGH) {
    const trial = nextTrial();
    if (!trial) break;
    const { changed } = trial;
    const mark = signature(changed);
    if (seen.has(mark)) continue;
    seen.add(mark);
    const site = siteOf(changed, trial.node.site.evaluation);
    progress = { ...progress, tried: progress.tried + 1 };
    const steps = stepsWith(trial.node.steps, trial.candidate);
    const proof = prove(start, site, targets);
    if (proof) {
      const found = shortest({ start, targets, steps, site, proof }, aim);
      progress = {
        tried: progress.tried + found.tried,
        proposals: withProposal(progress.proposals, proposalOf(start, found, prices), { aim, culprits }),
      };
    }
    const isDone = proof !== null && isWhole(proof, aim);
    const whole = progress.proposals.filter((p) => isWhole(p.proof, aim));
    const isEnough = whole.length >= ENOUGH || whole.some((p) => p.cost.workMinutes <= LITTLE_MINUTES);
    if (!isDone && !isEnough && steps.length < maxDepth && isHopeful(start, site))
      wait({ site, steps, priority: trial.priority + detour(start, site) });
    if (isEnough) after++;
    yield progress;
  }
  return progress;
}

/** The design with a step taken; null where it does not fit a design that other steps have changed. */
function applied(step: Candidate, design: Design): Design | null {
  try {
    return step.apply(design);
  } catch {
    // Thought of for a part that is another one now: whatever it trips over, it has no place here.
    return null;
  }
}

function aimOf(target: Finding | undefined, targets: readonly Finding[]): SearchAim {
  if (target) return "one finding";
  return targets.some((t) => t.severity === "error") ? "errors" : "warnings";
}

/** A step that makes much more trouble than it was to cure leads nowhere. */
function isHopeful(start: Site, site: Site): boolean {
  return countOf(site, "error") <= countOf(start, "error") + 2;
}

/** How much later than its siblings a further step is tried: the sooner, the more is cured already. */
function detour(start: Site, site: Site): number {
  const errors = Math.max(1, countOf(start, "error"));
  return 4 + 8 * Math.min(1.5, countOf(site, "error") / errors);
}

type Found = {
  readonly steps: readonly Candidate[];
  readonly site: Site;
  readonly proof: Proof;
  readonly tried: number;
};

/** Leaves out every step without which the rest is proved to cure as much. */
function shortest(
  o: Omit<Found, "tried"> & { readonly start: Site; readonly targets: readonly Finding[] },
  aim: SearchAim,
): Found {
  let best: Found = { steps: o.steps, site: o.site, proof: o.proof, tried: 0 };
  for (const left of o.steps) {
    if (best.steps.length < 2) break;
    const steps = best.steps.filter((s) => s !== left);
    const design = steps.reduce<Design | null>((d, s) => d && applied(s, d), o.start.design);
    if (!design) continue;
    const site = siteOf(design, best.site.evaluation);
    const proof = prove(o.start, site, o.targets);
    const isAsGood =
      proof !== null &&
      proof.errorsLeft <= best.proof.errorsLeft &&
      (aim !== "warnings" || proof.warningsLeft <= best.proof.warningsLeft) &&
      placesGivenUp(o.start, site).length <= placesGivenUp(o.start, best.site).length;
    best = isAsGood ? { steps, site, proof, tried: best.tried + 1 } : { ...best, tried: best.tried + 1 };
  }
  return best;
}
