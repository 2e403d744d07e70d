/** What an active path adds of its own when it is driven hard: third-order products as interference. */
import type { Rating } from "../parts/contract.ts";
import {
  type CarrierSums,
  type DeratingRule,
  deratingDb,
  equalCarriers,
  productsOfDbuv,
} from "../rf/intermod.ts";
import type { Band } from "../signal/band.ts";
import { remembered } from "../signal/remember.ts";
import { worldOf } from "../signal/treat.ts";
import type { Drive } from "./evaluation.ts";

/** Which derating a design reckons with; "usual": beats for TV amplifiers (60 dB ratings), power for satellite IF. */
export type DeratingChoice = DeratingRule | "usual";

/** Products this far below the carriers change no C/N that any service needs [dB]. */
const HARMLESS_DB = 60;
/** Products below this share of a carrier's noise cost less than 0.005 dB; leaving them out keeps wires unchanged. */
const HARMLESS_SHARE = 0.001;

/**
 * Adds the products of one path to the bands that leave it.
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
  const loads = loadsOf(bands);
  let drive: Drive | null = null;
  const driven = bands.map((band) => {
    const load = loads(band);
    if (load.count < 2 || load.power <= 0) return band;
    const { carriers, levelDbuv } = equalCarriers(load);
    const allowedDbuv = rating.ratedDbuv - deratingDb({ rule, carriers });
    // Beyond 0 dB the cubic law has long ended: nothing but products comes out.
    const productDbuv = Math.min(levelDbuv, productsOfDbuv({ ...rating, ...load }));
    const ratioDb = levelDbuv - productDbuv;
    if (!drive || levelDbuv - allowedDbuv > drive.levelDbuv - drive.allowedDbuv)
      drive = {
        from: o.from,
        port: o.port,
        rule,
        carriers,
        levelDbuv,
        totalDbuv: 10 * Math.log10(load.power),
        allowedDbuv,
        ratioDb,
      };
    if (ratioDb >= HARMLESS_DB) return band;
    const product = 10 ** (productDbuv / 10);
    if (band.noise.every((noise) => product < noise * HARMLESS_SHARE)) return band;
    return { ...band, interference: band.interference.map((x) => x + product) };
  });
  return { bands: driven, drive };
}

function usualRule(rating: Rating): DeratingRule {
  return rating.ratioDb >= 50 ? "beats" : "power";
}

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
    const world = worldOf(band);
    worlds.set(world, together(worlds.get(world) ?? NO_LOAD, load));
  }
  return (band) => {
    let total = always;
    const own = band.conditions[0]?.at.id;
    for (const [at, worlds] of bySwitch) {
      const load = at === own ? worlds.get(worldOf(band)) : strongestOf(worlds.values());
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
