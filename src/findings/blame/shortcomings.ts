/** How far a part on the way falls short of a sound and fitting one, or gives more than one. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { AnyOptions, Path } from "../../parts/contract.ts";
import type { FieldMeta } from "../../parts/fields.ts";
import { fieldMeta } from "../../parts/fields.ts";
import { defectsOf, describedOptions, doesCount, optionMeaning } from "../../parts/meanings.ts";
import { ALL_ROUND, AS_LISTED } from "../../parts/transmitters.ts";
import type { Origin } from "../../signal/carrier.ts";
import { gainDbAt } from "../../signal/gain.ts";
import { feedGainDb } from "../../signal/leak.ts";
import { remembered } from "../../signal/remember.ts";
import type { Blamed, Misdeed } from "./culprit.ts";
import type { Stage } from "./stages.ts";

/** A run that nobody calls long [m]; usual in a house, from memory. */
const USUAL_RUN_M = 30;
/** What an end plate loses to its sockets, where a through plate stands in its place [dB]; typical, from memory. */
const END_PLATE_DB = 4;
/** What a diplexer loses where a combiner without filters stands [dB]; typical, from memory. */
const FILTERED_DB = 1.2;
/** An aerial is no weak one that gives this much less than in a good place [dB]; a choice of this tool. */
const NOT_YET_WEAK_DB = 10;

/** What one part does worse than it should: all its faults together, named after the greatest. */
export type Shortcoming = Omit<Blamed, "part" | "port">;

/** Level that a sound part in the place of a stage's part would add; undefined where nothing is wrong with it. */
export function lacking(stage: Stage): Shortcoming | undefined {
  return found(stage).lacking;
}

/** Level that it gives beyond what its kind usually gives; undefined where it does not. */
export function exceeding(stage: Stage): Shortcoming | undefined {
  return found(stage).exceeding;
}

type Found = { readonly lacking: Shortcoming | undefined; readonly exceeding: Shortcoming | undefined };

/** Asked by every socket behind a part: remembered while the part stays as it is. */
const known = new WeakMap<PartRecord, Map<string, Found>>();

function found(stage: Stage): Found {
  const { from, to, centreMHz, levelDbuv } = stage.step;
  const key = `${from}|${to}|${centreMHz}|${from === null ? `${levelDbuv}${stage.carrier.origin}` : ""}`;
  const ofRecord = remembered(known, stage.record, () => new Map<string, Found>());
  return remembered(ofRecord, key, () => ({
    lacking: summed(stage, corrections(stage, "less")),
    exceeding: summed(stage, corrections(stage, "more")),
  }));
}

/** A fault put right: the options after it, and what it is called. */
type Correction = {
  readonly does: Misdeed;
  readonly options?: AnyOptions;
  /** Where no options tell it: the level that it gives back [dB]. */
  readonly db?: number;
  readonly fed?: true;
} & Pick<Blamed, "ways" | "lengthM" | "belowBestDb" | "facesAnother">;

/** Puts one fault after the other right, and names the whole after the one that brought most. */
function summed(stage: Stage, all: readonly Correction[]): Shortcoming | undefined {
  const { record } = stage;
  const own = amountOf(stage);
  let options = record.options;
  let powered = record.powered;
  let before = own;
  let excessDb = 0;
  let most: { readonly correction: Correction; readonly db: number } | undefined;
  for (const correction of all) {
    options = { ...options, ...correction.options };
    powered ||= correction.fed === true;
    const after = correction.db === undefined ? levelWith(stage, options, powered) : before + correction.db;
    const db = Math.abs(after - before);
    before = after;
    excessDb += db;
    if (!most || db > most.db) most = { correction, db };
  }
  if (!most || excessDb < 0.05) return undefined;
  const { does, ways, lengthM, belowBestDb, facesAnother } = most.correction;
  const amount = does === "strong source" ? stage.step.levelDbuv : own;
  return {
    does,
    excessDb,
    amount,
    ...(ways ? { ways } : {}),
    ...(lengthM ? { lengthM } : {}),
    ...(belowBestDb ? { belowBestDb } : {}),
    ...(facesAnother ? { facesAnother } : {}),
  };
}

/** Gain of a part as it is; of a source its level [dB, dBµV]. */
function amountOf({ step }: Stage): number {
  return step.gainDb ?? step.levelDbuv;
}

