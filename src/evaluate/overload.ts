/** What an active path does when it is driven hard: it adds third-order products, and in the end saturates. */
import type { Rating } from "../parts/contract.ts";
import {
  type CarrierSums,
  type DeratingRule,
  deratingDb,
  equalCarriers,
  productsOfDbuv,
  type RatedOutput,
  saturatedDbuv,
} from "../rf/intermod.ts";
import type { Band } from "../signal/band.ts";
import { isDisturbed } from "../signal/combine.ts";
import { remembered } from "../signal/remember.ts";
import { conditionsKey } from "../signal/treat.ts";
import type { Drive } from "./evaluation.ts";

/** Which derating a design reckons with; "usual": beats for TV amplifiers (60 dB ratings), power for satellite IF. */
export type DeratingChoice = DeratingRule | "usual";

/** Products this far below the carriers change no C/N that any service needs [dB]. */
const HARMLESS_DB = 60;
/** Products below this share of a carrier's noise cost less than 0.005 dB; leaving them out keeps wires unchanged. */
const HARMLESS_SHARE = 0.001;

/**
 * Adds the products of one path to the bands that leave it, and holds them to what it can put out.
 * All that is on the path together drives it, mobile signals included; of alternatives behind one switch the
 * strongest is reckoned with, for bands that are not themselves one of them.
 * The products are noise-like and the same in every carrier's channel.
 */
export function withProducts(
  bands: readonly Band[],
  o: { rating: Rating; choice: DeratingChoice; from: string; port: string },
): { bands: Band[]; drive: Drive | null } {
  const rule = o.choice === "usual" ? usualRule(o.rating) : o.choice;
  const rating = { rule, ratedDbuv: o.rating.outputDbuv, ratioDb: o.rating.ratioDb };
  const saturationDbuv = saturatedDbuv(rating);
  const loads = loadsOf(bands);
  let hardest: Drive | null = null;
  const driven = bands.map((band) => {
    const load = loads(band);
    const drive = driveBy(load, rating);
    if (drive && (!hardest || aboveAllowed(drive) > aboveAllowed(hardest)))
      hardest = { ...drive, from: o.from, port: o.port };
    return compressed(drive ? withProduct(band, drive) : band, dbOf(load.power) - saturationDbuv);
  });
  return { bands: driven, drive: hardest };
}

type Driven = Omit<Drive, "from" | "port">;

/** What a load does to a path; null for a single carrier, which has nothing to beat with. */
function driveBy(load: Load, rating: Rated): Driven | null {
  if (load.count < 2 || load.power <= 0) return null;
  const { carriers, levelDbuv } = equalCarriers(load);
  // Beyond 0 dB the cubic law has long ended: nothing but products comes out.
  const productDbuv = Math.min(levelDbuv, productsOfDbuv({ ...rating, ...load }));
  return {
    rule: rating.rule,
    carriers,
    levelDbuv,
    totalDbuv: dbOf(load.power),
    allowedDbuv: rating.ratedDbuv - deratingDb({ rule: rating.rule, carriers }),
    ratioDb: levelDbuv - productDbuv,
  };
}

function aboveAllowed(drive: Driven): number {
  return drive.levelDbuv - drive.allowedDbuv;
}

function withProduct(band: Band, { levelDbuv, ratioDb }: Driven): Band {
  if (ratioDb >= HARMLESS_DB) return band;
  const product = 10 ** ((levelDbuv - ratioDb) / 10);
  if (band.noise.every((noise) => product < noise * HARMLESS_SHARE)) return band;
  return { ...band, interference: band.interference.map((x) => x + product) };
}

function dbOf(power: number): number {
  return 10 * Math.log10(power);
}

/** Whatever drives it, no more comes out than the path can put out: all that is on it becomes weaker alike. */
function compressed(band: Band, excessDb: number): Band {
  if (!(excessDb > 0)) return band;
  const share = 10 ** (-excessDb / 10);
  return {
    ...band,
    level: band.level.map((level) => level - excessDb),
    noise: band.noise.map((noise) => noise * share),
    interference: isDisturbed(band) ? band.interference.map((x) => x * share) : band.interference,
  };
}

/** A noise floor behind a path: no stronger than the path can put out. */
export function saturatedFloor(floor: Band, { outputDbuv, ratioDb }: Rating): Band {
  const excessDb = dbOf(loadOf(floor).power) - saturatedDbuv({ ratedDbuv: outputDbuv, ratioDb });
  return excessDb > 0 ? { ...floor, level: floor.level.map((level) => level - excessDb) } : floor;
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
