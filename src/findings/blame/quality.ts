/** What spoils a C/N most, and whose fault that is. */
import type { PartId } from "../../design/design.ts";
import { settingsOf } from "../../design/settings.ts";
import type { Evaluation, Meeting } from "../../evaluate/evaluation.ts";
import { noiseFactor } from "../../rf/noise.ts";
import { remembered } from "../../signal/remember.ts";
import { type BandFacts, bandFactsOf } from "../bandFacts.ts";
import { isWanted } from "../collisions.ts";
import { extreme } from "../extreme.ts";
import type { Draft } from "../finding.ts";
import { withAmplified } from "./amplified.ts";
import { type About, asCulprit, type Suspect, worstOf } from "./choose.ts";
import type { Blamed, Misdeed } from "./culprit.ts";
import { type Leak, type LeakBy, leaksAt, shareByTurn, turnOf } from "./leaks.ts";
import { sourceOfOverload } from "./overload.ts";
import { placesServed, type ServedByOutput } from "./served.ts";
import { sharedLack } from "./sharedLack.ts";
import { lacking } from "./shortcomings.ts";
import { isAmplifier, type Stage, stagesTo } from "./stages.ts";

/** What disturbs a carrier most: noise, third-order products of an amplifier, or a foreign signal. */
export type Spoiler =
  | { readonly by: "noise" }
  /** `amplifiers`: how many on the way have a part in them. */
  | { readonly by: "products"; readonly part: PartId; readonly amplifiers: number }
  /** What a part should keep apart. */
  | { readonly by: LeakBy; readonly part: PartId }
  /** `part`: where it is first met; both absent where it cannot be followed. */
  | { readonly by: "foreign"; readonly signal?: BandFacts; readonly part?: PartId };

/** Whether it is something that a part should have kept apart. */
export function isLeak(spoiler: Spoiler): spoiler is { readonly by: LeakBy; readonly part: PartId } {
  return spoiler.by !== "noise" && spoiler.by !== "products" && spoiler.by !== "foreign";
}

/** A better noise figure than this is nobody's due [dB]: that of a good distribution amplifier, from memory. */
const USUAL_NOISE_FIGURE_DB = 5;

export type Quality = { readonly spoiler: Spoiler; readonly culprit?: Blamed };

export function blameForQuality(evaluation: Evaluation, draft: Draft<"low-carrier-to-noise">): Quality {
  const { at, facts, value = 0, limit = 0 } = draft;
  const { service, port } = at;
  if (!service || port === undefined) return { spoiler: facts.spoiler };
  const stages = stagesTo(evaluation, { part: at.part, port }, facts.worst);
  const missingDb = limit - value;
  const turned = turnedLnb(stages, missingDb);
  if (facts.figure !== "C/N" && facts.worst.cnDb > facts.worst.ciDb)
    return turned ?? disturbed(evaluation, stages) ?? { spoiler: facts.spoiler };
  const about = { missingDb, served: placesServed(evaluation, service, "C/N") };
  return graver(turned, withAmplified(blameForNoise(stages, about), stages));
}

/** An LNB that is turned so far that standing right would give at least half of what is missing. */
export function turnedLnb(stages: readonly Stage[], missingDb: number): Quality | undefined {
  const last = stages.at(-1);
  const total = last ? 10 ** (-last.step.cniDb / 10) : 0;
  if (!(total > 0)) return undefined;
  for (const stage of stages) {
    const turnedDeg = turnOf(stage);
    if (turnedDeg === undefined) continue;
    const excessDb = -10 * Math.log10(Math.max(1e-9, 1 - shareByTurn(stage) / total));
    if (excessDb <= 0 || excessDb < missingDb / 2) continue;
    const { part, to } = stage.step;
    return {
      spoiler: { by: "cross-polarisation", part },
      culprit: { part, port: to, does: "turned", excessDb, amount: turnedDeg },
    };
  }
  return undefined;
}

