/** What disturbs a carrier at a part because signals are not kept apart there: polarisations, inputs, satellites. */

import type { PartId } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { defaultOptions } from "../../parts/catalogue.ts";
import type { AnyOptions, Path } from "../../parts/contract.ts";
import { defectsOf, optionMeaning } from "../../parts/meanings.ts";
import type { Band } from "../../signal/band.ts";
import { undisturbed } from "../../signal/grid.ts";
import { takenByFeed, withCrosstalk } from "../../signal/leak.ts";
import { remembered } from "../../signal/remember.ts";
import type { Blamed } from "./culprit.ts";
import { type Stage, stageKey } from "./stages.ts";

export type LeakBy = "cross-polarisation" | "crosstalk" | "neighbours" | "rain";

export type Leak = {
  readonly by: LeakBy;
  readonly part: PartId;
  /** Its power over the carrier's. */
  readonly share: number;
  /** The part to take in hand, and what it does. */
  readonly culprit: Blamed;
  /** Of `share` so much would not be there with a usual, sound part in its place. */
  readonly beyond: number;
  /** By how much it keeps apart less than its kind usually does [dB]; absent where it is no matter of levels. */
  readonly short?: number;
};

const known = new WeakMap<PartRecord, Map<string, readonly Leak[]>>();

/** What leaks in at a stage, the strongest first. */
export function leaksAt(stage: Stage): readonly Leak[] {
  const ofRecord = remembered(known, stage.record, () => new Map<string, readonly Leak[]>());
  return remembered(ofRecord, stageKey(stage), () => {
    const found = stage.step.from === null ? inTheSky(stage) : [...atFeed(stage), ...atSwitch(stage)];
    return found.filter(({ share }) => share > 0).sort((a, b) => b.share - a.share);
  });
}

/** How much of what comes in at a turned LNB would go if the LNB stood right, over the carrier; 0 for any other part. */
export function shareByTurn(stage: Stage): number {
  if (!turnOf(stage)) return 0;
  const now = feedShare(stage, stage.record.options);
  return Math.max(0, now - feedShare(stage, straight(stage)));
}

/** Degrees by which an LNB is turned; undefined where that is no defect. */
export function turnOf({ record }: Stage): number | undefined {
  const key = optionMeaning(record.kind, "skew error");
  const defect = defectsOf(record.kind, record.options).find(({ option }) => option === key);
  return typeof defect?.value === "number" ? defect.value : undefined;
}

function straight({ record }: Stage): AnyOptions {
  const key = optionMeaning(record.kind, "skew error");
  return key === undefined ? record.options : { ...record.options, [key]: 0 };
}

/** The same LNB, straight and with the isolation and the kind of feed that are usual or needed. */
function usualFeed(stage: Stage): AnyOptions {
  const { kind } = stage.record;
  const usual = defaultOptions(kind);
  const keys = ["cross-polar isolation", "feed type"] as const;
  const made = keys.flatMap((means) => optionMeaning(kind, means) ?? []).map((key) => [key, usual[key]]);
  return { ...straight(stage), ...Object.fromEntries(made) };
}

function atFeed(stage: Stage): readonly Leak[] {
  const { record, step } = stage;
  const share = feedShare(stage, record.options);
  if (share === 0) return [];
  const blamed = (does: Blamed["does"], amount: number): Leak => ({
    by: "cross-polarisation",
    part: step.part,
    share,
    beyond: Math.max(0, share - feedShare(stage, usualFeed(stage))),
    culprit: { part: step.part, port: step.to, does, excessDb: 0, amount },
  });
  const arriving = arrivingAt(stage);
  const type = optionMeaning(record.kind, "feed type");
  const suits = arriving?.band.origin.circular ? "circular" : "linear";
  if (type !== undefined && record.options[type] !== suits) return [blamed("wrong polariser", 3)];
  const turnedDeg = turnOf(stage);
  if (turnedDeg !== undefined && shareByTurn(stage) > share / 2) return [blamed("turned", turnedDeg)];
  return [blamed("mixes polarisations", -10 * Math.log10(share))];
}

/** Power of other waves that a feed takes with the carrier, over the carrier's. */
function feedShare(stage: Stage, options: AnyOptions): number {
  const { record } = stage;
  const arriving = arrivingAt(stage);
  if (!arriving) return 0;
  const { band, i, beside } = arriving;
  const path = (record.kind.signal(options, { id: record.part.id, powered: true }).paths ?? []).find(
    (p) => p.from === stage.step.from && p.feed && p.takes?.polarisation === band.origin.polarisation,
  );
  // The carrier's own band is no other wave of the beam.
  const others = beside.filter((other) => other !== band);
  return path?.feed ? shareIn(takenByFeed(bare(band), others, path.feed), i) : 0;
}

