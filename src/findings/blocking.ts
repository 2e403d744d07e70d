/** How far a tuner is from being blocked: by all power at its input, or by what stands beside a carrier. */
import type { FrontEnd, ReceiverInput } from "../parts/contract.ts";
import { isHandset } from "../parts/planUnwanted.ts";
import { dbToRatio, ratioToDb } from "../rf/decibel.ts";
import {
  besideRatioDb,
  FM_NEIGHBOURS_WITHIN_MHZ,
  farRatioDb,
  fmRatioDb,
  IMAGE_MHZ,
  NEIGHBOURS_WITHIN_MHZ,
  type Neighbour,
} from "../rf/tunerProtection.ts";
import type { Band, Spectrum } from "../signal/band.ts";
import { remembered } from "../signal/remember.ts";
import { exclusive } from "../signal/treat.ts";
import { extreme } from "./extreme.ts";

/** By what a tuner is blocked: all that it lets in together, or one neighbour. */
export type BlockedBy = "total" | "beside";

/** What is left to the point where a carrier is lost although it arrives strong and clean; below 0 it is blocked [dB]. */
export type Headroom = {
  readonly totalDb: number;
  /** Absent where nothing stands beside it that could block it. */
  readonly besideDb?: number;
};

/** A carrier among all that come in. */
export type Loud = { readonly band: Band; readonly i: number; readonly levelDbuv: number };

export type Blocking = {
  /** All power that comes in beside a band or in it [dBµV], and what a tuner takes at most. */
  readonly totalDbuv: (band: Band) => number;
  readonly overloadDbuv: number;
  /** The neighbour that comes nearest to blocking a carrier; undefined where nothing is beside it. */
  readonly beside: (band: Band, i: number) => BesideRatio | undefined;
  /** The strongest carrier that comes in together with a band. */
  readonly loudest: (band: Band) => Loud | undefined;
};

/** A neighbour, how far it is above the carrier, and how far it may be [dB]. */
export type BesideRatio = { readonly by: Loud; readonly aboveDb: number; readonly allowedDb: number };

/** FM is heard, with the neighbour in it, so far below the ratios that keep it clear of it [dB]; a choice of this tool. */
export const FM_HEARD_BELOW_DB = 20;

/** The filter before a tuner lets in what lies so far beside its range, as shares of it; from memory. */
const LETS_IN = { from: 0.8, to: 1.15 } as const;

const known = new WeakMap<Spectrum, Map<string, Blocking>>();

/** Worked out once for each input: whatever is asked of it afterwards looks at a few neighbours only. */
export function blockingAt(spectrum: Spectrum, input: ReceiverInput): Blocking {
  const { tunesFromMHz, tunesToMHz, frontEnd } = input;
  const byInput = remembered(known, spectrum, () => new Map<string, Blocking>());
  const key = `${tunesFromMHz} ${tunesToMHz} ${frontEnd.overloadDbuv} ${frontEnd.tuner}`;
  return remembered(byInput, key, () => newBlocking(spectrum, input));
}

function newBlocking({ bands }: Spectrum, { tunesFromMHz, tunesToMHz, frontEnd }: ReceiverInput): Blocking {
  const lets = { fromMHz: tunesFromMHz * LETS_IN.from, toMHz: tunesToMHz * LETS_IN.to };
  const loads = bands.filter((band) => !band.isFloor).map((band) => loadOf(band, lets));
  const together = (band: Band) =>
    loads.filter((load) => load.band === band || (load.band.selected && !exclusive(load.band, band)));
  const totals = new WeakMap<Band, number>();
  const beside = besideOf(loads, frontEnd);
  return {
    totalDbuv: (band) =>
      remembered(totals, band, () => ratioToDb(together(band).reduce((sum, { power }) => sum + power, 0))),
    overloadDbuv: frontEnd.overloadDbuv,
    beside,
    loudest: (band) =>
      extreme(
        together(band).flatMap(({ loudest }) => loudest ?? []),
        (one) => one.levelDbuv,
      ),
  };
}

/** Of all together [dB]. */
export function totalHeadroomDb(blocking: Blocking, band: Band): number {
  return blocking.overloadDbuv - blocking.totalDbuv(band);
}

/** Of the worst neighbour [dB]; undefined where there is none. */
export function besideHeadroomDb(blocking: Blocking, band: Band, i: number): number | undefined {
  const beside = blocking.beside(band, i);
  return beside && beside.allowedDb - beside.aboveDb;
}

type Load = {
  readonly band: Band;
  /** Carriers that the tuner's filter lets in. */
  readonly carriers: readonly number[];
  readonly power: number;
  readonly loudest: Loud | undefined;
};

function loadOf(band: Band, lets: { readonly fromMHz: number; readonly toMHz: number }): Load {
  const used = userBandsOn(band);
  const carriers = [...band.level.keys()].filter((i) => {
    const f = band.grid.centre[i] ?? 0;
    return f >= lets.fromMHz && f <= lets.toMHz && (!used || used.has(band.stack?.numbers[i] ?? 0));
  });
  const power = carriers.reduce((sum, i) => sum + dbToRatio(band.level[i] ?? Number.NEGATIVE_INFINITY), 0);
  const i = extreme(carriers, (one) => band.level[one] ?? Number.NEGATIVE_INFINITY);
  return { band, carriers, power, loudest: i === undefined ? undefined : loud(band, i) };
}

