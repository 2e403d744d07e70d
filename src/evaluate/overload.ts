/** What an active path does when it is driven hard: it adds third-order products, and compresses. */
import type { Rating } from "../parts/contract.ts";
import {
  type CarrierSums,
  compressionDb,
  type DeratingRule,
  deratingDb,
  equalCarriers,
  productsOfDbuv,
  type RatedOutput,
  sumInStep,
} from "../rf/intermod.ts";
import type { Band } from "../signal/band.ts";
import { isDisturbed } from "../signal/combine.ts";
import { remembered } from "../signal/remember.ts";
import { conditionsKey } from "../signal/treat.ts";
import type { Drive } from "./evaluation.ts";

/** Which derating a design reckons with; "usual": beats for TV amplifiers (60 dB ratings), power for satellite IF. */
export type DeratingChoice = DeratingRule | "usual";

/** How products of amplifiers behind each other add: as voltages, or as powers. */
export type CascadeChoice = "in step" | "by power";

/** How a design reckons with amplifiers. */
export type AmplifierModel = { readonly derating: DeratingChoice; readonly cascade: CascadeChoice };

/** Products this far below the carriers change no C/N that any service needs, not even ten times in step [dB]. */
const HARMLESS_DB = 70;
/** Products below this share of a carrier's noise cost less than 0.005 dB; leaving them out keeps wires unchanged. */
const HARMLESS_SHARE = 0.001;
/** Compression that no meter shows [dB]; leaving it out keeps wires unchanged. */
const HARMLESS_COMPRESSION_DB = 0.01;

/**
 * So far above what it is allowed a path only limits, even one carrier alone: nothing that comes out can be received
 * [dB]. A rule of ours; it is where 1 dB compression lies for a rating at 60 dB.
 */
export const HOPELESS_DB = 20;
/** Carrier to products there [dB]: below what the hardiest modulation needs (−2.4 dB, EN 302 307-1 as quoted). */
const HOPELESS_RATIO_DB = -3;

/**
 * Adds the products of one path to the bands that leave it, and holds them to what it can put out.
 * All that is on the path together drives it, mobile signals included; of alternatives behind one switch the
 * strongest is reckoned with, for bands that are not themselves one of them.
 * The products are noise-like and the same in every carrier's channel; those of the path before are in step with them.
 */
export function withProducts(
  bands: readonly Band[],
  o: { rating: Rating; model: AmplifierModel; from: string; port: string },
): { bands: Band[]; drive: Drive | null } {
  const rule = o.model.derating === "usual" ? usualRule(o.rating) : o.model.derating;
  const rating = { rule, ratedDbuv: o.rating.outputDbuv, ratioDb: o.rating.ratioDb };
  const loads = loadsOf(bands);
  let hardest: Drive | null = null;
  const driven = bands.map((band) => {
    const load = loads(band);
    const drive = driveBy(load, rating);
    if (drive && (!hardest || aboveAllowed(drive) > aboveAllowed(hardest)))
      hardest = { ...drive, from: o.from, port: o.port };
    const loaded = drive ? withProduct(band, drive, o.model.cascade) : band;
    return compressed(loaded, { ...rating, totalDbuv: dbOf(load.power) });
  });
  return { bands: driven, drive: hardest };
}

type Driven = Omit<Drive, "from" | "port">;

/** What a load does to a path; null for a single carrier, which has nothing to beat with, unless it is hopelessly strong. */
function driveBy(load: Load, rating: Rated): Driven | null {
  if (load.power <= 0) return null;
  const { carriers, levelDbuv } = equalCarriers(load);
  const allowedDbuv = rating.ratedDbuv - deratingDb({ rule: rating.rule, carriers });
  const isHopeless = levelDbuv - allowedDbuv > HOPELESS_DB;
  if (load.count < 2 && !isHopeless) return null;
  // Beyond 0 dB the cubic law has long ended: nothing but products comes out.
  const productDbuv = Math.min(levelDbuv, productsOfDbuv({ ...rating, ...load }));
  return {
    rule: rating.rule,
    carriers,
    levelDbuv,
    totalDbuv: dbOf(load.power),
    allowedDbuv,
    ratioDb: isHopeless ? HOPELESS_RATIO_DB : levelDbuv - productDbuv,
  };
}