/** The same with other options; unchanged where the carrier would not come that way. */
function levelWith(stage: Stage, options: AnyOptions, powered: boolean): number {
  const { record, step, carrier } = stage;
  const {
    emits = [],
    paths = [],
    stacks = [],
  } = record.kind.signal(options, { id: record.part.id, powered });
  if (step.from === null) {
    for (const { port, bands } of emits)
      for (const band of bands) {
        const i = band.origin.key === carrier.origin ? band.grid.index.indexOf(carrier.index) : -1;
        if (i < 0) continue;
        // An active aerial amplifies what its elements receive.
        const behind =
          port === step.to ? 0 : wayGainDb(paths, { from: port, to: step.to, centreMHz: step.centreMHz });
        return (band.level[i] ?? amountOf(stage)) + (behind ?? 0);
      }
    return amountOf(stage);
  }
  // What passes beside the user bands has a way and a gain of its own.
  const stacked = step.userBand === undefined ? undefined : stacks.find((s) => s.to === step.to);
  if (stacked) {
    const now = record.treatment.stacks?.find((s) => s.to === step.to)?.levelDbuv ?? stacked.levelDbuv;
    return amountOf(stage) + stacked.levelDbuv - now;
  }
  const held = heldDbuv(paths, step);
  const heldNow = heldDbuv(record.treatment.paths ?? [], step);
  if (held !== undefined && heldNow !== undefined) return amountOf(stage) + held - heldNow;
  const { from, to, centreMHz } = step;
  return wayGainDb(paths, { from, to, centreMHz, ...originAt(stage) }) ?? amountOf(stage);
}

/** Gain that a stage would have if nothing drove it too far [dB]; 0 for a source. */
export function declaredGainDb(stage: Stage): number {
  const { from, to, centreMHz, gainDb } = stage.step;
  if (from === null || gainDb === null) return 0;
  const at = { from, to, centreMHz, ...originAt(stage) };
  return wayGainDb(stage.record.treatment.paths ?? [], at) ?? gainDb;
}

/** Where the carrier comes from, as a feed has to know it. */
function originAt({ record, step, carrier }: Stage): { readonly origin?: Origin } {
  const bands = step.from === null ? [] : (record.inputs[step.from]?.bands ?? []);
  const found = bands.find((b) => b.origin.key === carrier.origin);
  return found ? { origin: found.origin } : {};
}

/** Level at which a part's own control holds a carrier that leaves it; undefined where none does [dBµV]. */
export function heldDbuv(
  paths: readonly Path[],
  { from, centreMHz }: Pick<Stage["step"], "from" | "centreMHz">,
): number | undefined {
  const { levelControl } =
    paths.find((p) => p.levelControl && p.from === from && takesAt(p, centreMHz)) ?? {};
  return levelControl?.outputDbuv;
}

function takesAt({ takes }: Path, f: number): boolean {
  return f >= (takes?.fromMHz ?? 0) && f < (takes?.toMHz ?? Number.POSITIVE_INFINITY);
}

/** Gain of the strongest way from an input to an output; undefined where there is none [dB]. */
export function wayGainDb(
  paths: readonly Path[],
  at: { readonly from: string; readonly to: string; readonly centreMHz: number; readonly origin?: Origin },
): number | undefined {
  let most: number | undefined;
  for (const path of paths) {
    if (path.from !== at.from || (path.to !== at.to && !path.to.startsWith("#"))) continue;
    // A feed has a way for each polarisation, and only one of them takes this carrier.
    if (path.feed && at.origin && path.takes?.polarisation !== at.origin.polarisation) continue;
    const taken = path.feed && at.origin ? feedGainDb(path.feed, at.origin) : 0;
    const own = gainDbAt(path.response, at.centreMHz) + taken;
    const rest = path.to === at.to ? 0 : wayGainDb(paths, { ...at, from: path.to });
    if (rest !== undefined && (most === undefined || own + rest > most)) most = own + rest;
  }
  return most;
}

/** What could be put right so that more comes out ("less": it gives less than it should), or less ("more"). */
function corrections(stage: Stage, gives: "less" | "more"): readonly Correction[] {
  const { record } = stage;
  const { kind, options } = record;
  if (gives === "less" && kind.trade.defect) return [{ does: "bad joint", db: -amountOf(stage) }];
  const wrong: Correction[] = [];
  if (gives === "less") {
    if (Object.keys(record.deadEnds).length > 0) wrong.push(...deadCable(stage));
    if (!record.powered) wrong.push({ does: "unfed", fed: true });
    for (const { option, soundValue } of defectsOf(kind, options))
      wrong.push({
        does: misdeedOf(record, describedOptions(kind).get(option)),
        options: { [option]: soundValue },
      });
    // Whatever else it is, another part would stand in its place.
    if (kind.trade.job === "combiner" && lacksFilters(record))
      return [...wrong, { does: "loses", db: -amountOf(stage) - FILTERED_DB }];
    if (kind.trade.job === "pad") wrong.push({ does: "attenuates", db: -amountOf(stage) });
  }
  if (gives === "less" && stage.step.from === null) wrong.push(...misaimed(stage));
  for (const [option, meta] of describedOptions(kind)) {
    if (!doesCount(meta, options)) continue;
    wrong.push(...correctionsOf(stage, { option, meta, value: options[option] }, gives));
  }
  return wrong;
}