function loud(band: Band, i: number): Loud {
  return { band, i, levelDbuv: band.level[i] ?? Number.NEGATIVE_INFINITY };
}

/** A converter sends a user band while somebody asks for it; undefined where nobody does yet, or on a plain feed. */
function userBandsOn({ stack }: Band): ReadonlySet<number> | undefined {
  const asked = stack?.control.offers.flatMap((o) => o.request?.userBands ?? []) ?? [];
  return asked.length > 0 ? new Set(asked) : undefined;
}

type Neighbouring = Loud & {
  readonly kind: Neighbour;
  readonly service: Band["origin"]["service"];
  readonly centreMHz: number;
  readonly widthMHz: number;
};

/** Neighbours of terrestrial carriers; satellite tuners have filters of the transponder's width, from memory. */
function besideOf(loads: readonly Load[], { tuner }: FrontEnd): Blocking["beside"] {
  const all = loads
    .filter(({ band }) => band.selected && !band.stack)
    .flatMap(({ band, carriers }) => carriers.map((i) => neighbouring(band, i)))
    .sort((a, b) => a.centreMHz - b.centreMHz);
  const byKind = new Map<Neighbour, Neighbouring[]>();
  for (const one of [...all].sort((a, b) => b.levelDbuv - a.levelDbuv)) {
    const stronger = byKind.get(one.kind) ?? [];
    if (stronger.length < STRONGEST && stronger.every((s) => s.centreMHz !== one.centreMHz))
      byKind.set(one.kind, [...stronger, one]);
  }
  const strongest = [...byKind.values()].flat();
  const widest = all.reduce((most, { widthMHz }) => Math.max(most, widthMHz), 0);
  return (band, i) => {
    const wanted = neighbouring(band, i);
    if (wanted.service === "satellite") return undefined;
    const reach = wanted.service === "fm" ? FM_NEIGHBOURS_WITHIN_MHZ : NEIGHBOURS_WITHIN_MHZ;
    const within = reach + (wanted.widthMHz + widest) / 2;
    const near = between(all, wanted.centreMHz - within, wanted.centreMHz + within);
    const image =
      tuner === "can" ? between(all, wanted.centreMHz + IMAGE_MHZ.from, wanted.centreMHz + IMAGE_MHZ.to) : [];
    let worst: BesideRatio | undefined;
    for (const by of [...near, ...image, ...strongest]) {
      const ratio = ratioTo(wanted, by, tuner);
      if (ratio && (!worst || ratio.aboveDb - ratio.allowedDb > worst.aboveDb - worst.allowedDb))
        worst = ratio;
    }
    return worst;
  };
}

/** Of each kind so many frequencies are kept for carriers far away from them: some may be the wanted one's, or lie over it. */
const STRONGEST = 4;

function neighbouring(band: Band, i: number): Neighbouring {
  const { grid, origin } = band;
  const [centreMHz, widthMHz] = [grid.centre[i] ?? 0, grid.width[i] ?? 0];
  const kind = origin.service === "mobile" ? (isHandset(centreMHz) ? "handset" : "mast") : "broadcast";
  return { ...loud(band, i), kind, service: origin.service, centreMHz, widthMHz };
}

/** Carriers with centres from one frequency to another, of a list in rising order. */
function between(all: readonly Neighbouring[], fromMHz: number, toMHz: number): readonly Neighbouring[] {
  const found: Neighbouring[] = [];
  let low = 0;
  let high = all.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((all[middle]?.centreMHz ?? 0) < fromMHz) low = middle + 1;
    else high = middle;
  }
  for (let n = low; n < all.length; n++) {
    const one = all[n];
    if (!one || one.centreMHz > toMHz) break;
    found.push(one);
  }
  return found;
}

/** Rounding of sums of frequencies [MHz]. */
const TOUCH_MHZ = 1e-6;

/** Undefined of the carrier itself, and of one on its own frequencies: what those do to it is interference. */
function ratioTo(wanted: Neighbouring, by: Neighbouring, tuner: FrontEnd["tuner"]): BesideRatio | undefined {
  const offsetMHz = by.centreMHz - wanted.centreMHz;
  const gapMHz = Math.abs(offsetMHz) - (wanted.widthMHz + by.widthMHz) / 2;
  if (gapMHz < -TOUCH_MHZ) return undefined;
  const aboveDb = by.levelDbuv - wanted.levelDbuv;
  if (wanted.service === "fm")
    return { by, aboveDb, allowedDb: FM_HEARD_BELOW_DB - fmRatioDb({ offsetMHz, stereo: false }) };
  const { kind: neighbour } = by;
  const isFar = gapMHz > NEIGHBOURS_WITHIN_MHZ && tuner !== "can";
  const ratioDb = isFar
    ? farRatioDb(neighbour)
    : besideRatioDb({ neighbour, tuner, offsetMHz, gapMHz, widthMHz: wanted.widthMHz });
  return { by, aboveDb, allowedDb: -ratioDb };
}
