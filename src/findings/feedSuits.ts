/** Whether a receiver can use a feed at all: is it the kind it needs, and can it set the switches on the way? */
import type { MenuOscillators, ReceiverInput } from "../parts/contract.ts";
import { satelliteBandOn, skyHalfOf } from "../parts/planSatellite.ts";
import {
  C_BAND_LO_MHZ,
  KA_BAND_LO_MHZ,
  UNIVERSAL_HIGH_LO_MHZ,
  UNIVERSAL_LOW_LO_MHZ,
} from "../parts/quadrants.ts";
import type { Band, Stack } from "../signal/band.ts";
import type { SkyHalf } from "../signal/carrier.ts";
import type { Condition, Offer } from "../signal/control.ts";
import { marginDb } from "../signal/readout.ts";
import { oscillatorOf } from "../signal/treat.ts";
import type { LostCarrier } from "./carrierResult.ts";
import { deadAtVertical } from "./deadAtVertical.ts";
import type { MissingReason } from "./missing.ts";

/** What a receiver's menu has where nobody changed it [MHz]; EN 61319-1 values, from memory. */
const UNIVERSAL_MENU: Required<Omit<MenuOscillators, "widebandMHz">> = {
  lowMHz: UNIVERSAL_LOW_LO_MHZ,
  highMHz: UNIVERSAL_HIGH_LO_MHZ,
  cBandMHz: C_BAND_LO_MHZ,
  kaBandMHz: KA_BAND_LO_MHZ,
};

/** So far beside where it looks a receiver still finds a carrier [MHz]; from memory. */
const SEARCHES_MHZ = 5;

/** An input with what it is tuned by: alone, as if nobody else spoke to any switch; or only to what is selected now. */
export type TunedInput = {
  readonly receiver: string;
  readonly input: ReceiverInput;
  readonly alone: boolean;
  readonly selectedOnly?: boolean;
};

/** Why the whole band is of no use at this input; undefined when it is. */
export function whyUnusable(tuned: TunedInput, band: Band): LostCarrier | undefined {
  const wrong = wrongFeed(tuned.input, band);
  if (wrong) return { got: false, why: "wrong feed", reason: wrong };
  const changed = leadsChangedAt(band);
  if (changed) {
    const { part } = changed.at;
    return { got: false, why: "wrong feed", reason: { kind: "leads changed", part }, culprit: { part } };
  }
  for (const condition of band.conditions) {
    const barrier = whyNotSet(tuned, condition);
    if (barrier) return barrier;
  }
  return undefined;
}

/**
 * The switch behind which this band hides under another quadrant's name. The receiver that asks for vertical low
 * and is given vertical high finds nothing where it looks.
 */
function leadsChangedAt(band: Band): Condition | undefined {
  const own = `${band.origin.polarisation}${band.half === "low" ? "L" : "H"}`;
  if (!band.half) return undefined;
  return band.conditions.find(({ setting }) => {
    const quadrant = /[VH][LH]$/.exec(setting)?.[0];
    return quadrant !== undefined && quadrant !== own;
  });
}

/** What is wrong with a kind of feed for an input; undefined when it suits. */
function wrongFeed(input: ReceiverInput, band: Band): MissingReason | undefined {
  const { service, polarisation, circular } = band.origin;
  if (service !== "satellite") return undefined;
  if (band.shifts.length === 0) return { kind: "not converted" };
  const lo = oscillatorOf(band);
  if (input.feed === "wideband") {
    if (band.half) return { kind: "switched feed on a wideband input" };
    if (input.polarisation && polarisation && input.polarisation !== polarisation)
      return {
        kind: "wrong polarisation at the input",
        port: input.port,
        input: input.polarisation,
        arrives: polarisation,
        ...(circular ? { circular } : {}),
      };
    const { menu } = input;
    return menu?.widebandMHz === undefined ? undefined : shiftedFrom(menu.widebandMHz, lo);
  }
  if (input.feed === "stacked") return { kind: "plain feed on a single-cable input" };
  const { half } = band;
  if (!half) return { kind: "wideband feed on a switched input" };
  const undivided = menuOfUndivided(input, band);
  if (undivided !== undefined) return shiftedFrom(undivided, lo, sidesOf(undivided, band));
  const menu = menuMHz(input, half);
  return shiftedByUnit(menu, half, band) ?? shiftedFrom(menu, lo);
}

