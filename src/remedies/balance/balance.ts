/**
 * Levels a riser or a tree: taps, pads, gains and slopes are chosen so that every outlet comes near to one
 * level, inside the limits and with the most even margin. Every choice is judged by the evaluator, not by a
 * formula beside it. A generator: each trial can be the last.
 */
import type { Design } from "../../design/design.ts";
import { setOption } from "../../design/edits/options.ts";
import { partById } from "../../design/lookup.ts";
import type { Finding } from "../../findings/finding.ts";
import { proofOf } from "../proof.ts";
import { everybodyServed } from "../served.ts";
import { type Site, siteOf } from "../site.ts";
import { type Aim, isReached, levelsOf, type PlaceLevel, penaltyOf, placesWithInput } from "./aim.ts";
import { type Knob, knobsOf } from "./knobs.ts";

/** One row of what was changed. */
export type KnobChange = {
  readonly part: string;
  readonly option: string;
  readonly before: number;
  readonly after: number;
  readonly isSetting: boolean;
};

export type Balance = {
  readonly tried: number;
  /** The best so far; the design itself while nothing better was found. */
  readonly design: Design;
  readonly changes: readonly KnobChange[];
  readonly before: readonly PlaceLevel[];
  readonly after: readonly PlaceLevel[];
  /** Every outlet inside the limits and all within the spread. */
  readonly reached: boolean;
  /** Findings that came with it, which a design without them would have spared; none is an error. */
  readonly caused: readonly Finding[];
};

const MAX_TRIALS = 600;
/** Improvements smaller than this are not worth another part. */
const WORTH = 0.05;

export function* balance(
  design: Design,
  aim: Aim,
  { maxTrials = MAX_TRIALS }: { readonly maxTrials?: number } = {},
): Generator<Balance, Balance, void> {
  const start = siteOf(design);
  const before = levelsOf(start, aim.service);
  const knobs = knobsOf(start, placesWithInput(start, before), aim.service);
  let best = start;
  let penalty = penaltyOf(before, aim);
  let tried = 0;
  const result = (): Balance => ({
    tried,
    design: best.design,
    changes: changesOf(design, best.design, knobs),
    before,
    after: levelsOf(best, aim.service),
    reached: isReached(levelsOf(best, aim.service), aim),
    caused: proofOf(start, best).caused,
  });

  // A tap near the head changes what all behind it get, so the round is repeated until nothing gets better.
  for (let improved = true; improved && tried < maxTrials; ) {
    improved = false;
    for (const move of movesOf(best.design, knobs, levelsOf(best, aim.service), aim)) {
      if (tried >= maxTrials) break;
      const changed = applied(best.design, move);
      if (!changed) continue;
      const site = siteOf(changed, best.evaluation);
      tried++;
      const now = penaltyOf(levelsOf(site, aim.service), aim);
      if (now < penalty - WORTH && isHarmless(start, site)) {
        best = site;
        penalty = now;
        improved = true;
        yield result();
        break;
      }
      if (tried % 20 === 0) yield result();
    }
  }
  return result();
}

/** Levelling must not cost anybody anything: no new error, nobody served worse. */
function isHarmless(start: Site, site: Site): boolean {
  return !proofOf(start, site).caused.some((f) => f.severity === "error") && everybodyServed(start, site);
}

type Move = readonly { readonly knob: Knob; readonly value: number }[];

/**
 * Moves worth trying, the most promising first: the part nearest to the worst outlet by what that outlet lacks,
 * all gains by what all lack, then every knob one step either way, then two together.
 */
function movesOf(
  design: Design,
  knobs: readonly Knob[],
  levels: readonly PlaceLevel[],
  aim: Aim,
): readonly Move[] {
  const at = (knob: Knob) => Number(partById(design, knob.part)?.options[knob.option] ?? 0);
  const to = (knob: Knob, value: number) => ({ knob, value: nearest(knob.values, value) });
  const worst = [...levels].sort(
    (a, b) => Math.abs(b.meanDbuv - aim.targetDbuv) - Math.abs(a.meanDbuv - aim.targetDbuv),
  );
  const own = worst.flatMap((level) =>
    knobs
      .filter((k) => k.part === level.part)
      .map((k): Move => [to(k, at(k) + level.meanDbuv - aim.targetDbuv)]),
  );
  const mean = levels.reduce((sum, l) => sum + l.meanDbuv, 0) / Math.max(1, levels.length);
  const gains = knobs.filter((k) => k.isGain).map((k): Move => [to(k, at(k) + aim.targetDbuv - mean)]);
  const steps = knobs.map((k) =>
    [stepped(k, at(k), -1), stepped(k, at(k), 1)].filter((v) => v !== undefined),
  );
  const single = knobs.flatMap((knob, i) => (steps[i] ?? []).map((value): Move => [{ knob, value }]));
  const pairs = knobs.flatMap((a, i) =>
    knobs.slice(i + 1).flatMap((b, j) =>
      (steps[i] ?? []).flatMap((x) =>
        (steps[i + 1 + j] ?? []).map(
          (y): Move => [
            { knob: a, value: x },
            { knob: b, value: y },
          ],
        ),
      ),
    ),
  );
  return [...gains, ...own, ...single, ...pairs];
}

function nearest(values: readonly number[], wanted: number): number {
  return values.reduce(
    (best, v) => (Math.abs(v - wanted) < Math.abs(best - wanted) ? v : best),
    values[0] ?? wanted,
  );
}

function stepped(knob: Knob, now: number, step: 1 | -1): number | undefined {
  return knob.values[knob.values.indexOf(now) + step];
}

function applied(design: Design, move: Move): Design | null {
  let changed = design;
  for (const { knob, value } of move) {
    const edit = setOption(changed, knob.part, knob.option, value);
    if (!edit.ok) return null;
    changed = edit.design;
  }
  return changed === design ? null : changed;
}

function changesOf(before: Design, after: Design, knobs: readonly Knob[]): readonly KnobChange[] {
  return knobs.flatMap(({ part, option, isSetting }) => {
    const was = partById(before, part)?.options[option];
    const is = partById(after, part)?.options[option];
    if (typeof was !== "number" || typeof is !== "number" || was === is) return [];
    return [{ part, option, before: was, after: is, isSetting }];
  });
}