function atSwitch(stage: Stage): readonly Leak[] {
  const { record, step } = stage;
  const arriving = arrivingAt(stage);
  const path = (record.treatment.paths ?? []).find((p) => p.crosstalk && leads(p, stage));
  if (!arriving || !path?.crosstalk) return [];
  const { from, isolationDb } = path.crosstalk;
  const others = from.map((input) => record.inputs[input]?.bands ?? []);
  const share = shareIn(withCrosstalk(bare(arriving.band), others, isolationDb), arriving.i);
  const culprit: Blamed = {
    part: step.part,
    port: step.to,
    does: "mixes inputs",
    excessDb: 0,
    amount: isolationDb,
  };
  const usualDb = usualIsolationDb(record);
  const short = Math.max(0, usualDb - isolationDb);
  const beyond = share * (1 - 10 ** (-short / 10));
  return [{ by: "crosstalk", part: step.part, share, beyond, culprit, short }];
}

const usualIsolation = new WeakMap<object, number>();

/** How far a usual switch of the kind keeps its inputs apart [dB]. */
function usualIsolationDb({ kind, part }: PartRecord): number {
  return remembered(usualIsolation, kind, () => {
    const { paths = [] } = kind.signal(defaultOptions(kind), { id: part.id, powered: true });
    return Math.max(0, ...paths.flatMap(({ crosstalk }) => crosstalk?.isolationDb ?? []));
  });
}

function leads(path: Path, { step }: Stage): boolean {
  return path.from === step.from && (path.to === step.to || path.to.startsWith("#"));
}

function inTheSky(stage: Stage): readonly Leak[] {
  const { record, step, carrier } = stage;
  const band = record.outputs[step.to]?.bands.find((b) => b.origin.key === carrier.origin);
  const i = band?.grid.index.indexOf(carrier.index) ?? -1;
  const neighbours = optionMeaning(record.kind, "neighbouring satellites");
  if (!band || i < 0 || neighbours === undefined) return [];
  const shareWith = (options: AnyOptions) => {
    const sent = record.kind.signal(options, { id: record.part.id, powered: true }).emits;
    const bands = sent?.find(({ port }) => port === step.to)?.bands ?? [];
    const alone = bands.find((b) => b.origin.key === carrier.origin);
    return alone ? shareIn(alone, i) : 0;
  };
  const all = shareIn(band, i);
  const byRain = shareWith({ ...record.options, [neighbours]: [] });
  const diameter = optionMeaning(record.kind, "diameter");
  const usual = diameter === undefined ? undefined : defaultOptions(record.kind)[diameter];
  const isSmall = diameter !== undefined && Number(record.options[diameter]) < Number(usual);
  // A dish of usual size hears its neighbours as any other does.
  const beyond = isSmall ? Math.max(0, all - shareWith({ ...record.options, [diameter]: usual })) : 0;
  const leak = (by: LeakBy, does: Blamed["does"], share: number): Leak => ({
    by,
    part: step.part,
    share,
    beyond: by === "neighbours" ? beyond : 0,
    culprit: { part: step.part, port: step.to, does, excessDb: 0, amount: -10 * Math.log10(share) },
  });
  return [leak("neighbours", "hears neighbours", Math.max(0, all - byRain)), leak("rain", "in rain", byRain)];
}

type Arrived = { readonly band: Band; readonly i: number; readonly beside: readonly Band[] };

/** The carrier where it comes in, and what comes in with it. */
function arrivingAt({ record, step, carrier }: Stage): Arrived | undefined {
  const beside = step.from === null ? [] : (record.inputs[step.from]?.bands ?? []);
  for (const band of beside) {
    const i = band.origin.key === carrier.origin ? band.grid.index.indexOf(carrier.index) : -1;
    if (i >= 0) return { band, i, beside };
  }
  return undefined;
}

/** Before anything disturbed it. */
function bare(band: Band): Band {
  return { ...band, interference: undisturbed(band.grid) };
}

function shareIn(band: Band, i: number): number {
  return (band.interference[i] ?? 0) / 10 ** ((band.level[i] ?? 0) / 10);
}