function aboveAllowed(drive: Driven): number {
  return drive.levelDbuv - drive.allowedDbuv;
}

function withProduct(band: Band, { levelDbuv, ratioDb }: Driven, cascade: CascadeChoice): Band {
  const product = 10 ** ((levelDbuv - ratioDb) / 10);
  const { products } = band;
  if (products) {
    const add = cascade === "in step" ? sumInStep : (a: number, b: number) => a + b;
    return { ...band, products: products.map((before) => add(before, product)) };
  }
  if (ratioDb >= HARMLESS_DB || band.noise.every((noise) => product < noise * HARMLESS_SHARE)) return band;
  return { ...band, products: new Float64Array(band.level.length).fill(product) };
}

function dbOf(power: number): number {
  return 10 * Math.log10(power);
}

/** Nobody gets out more than the path can put out: near that all that is on it becomes weaker alike. */
function compressed(band: Band, load: RatedOutput & { totalDbuv: number }): Band {
  const lessDb = compressionDb(load);
  if (!(lessDb > HARMLESS_COMPRESSION_DB)) return band;
  const share = 10 ** (-lessDb / 10);
  const weaker = (powers: Float64Array) => powers.map((x) => x * share);
  return {
    ...band,
    level: band.level.map((level) => level - lessDb),
    noise: weaker(band.noise),
    interference: isDisturbed(band) ? weaker(band.interference) : band.interference,
    ...(band.products ? { products: weaker(band.products) } : {}),
  };
}

/** A noise floor behind a path: no stronger than the path can put out. */
export function saturatedFloor(floor: Band, { outputDbuv, ratioDb }: Rating): Band {
  const totalDbuv = dbOf(loadOf(floor).power);
  const lessDb = compressionDb({ ratedDbuv: outputDbuv, ratioDb, totalDbuv });
  return lessDb > HARMLESS_COMPRESSION_DB
    ? { ...floor, level: floor.level.map((level) => level - lessDb) }
    : floor;
}

function usualRule(rating: Rating): DeratingRule {
  return rating.ratioDb >= 50 ? "beats" : "power";
}

type Rated = RatedOutput & { readonly rule: DeratingRule };

type Load = CarrierSums & { readonly count: number };

const NO_LOAD: Load = { count: 0, power: 0, squares: 0 };

/** For a band, the carriers that are on the path together with it. */
function loadsOf(bands: readonly Band[]): (band: Band) => Load {
  let always = NO_LOAD;
  const bySwitch = new Map<string, Map<string, Load>>();
  for (const band of bands) {
    const load = loadOf(band);
    const at = band.conditions[0]?.at.id;
    if (at === undefined) {
      always = together(always, load);
      continue;
    }
    const worlds = remembered(bySwitch, at, () => new Map<string, Load>());
    const world = conditionsKey(band);
    worlds.set(world, together(worlds.get(world) ?? NO_LOAD, load));
  }
  return (band) => {
    let total = always;
    const own = band.conditions[0]?.at.id;
    for (const [at, worlds] of bySwitch) {
      const load = at === own ? worlds.get(conditionsKey(band)) : strongestOf(worlds.values());
      if (load) total = together(total, load);
    }
    return total;
  };
}

function loadOf(band: Band): Load {
  let power = 0;
  let squares = 0;
  for (const level of band.level) {
    const p = 10 ** (level / 10);
    power += p;
    squares += p * p;
  }
  return { count: band.level.length, power, squares };
}

function together(a: Load, b: Load): Load {
  return { count: a.count + b.count, power: a.power + b.power, squares: a.squares + b.squares };
}

function strongestOf(loads: Iterable<Load>): Load | undefined {
  let strongest: Load | undefined;
  for (const load of loads) if (!strongest || load.power > strongest.power) strongest = load;
  return strongest;
}