/** A unit that makes quadrants out of whole polarisations, and is set to another oscillator than the LNB has. */
function shiftedByUnit(menu: number, half: SkyHalf, { shifts, conditions }: Band): MissingReason | undefined {
  const [first, ...after] = shifts;
  const unit = conditions.findLast(({ setting }) => /[VH][LH]$/.test(setting))?.at.part;
  if (first === undefined || after.length === 0 || unit === undefined) return undefined;
  const usual = usualMHz(half);
  if (shiftedFrom(menu, usual)) return undefined;
  return setAt(unit, shiftedFrom(usual - after.reduce((sum, shift) => sum + shift, 0), first));
}

function setAt(unit: string, reason: OtherOscillator | undefined): OtherOscillator | undefined {
  return reason && { ...reason, unit };
}

function usualMHz(half: SkyHalf): number {
  return menuMHz({ menu: UNIVERSAL_MENU }, half);
}

/** Oscillator that a receiver reckons with for a half of the sky band [MHz]. */
function menuMHz({ menu = UNIVERSAL_MENU }: Pick<ReceiverInput, "menu">, half: SkyHalf): number {
  return half === "low" ? menu.lowMHz : menu.highMHz;
}

/** Oscillator that a receiver reckons with for a band without halves [MHz]; undefined for one of Ku band. */
function menuOfUndivided({ menu }: Pick<ReceiverInput, "menu">, band: Band): number | undefined {
  const of = satelliteBandOn(band);
  if (of === "Ku") return undefined;
  return of === "C"
    ? (menu?.cBandMHz ?? UNIVERSAL_MENU.cBandMHz)
    : (menu?.kaBandMHz ?? UNIVERSAL_MENU.kaBandMHz);
}

type OtherOscillator = Extract<MissingReason, { readonly kind: "other oscillator" }>;

/**
 * A carrier at f appears at f less the real oscillator, and is looked for at f less that of the menu; with oscillators above
 * the signal at each of them less f.
 */
function shiftedFrom(
  menu: number,
  real: number,
  sides?: NonNullable<OtherOscillator["sides"]>,
): OtherOscillator | undefined {
  if (Math.abs(menu - real) <= SEARCHES_MHZ) return undefined;
  return { kind: "other oscillator", menuMHz: menu, realMHz: real, ...(sides ? { sides } : {}) };
}

/** On which sides of a band from the sky the oscillators of menu and LNB stand. */
function sidesOf(menu: number, { grid, isInverted }: Band): OtherOscillator["sides"] {
  const isAbove = menu > (grid.plan[grid.index[0] ?? 0]?.airMHz ?? 0);
  if (isAbove !== (isInverted === true)) return "either";
  return isAbove ? "above" : undefined;
}

/**
 * The same on a single-cable feed. The receiver asks for a frequency behind the oscillator of its menu, and is given
 * what stands there behind the real one. A unit for wideband feeds reckons from the universal ones to the one that it is
 * set to.
 */
export function shiftedOnUserBand(
  input: ReceiverInput,
  held: Band,
  airMHz: number,
  { part, widebandLoMHz }: Pick<Stack, "part" | "widebandLoMHz">,
): MissingReason | undefined {
  const half = held.half ?? skyHalfOf(airMHz);
  const lo = oscillatorOf(held);
  const undivided = menuOfUndivided(input, held);
  if (undivided !== undefined) return shiftedFrom(undivided, lo, sidesOf(undivided, held));
  const [menu, usual] = [menuMHz(input, half), usualMHz(half)];
  if (held.half) return shiftedFrom(menu, lo);
  const set = widebandLoMHz ?? lo;
  const byUnit = shiftedFrom(menu, usual) ? undefined : setAt(part, shiftedFrom(set, lo));
  return byUnit ?? shiftedFrom(menu, usual + lo - set);
}