/** What cable that leads nowhere takes beyond what a line in its place would. */
function deadCable(stage: Stage): readonly Correction[] {
  const db = -amountOf(stage) - (stage.record.treatment.isolationDb ?? 0);
  return db > 0 ? [{ does: "dead cable", db }] : [];
}

/** What an aerial takes off its own transmitter counts from so much on [dB]; a choice of this tool. */
const TURNED_AWAY_DB = 3;

/** An aerial that looks elsewhere, or whose elements lie in the other polarisation. */
function misaimed(stage: Stage): readonly Correction[] {
  const { kind, options } = stage.record;
  const [aim, pattern] = [optionMeaning(kind, "aim"), optionMeaning(kind, "pattern")];
  if (aim === undefined || pattern === undefined || options[aim] === AS_LISTED) return [];
  const straight = { [aim]: AS_LISTED };
  if (levelWith(stage, { ...options, ...straight }, true) - amountOf(stage) < TURNED_AWAY_DB) return [];
  const facesAnother = isFacing(stage, straight) ? { facesAnother: true as const } : {};
  return [
    { does: "turned away", options: { [pattern]: ALL_ROUND }, ...facesAnother },
    { does: "other polarisation", options: straight },
  ];
}

/** Whether some other carrier of the same list loses nothing worth mentioning by the way an aerial points. */
function isFacing({ record, step }: Stage, straight: AnyOptions): boolean {
  const { id } = record.part;
  const emitted = record.kind.signal({ ...record.options, ...straight }, { id, powered: true }).emits ?? [];
  const best = new Map(
    emitted.flatMap(({ bands }) =>
      bands.flatMap((band) =>
        [...band.level].map((level, i) => [`${band.origin.key}#${band.grid.index[i]}`, level]),
      ),
    ),
  );
  return (record.treatment.emits ?? []).some(({ bands }) =>
    bands.some((band) =>
      [...band.level].some((level, i) => {
        const straightDbuv = best.get(`${band.origin.key}#${band.grid.index[i]}`);
        return (
          typeof straightDbuv === "number" &&
          band.grid.centre[i] !== step.centreMHz &&
          band.origin.service !== "distant" &&
          straightDbuv - level < TURNED_AWAY_DB
        );
      }),
    ),
  );
}

/** Brings services together that a diplexer would, at less loss: each of its lines has one of its own. */
function lacksFilters({ ports, inputs, joined }: PartRecord): boolean {
  const used = ports.filter((p) => p.side === "in" && joined[p.id]);
  if (used.length < 2 || used.some((p) => p.role === "band")) return false;
  const services = used.map((p) => new Set((inputs[p.id]?.bands ?? []).map((b) => b.origin.service)));
  return (
    services.every((set) => set.size === 1) &&
    new Set(services.flatMap((set) => [...set])).size === used.length
  );
}

function misdeedOf({ kind }: PartRecord, meta: FieldMeta | undefined): Misdeed {
  if (meta?.means === "mains") return "switched off";
  if (meta?.means === "pointing loss") return "off aim";
  if (meta?.means === "skew error") return "turned";
  if (kind.family === "receive") return "weak source";
  return kind.trade.job === "cable" ? "poor cable" : kind.trade.job === "splitter" ? "resistive" : "loses";
}

type Asked = { readonly option: string; readonly meta: FieldMeta; readonly value: unknown };

function correctionsOf(stage: Stage, asked: Asked, gives: "less" | "more"): readonly Correction[] {
  const { record, step } = stage;
  const { option, meta, value } = asked;
  const job = record.kind.trade.job;
  if (meta.control === "rows") return rowCorrections(stage, asked, gives);
  if (typeof value !== "number") return [];
  if (meta.means === "ways") return gives === "less" ? spareWays(record, option, value) : [];
  if (meta.means === "length") {
    if (gives === "more" || value <= USUAL_RUN_M) return [];
    return [{ does: "long cable", options: { [option]: USUAL_RUN_M }, lengthM: value }];
  }
  if (meta.means === "input pad")
    return gives === "less" && value > 0 ? [{ does: "input attenuator", options: { [option]: 0 } }] : [];
  if (meta.means === "tap loss") return tapCorrections(stage, asked, gives);
  if (job === "pad") return [];
  const usual = usualValue(record, option);
  if (usual === undefined || usual === value || !changesLevel(meta)) return [];
  // A large dish is no fault.
  if (gives === "more" && meta.means === "diameter") return [];
  // Only what changes the level in the direction that is asked for: found by trying it.
  const enough =
    job === "aerial" && gives === "less" && typeof usual === "number" ? usual - NOT_YET_WEAK_DB : usual;
  const options = { [option]: enough };
  const db = levelWith(stage, { ...record.options, ...options }, record.powered) - amountOf(stage);
  if (gives === "less" ? db < 0.05 : db > -0.05) return [];
  const isSource = step.from === null;
  const amplifies = (step.gainDb ?? 0) > 0 || meta.means === "gain" || meta.means === "radio gain";
  if (gives === "more") {
    if (isSource || record.kind.family === "convert") return [{ does: "strong source", options }];
    // A passive part that loses little is no fault.
    return amplifies ? [{ does: "high gain", options }] : [];
  }
  if (isSource && job === "signal source") return [{ does: "low output", options }];
  // Nobody turns an LNB up.
  if (amplifies && job === "converter" && step.userBand === undefined)
    return [{ does: "little gain", options }];
  return [{ does: isSource ? "weak source" : amplifies ? "low gain" : "loses", options }];
}