/** Of a turned LNB and a part that makes noise, the one that costs more. */
export function graver(turned: Quality | undefined, noisy: Blamed | undefined): Quality {
  if (turned?.culprit && turned.culprit.excessDb >= (noisy?.excessDb ?? 0)) return turned;
  return { spoiler: { by: "noise" }, ...(noisy ? { culprit: noisy } : {}) };
}

/** Noise over carrier added at each stage; a user band is as bad as the worst it holds. */
function shares(stages: readonly Stage[], ratioDb: (stage: Stage) => number): readonly number[] {
  const behind = stages.map((stage) => 10 ** (-ratioDb(stage) / 10));
  return behind.map((share, k) => Math.max(0, share - (behind[k - 1] ?? 0)));
}

/** What disturbs, over the carrier, added at each stage: by other signals, and by products of its own. */
function disturbances(evaluation: Evaluation, stages: readonly Stage[]): readonly number[] {
  const all = stages.map(({ step }) => 10 ** (-step.ciDb / 10));
  const products = stages.map(productsOf);
  const own = productShares(evaluation, stages);
  return stages.map((_, k) => {
    const [now = 0, before = 0] = [products[k], products[k - 1]];
    // Behind a channel stacker products from before go on as interference: nothing is added by that.
    const foreign = (all[k] ?? 0) - (all[k - 1] ?? 0) - Math.max(0, now - before);
    return (own[k] ?? 0) + Math.max(0, foreign);
  });
}

/** Third-order products over the carrier. */
function productsOf({ step }: Stage): number {
  return 10 ** (-step.imDb / 10);
}

/** Products over the carrier, each stage for its part: of the voltage where they are in step, in whatever order they stand. */
function productShares(evaluation: Evaluation, stages: readonly Stage[]): readonly number[] {
  const inStep = settingsOf(evaluation.design).cascade === "in step";
  const products = stages.map(productsOf);
  const most = Math.sqrt(Math.max(0, ...products));
  return products.map((now, k) => {
    const before = products[k - 1] ?? 0;
    return Math.max(0, inStep ? (Math.sqrt(now) - Math.sqrt(before)) * most : now - before);
  });
}

/** A stage with less than this share of what the worst one adds has no part in it. */
const COUNTS_FROM = 0.1;

export type ProductBlame = { readonly culprit: Blamed; readonly amplifiers: number };

/** The stage that adds most third-order products, or what drives it; and how many stages have a part in them. */
export function blameForProducts(evaluation: Evaluation, stages: readonly Stage[]): ProductBlame | undefined {
  const added = productShares(evaluation, stages);
  const most = Math.max(0, ...added);
  const stage = stages[added.indexOf(most)];
  if (!stage || most === 0) return undefined;
  const { part, to, imDb } = stage.step;
  return {
    culprit: sourceOfOverload(evaluation, stage.record) ?? {
      part,
      port: to,
      does: "overdriven",
      excessDb: 0,
      amount: imDb,
    },
    amplifiers: added.filter((share) => share >= most * COUNTS_FROM).length,
  };
}

/** The stage at which most interference comes in, and what it is there. */
export function disturbed(evaluation: Evaluation, stages: readonly Stage[]): Quality | undefined {
  const added = disturbances(evaluation, stages);
  const worst = added.indexOf(Math.max(...added));
  const stage = stages[worst];
  if (!stage || !(added[worst] ?? 0)) return undefined;
  const met = meetingsOf(stage);
  const foreign = met.reduce((sum, m) => sum + m.share, 0);
  const { part, to } = stage.step;
  const lost = { excessDb: 0, amount: stage.step.ciDb };
  const strongest = extreme(met, (m) => m.share)?.meeting;
  const [leak] = leaksAt(stage);
  if (leak && leak.share >= foreign && leak.share >= (added[worst] ?? 0) / 2)
    return {
      spoiler: { by: leak.by, part: leak.part },
      culprit: weakenedBefore(stages.slice(0, worst), leak) ?? leak.culprit,
    };
  if (!strongest || foreign < (added[worst] ?? 0) / 2) {
    const culprit = sourceOfOverload(evaluation, stage.record) ?? {
      part,
      port: to,
      does: "overdriven",
      ...lost,
    };
    const { amplifiers = 1 } = blameForProducts(evaluation, stages) ?? {};
    return { spoiler: { by: "products", part, amplifiers }, culprit };
  }
  const signal = bandFactsOf(strongest.other);
  const fromOutside = !isWanted(signal.service);
  return {
    spoiler: { by: "foreign", signal, part },
    culprit: fromOutside
      ? {
          part: signal.part,
          port: to,
          does: signal.service === "distant" ? "hears another" : "lets in",
          ...lost,
        }
      : { part, port: to, does: "brings together", ...lost },
  };
}