/**
 * Why a receiver cannot make a feed come on the way up from a place that its commands do reach, as if nobody else
 * spoke; undefined where it can, or where it gives too few volts itself.
 */
export function whyOutOfReach(
  { part, port, toneArrives, request }: Offer,
  band: Band,
): LostCarrier | undefined {
  const { stack } = band;
  if (stack && request?.userBands && toneArrives) {
    const heard = stack.control.offers.find((o) => o.part === part && o.port === port);
    if (!heard?.toneArrives) return notSelectable({ kind: "no message", part: stack.part }, stack.part);
  }
  for (const condition of band.conditions) {
    const barrier = whyNotSet({ receiver: part, input: { port }, alone: true }, condition);
    const own = condition.at.offers.find((o) => o.part === part && o.port === port);
    if (barrier && !(own && givesTooLittle(own, barrier.reason))) return barrier;
  }
  const dead = deadAtVertical({ receiver: part, port }, band);
  if (!dead || (dead.left && band.level.some((_, i) => dead.left && marginDb(dead.left, i) >= 0)))
    return undefined;
  const feeds = band.failing?.flatMap(({ at }) => at.offers).find((o) => o.part === part && o.port === port);
  return feeds && !givesTooLittle(feeds, dead.lost.reason) ? dead.lost : undefined;
}

function givesTooLittle({ volts13, volts18, dropVolts }: Offer, reason: MissingReason | undefined): boolean {
  if (reason?.kind === "too few volts") return volts18 + dropVolts <= reason.thresholdVolts;
  return reason?.kind === "dies at vertical" && volts13 + dropVolts < reason.leastVolts;
}

type Asking = Pick<TunedInput, "receiver" | "alone"> & { readonly input: { readonly port: string } };

/** Whether the receiver itself can make a switch stand as needed; what keeps it from that if not. */
function whyNotSet({ receiver, input, alone }: Asking, condition: Condition): LostCarrier | undefined {
  const { at, setting } = condition;
  const { part } = at;
  const speaks = at.offers.filter((o) => o.kind === "commands");
  const own = speaks.find((o) => o.part === receiver && o.port === input.port);
  const foreign = alone ? undefined : speaks.find((o) => !o.dormant && o !== own);
  if (!own || foreign) {
    if (at.setting === setting) return undefined;
    const isFixed = at.offers.some((o) => o.kind === "plain" && o.part === receiver && o.port === input.port);
    if (isFixed && !foreign) return notSelectable({ kind: "fixed supply", part }, receiver);
    return foreign
      ? notSelectable({ kind: "set by another", part, by: foreign.part }, part)
      : notSelectable({ kind: "no command", part }, part);
  }
  const quadrant = /[VH][LH]?$/.exec(setting)?.[0];
  const { thresholdVolts, leastVolts } = at;
  if (quadrant?.startsWith("H") && own.volts18 <= thresholdVolts)
    return notSelectable({ kind: "too few volts", part, volts: own.volts18, thresholdVolts }, part);
  if (quadrant?.startsWith("V") && leastVolts !== undefined && !holds(at, leastVolts, own))
    return notSelectable({ kind: "dies at vertical", part, volts: own.volts13, leastVolts }, part);
  const needsTone = quadrant?.[1] === "H" || Number.parseInt(setting, 10) > 1;
  if (needsTone && !own.toneArrives) return notSelectable({ kind: "no tone", part }, part);
  return undefined;
}

/** Whether the line keeps a part alive while its receiver asks for vertical. */
function holds({ offers }: Condition["at"], leastVolts: number, own: Offer): boolean {
  return own.volts13 >= leastVolts || offers.some((o) => o.kind === "plain" && o.volts >= leastVolts);
}

/** A feed that is there, but that this receiver cannot have, because of a part. */
export function notSelectable(reason: MissingReason, part: string): LostCarrier {
  return { got: false, why: "not selectable", reason, culprit: { part } };
}