/** Whether an option can have to do with level: its unit says so, or it is the size of a dish. */
function changesLevel({ unit, means, onSite }: FieldMeta): boolean {
  if (means === "diameter") return true;
  return unit?.startsWith("dB") === true && (onSite !== "not ours" || means === "source level");
}

/** The value that an option has where nobody says otherwise. */
function usualValue({ kind }: PartRecord, option: string): unknown {
  return remembered(usual, kind, () => kind.options.parse({}))[option];
}

const usual = new WeakMap<object, AnyOptions>();

/** A carrier that its row puts below or above the others of its source. */
function rowCorrections(
  stage: Stage,
  { option, meta, value }: Asked,
  gives: "less" | "more",
): readonly Correction[] {
  if (stage.step.from !== null || !Array.isArray(value)) return [];
  const offsets = Object.entries(meta.row?.shape ?? {}).flatMap(([key, schema]) =>
    fieldMeta(schema)?.unit === "dB" ? [key] : [],
  );
  const leveled = value.map((row: object) => ({ ...row, ...Object.fromEntries(offsets.map((k) => [k, 0])) }));
  const options = { [option]: leveled };
  const db = levelWith(stage, { ...stage.record.options, ...options }, true) - amountOf(stage);
  if (gives === "less" ? db < 0.05 : db > -0.05) return [];
  if (gives === "more") return [{ does: "strong source", options }];
  const belowBestDb = stage.record.kind.trade.job === "aerial" ? belowBest(stage) : 0;
  return [{ does: "weak source", options, ...(belowBestDb >= FAR_BELOW_DB ? { belowBestDb } : {}) }];
}

/** What EN 60728-1 lets TV channels differ at an outlet [dB], from memory: an aerial that differs more does not suit them. */
const FAR_BELOW_DB = 12;

/** How far a carrier of an aerial lies below the strongest that it brings of the same service [dB]. */
function belowBest({ record, step }: Stage): number {
  const own = (record.outputs[step.to]?.bands ?? []).filter((b) => b.origin.part === record.part.id);
  const best = Math.max(step.levelDbuv, ...own.flatMap((band) => [...band.level]));
  return best - step.levelDbuv;
}

/** A splitter with more outputs, or a combiner with more inputs, than anybody uses. */
function spareWays(record: PartRecord, option: string, of: number): readonly Correction[] {
  const { job } = record.kind.trade;
  if (job !== "splitter" && job !== "combiner") return [];
  const side = job === "splitter" ? "out" : "in";
  const used = record.ports.filter((p) => p.side === side && record.joined[p.id]).length;
  const fewest = Math.max(2, used);
  if (fewest >= of) return [];
  return [{ does: "spare ways", options: { [option]: fewest }, ways: { of, used, side } }];
}

/** A tap or riser plate that gives its branch too little or too much, or takes too much off the trunk. */
function tapCorrections(
  stage: Stage,
  { option, value }: Asked,
  gives: "less" | "more",
): readonly Correction[] {
  const { record, step } = stage;
  const isTrunk = record.ports.some((p) => p.id === step.to && p.role === "trunk");
  const trunk = record.ports.find((p) => p.side === "out" && p.role === "trunk");
  const usually = usualValue(record, option);
  if (typeof value !== "number" || typeof usually !== "number") return [];
  const options = { [option]: usually };
  if (isTrunk) return gives === "less" && value < usually ? [{ does: "low tap loss", options }] : [];
  if (gives === "more") return value < usually ? [{ does: "low tap loss", options }] : [];
  if (record.kind.delivery && trunk && !record.joined[trunk.id])
    return value > END_PLATE_DB ? [{ does: "through at end", db: value - END_PLATE_DB }] : [];
  return value > usually ? [{ does: "high tap loss", options }] : [];
}