/** From so much on a lack of level counts beside other signals [dB]; a choice of this tool. */
const WEAKENED_DB = 3;

/** What makes a carrier weak before it comes beside others; undefined where what mixes them does worse. */
function weakenedBefore(before: readonly Stage[], { short: shortDb }: Leak): Blamed | undefined {
  const suspects = before.flatMap((stage): Suspect[] => {
    const shortcoming = stage.step.from === null ? undefined : lacking(stage);
    return shortcoming ? [{ stage, shortcoming }] : [];
  });
  const most = extreme(suspects, ({ shortcoming }) => shortcoming.excessDb);
  if (!most || shortDb === undefined || most.shortcoming.excessDb < WEAKENED_DB + shortDb) return undefined;
  return asCulprit(most);
}

type Met = { readonly meeting: Meeting; readonly share: number };

/** What the carrier meets at a stage, each with its power over the carrier's. */
function meetingsOf({ record, carrier }: Stage): readonly Met[] {
  return record.meetings.flatMap((meeting): Met[] => {
    const { victim, carriers, ciDb } = meeting;
    if (meeting.echo || victim.origin.key !== carrier.origin) return [];
    const n = carriers.findIndex((i) => victim.grid.index[i] === carrier.index);
    return n < 0 ? [] : [{ meeting, share: 10 ** (-(ciDb[n] ?? 0) / 10) }];
  });
}

/**
 * Whose noise it is. `behind`: noise over carrier that is added where the way ends, as by a tuner; `weak`: the places
 * that get too little level, where those count that lack it.
 */
export function blameForNoise(
  stages: readonly Stage[],
  about: About & { readonly behind?: number; readonly weak?: ServedByOutput },
): Blamed | undefined {
  const added = [...shares(stages, ({ step }) => step.cnDb), about.behind ?? 0];
  const total = added.reduce((sum, share) => sum + share, 0);
  if (!(total > 0)) return undefined;
  // All noise that is added behind a place where more level arrives counts for so much less.
  const fromHereOn = [...added];
  for (let k = added.length - 2; k >= 0; k--) fromHereOn[k] = (added[k] ?? 0) + (fromHereOn[k + 1] ?? 0);
  const restoredDb = (k: number, excessDb: number, does?: Misdeed) => {
    const stage = stages[k];
    // What an active part lacks is lacking behind its own noise; not so an attenuator at its input.
    const isBehind = stage && isActive(stage) && stage.step.from !== null && does !== "input attenuator";
    const from = isBehind ? k + 1 : k;
    const behind = fromHereOn[from] ?? 0;
    return -10 * Math.log10(1 - (behind / total) * (1 - 10 ** (-excessDb / 10)));
  };
  const suspects = stages.flatMap((stage, k): Suspect[] => {
    const shortcoming = lacking(stage);
    const all: Suspect[] = shortcoming
      ? [
          {
            stage,
            shortcoming: { ...shortcoming, excessDb: restoredDb(k, shortcoming.excessDb, shortcoming.does) },
          },
        ]
      : [];
    const unclean = uncleanDb(stage, (added[k] ?? 0) / total);
    if (unclean !== undefined)
      all.push({
        stage,
        shortcoming: { does: "unclean source", excessDb: unclean, amount: stage.step.cnDb },
      });
    const own = ownNoiseDb(stage, (added[k] ?? 0) / total);
    if (own)
      all.push({ stage, shortcoming: { does: "noisy", excessDb: own.restoredDb, amount: own.figureDb } });
    return all;
  });
  const clear = suspects.filter(({ shortcoming }) => shortcoming.excessDb >= about.missingDb / 4);
  return worstOf(clear, about) ?? firstWeak(stages, { added, total, restoredDb, about });
}

/** More than so much nobody gains from a cleaner source [dB]: what follows adds noise of its own. */
const CLEANEST_DB = 30;

/** What a clean source would bring where a network or a modulator hands its noise over [dB]; undefined for an aerial. */
function uncleanDb({ record, step }: Stage, share: number): number | undefined {
  if (step.from !== null || record.kind.trade.job !== "signal source") return undefined;
  return Math.min(CLEANEST_DB, -10 * Math.log10(Math.max(1e-9, 1 - share)));
}

function isActive({ record, step }: Stage): boolean {
  return (record.treatment.paths ?? []).some(
    (p) => p.noiseFigureDb !== undefined && (p.from === step.from || p.from.startsWith("#")),
  );
}

/** What a usual noise figure in its place would bring [dB]. */
function ownNoiseDb(
  { record, step }: Stage,
  share: number,
): { readonly restoredDb: number; readonly figureDb: number } | undefined {
  if (step.from === null) return undefined;
  const figureDb = Math.max(0, ...(record.treatment.paths ?? []).map((p) => p.noiseFigureDb ?? 0));
  if (figureDb === 0) return undefined;
  const usualDb = usualNoiseFigureDb(record);
  if (figureDb <= usualDb) return undefined;
  const left = (noiseFactor(usualDb) - 1) / (noiseFactor(figureDb) - 1);
  return { restoredDb: -10 * Math.log10(1 - share * (1 - left)), figureDb };
}

/** Noise figure of a usual part of the kind. */
function usualNoiseFigureDb({ kind, part }: Stage["record"]): number {
  return remembered(usual, kind, () => {
    const { paths = [] } = kind.signal(kind.options.parse({}), { id: part.id, powered: true });
    const figures = paths.flatMap((p) => p.noiseFigureDb ?? []);
    return figures.length > 0 ? Math.max(...figures) : USUAL_NOISE_FIGURE_DB;
  });
}

const usual = new WeakMap<object, number>();

/** Where nothing is wrong: the source, if most noise comes with it; else the greatest loss before an amplifier. */
function firstWeak(
  stages: readonly Stage[],
  noise: {
    readonly added: readonly number[];
    readonly total: number;
    readonly restoredDb: (k: number, excessDb: number) => number;
    readonly about: About & { readonly weak?: ServedByOutput };
  },
): Blamed | undefined {
  const source = stages[0];
  const losses = stages.flatMap((stage, k): Suspect[] => {
    const { gainDb } = stage.step;
    if (gainDb === null || gainDb >= 0 || isAmplifier(stage)) return [];
    const isCable = stage.record.kind.trade.job === "cable";
    return [
      {
        stage,
        shortcoming: {
          does: isCable ? "long cable" : "loses",
          excessDb: noise.restoredDb(k, -gainDb),
          amount: gainDb,
          ...(isCable ? { lengthM: Number(stage.record.options.lengthM) } : {}),
        },
      },
    ];
  });
  const loss = extreme(losses, (s) => s.shortcoming.excessDb);
  // A source whose own noise and weakness make most of it is not helped by mending what comes behind.
  const bySource =
    (noise.added[0] ?? 0) + (stages[1]?.record.kind.family === "convert" ? (noise.added[1] ?? 0) : 0);
  if (loss && loss.shortcoming.excessDb > 1 && bySource < noise.total / 2) {
    const found = asCulprit(loss);
    // A part that loses as much as its kind does loses nothing more than it should.
    const own = found.does === "loses" ? { ...found, excessDb: 0 } : found;
    return sharedLack(stages, noise.about.weak ?? noise.about.served) ?? own;
  }
  return (
    source &&
    asCulprit({
      stage: source,
      shortcoming: { does: "weak source", excessDb: 0, amount: source.step.levelDbuv },
    })
  );
}
