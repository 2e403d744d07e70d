/**
 * Supply and commands. Two passes: loads are added up from the roof downwards (what would hang on this
 * point), then supplies travel upwards, losing volts on the resistance they pass.
 * The drop on a leg is reckoned with the whole load upstream of it, as if this leg alone supplied it: the worst case.
 */
import type { PowerPath, PowerTreatment } from "../parts/contract.ts";
import type { Demand, Draw, Feed, Offer, PositionCommand, SwitchState } from "../signal/control.ts";
import { NO_DEMAND, positionAsked } from "../signal/control.ts";
import { remembered } from "../signal/remember.ts";

/** Loads at the outputs of a part, from the loads arriving at its inputs. */
export function demandsAtOutputs(
  id: string,
  power: PowerTreatment,
  atInput: (port: string) => Demand,
): Record<string, Demand> {
  const hanging = new Map<string, Demand[]>();
  const hang = (port: string, demand: Demand) => {
    if (demand !== NO_DEMAND) remembered(hanging, port, () => []).push(demand);
  };
  for (const path of power.paths ?? []) hang(path.from, atInput(path.to));
  const { load } = power;
  if (load && load.milliamps > 0)
    for (const port of load.ports)
      hang(port, {
        milliamps: load.milliamps,
        draws: [{ part: id, milliamps: load.milliamps }],
        shortedBy: null,
      });
  for (const port of power.shorts ?? []) hang(port, { milliamps: 0, draws: [], shortedBy: id });
  const out: Record<string, Demand> = {};
  for (const [port, demands] of hanging) out[port] = together(demands);
  return out;
}

/** Loads on one point; a part that is reached by several ways draws once. */
function together(demands: readonly Demand[]): Demand {
  const [only] = demands;
  if (only && demands.length === 1) return only;
  const draws = new Map<string, Draw>();
  let milliamps = 0;
  for (const demand of demands)
    for (const draw of demand.draws) {
      if (draws.has(draw.part)) continue;
      draws.set(draw.part, draw);
      milliamps += draw.milliamps;
    }
  const shortedBy = demands.find((demand) => demand.shortedBy !== null)?.shortedBy ?? null;
  return { milliamps, draws: [...draws.values()], shortedBy };
}

export function sameDemand(a: Demand, b: Demand): boolean {
  return (
    a === b ||
    (a.milliamps === b.milliamps &&
      a.shortedBy === b.shortedBy &&
      a.draws.length === b.draws.length &&
      a.draws.every(({ part, milliamps }, i) => {
        const other = b.draws[i];
        return part === other?.part && milliamps === other.milliamps;
      }))
  );
}

/** True when two feeds say the same in every respect; requests are compared as they are, not by content. */
export function sameFeed(a: Feed, b: Feed): boolean {
  return a === b || (a.length === b.length && a.every((offer, i) => sameOffer(offer, b[i])));
}

function sameOffer(a: Offer, b: Offer | undefined): boolean {
  return (
    b !== undefined &&
    a.part === b.part &&
    a.port === b.port &&
    a.kind === b.kind &&
    a.volts13 === b.volts13 &&
    a.volts18 === b.volts18 &&
    a.volts === b.volts &&
    a.ohms === b.ohms &&
    a.dropVolts === b.dropVolts &&
    a.limitMa === b.limitMa &&
    a.toneArrives === b.toneArrives &&
    a.request === b.request &&
    a.dormant === b.dormant
  );
}

/** Supplies of one line that are worked out: the strongest. Four receivers on one are many. */
export const MOST_SUPPLIES = 64;

/** What a part offers upstream at its inputs: its own supplies, and what it passes on from its outputs. */
export function offersAtInputs(
  id: string,
  power: PowerTreatment,
  atOutput: (port: string) => Feed,
  demandAt: (port: string) => Demand,
): {
  readonly offers: Record<string, Feed>;
  /** How many supplies were left out at the port where most were. */
  readonly left: number;
} {
  const gathered: Record<string, Offer[]> = {};
  const give = (port: string, offer: Offer) => {
    const list = gathered[port];
    if (list) list.push(offer);
    else gathered[port] = [offer];
  };
  for (const supply of power.supplies ?? []) {
    // Into a short the supply's protection shuts it down.
    const shorted = demandAt(supply.port).shortedBy !== null;
    const volts13 = shorted ? 0 : supply.volts13;
    const volts18 = shorted ? 0 : supply.volts18;
    give(supply.port, {
      part: id,
      port: supply.port,
      kind: supply.kind,
      volts13,
      volts18,
      volts: supply.request?.polarisation === "V" ? volts13 : volts18,
      ohms: 0,
      dropVolts: 0,
      limitMa: supply.limitMa,
      toneArrives: true,
      ...(supply.request ? { request: supply.request } : {}),
      dormant: false,
    });
  }
  for (const path of power.paths ?? [])
    for (const offer of atOutput(path.from)) give(path.to, passed(offer, path, demandAt(path.to).milliamps));

  const out: Record<string, Feed> = {};
  let left = 0;
  for (const [port, offers] of Object.entries(gathered)) {
    const feed = byTheStrongestWay(offers.sort(strongestFirst));
    out[port] = withinCount(feed);
    left = Math.max(left, feed.length - MOST_SUPPLIES);
  }
  return { offers: out, left };
}

/**
 * Each supply once, as it comes by its strongest way; its tone arrives if it does by any way that is open.
 * `offers`: strongest first.
 */
function byTheStrongestWay(offers: readonly Offer[]): readonly Offer[] {
  if (offers.length < 2) return offers;
  const bySource = new Map<string, Offer>();
  for (const offer of offers) {
    const source = `${offer.part}/${offer.port}`;
    const known = bySource.get(source);
    if (!known) bySource.set(source, offer);
    else if (offer.toneArrives && !known.toneArrives && offer.dormant === known.dormant)
      bySource.set(source, { ...known, toneArrives: true });
  }
  return bySource.size === offers.length ? offers : [...bySource.values()];
}

/** The strongest, among them one that sends the tone if any does: with it the rest can change no setting. */
function withinCount(feed: readonly Offer[]): readonly Offer[] {
  if (feed.length <= MOST_SUPPLIES) return feed;
  const kept = feed.slice(0, MOST_SUPPLIES);
  const sendsTone = (offer: Offer) => !offer.dormant && offer.toneArrives && offer.request?.half === "high";
  const tone = kept.some(sendsTone) ? undefined : feed.find(sendsTone);
  return tone ? [...kept.slice(0, -1), tone] : kept;
}

function passed(offer: Offer, path: PowerPath, milliamps: number): Offer {
  const drop = (path.dropVolts ?? 0) + ((path.ohms ?? 0) * milliamps) / 1000;
  const elsewhere = path.position !== undefined && positionOf(offer, path.heeds) !== path.position;
  return {
    ...offer,
    volts13: Math.max(0, offer.volts13 - drop),
    volts18: Math.max(0, offer.volts18 - drop),
    volts: Math.max(0, offer.volts - drop),
    ohms: offer.ohms + (path.ohms ?? 0),
    dropVolts: offer.dropVolts + drop,
    toneArrives: offer.toneArrives && path.tone,
    dormant: offer.dormant || elsewhere,
  };
}

/** Position an offer asks for: 1 when it sends no position command, or when the command does not arrive. */
function positionOf(offer: Offer, heeds: PositionCommand | undefined): number {
  return offer.toneArrives ? (positionAsked(offer.request, heeds) ?? 1) : 1;
}

function strongestFirst(a: Offer, b: Offer): number {
  return Number(a.dormant) - Number(b.dormant) || b.volts - a.volts;
}

/** True when some supply at one of the load's ports is strong enough; a part without load needs none. */
export function isPowered(power: PowerTreatment, atOutput: (port: string) => Feed): boolean {
  const { load } = power;
  if (!load || power.selfPowered) return power.selfPowered ?? true;
  return load.ports.some((port) => atOutput(port).some((o) => o.volts >= load.minVolts));
}

/**
 * Settings of the switched outputs of a part. The highest voltage on the line decides the polarisation,
 * any tone that arrives decides the half, the strongest speaker's command the position.
 */
export function switchStates(
  id: string,
  power: PowerTreatment,
  atOutput: (port: string) => Feed,
  before: Readonly<Record<string, SwitchState>> = {},
): Record<string, SwitchState> {
  const out: Record<string, SwitchState> = {};
  for (const declared of power.switches ?? []) {
    const offers = atOutput(declared.port);
    const awake = offers.filter((o) => !o.dormant);
    const speakers = awake.length > 0 ? awake : offers;
    const commanding = new Set(awake.filter((o) => o.kind === "commands").map((o) => `${o.part}/${o.port}`));
    const state: SwitchState = {
      id: `${id}/${declared.port}`,
      part: id,
      port: declared.port,
      offers,
      setting: settingOf(declared, speakers, power.selfPowered === true),
      thresholdVolts: declared.thresholdVolts,
      ...leastVoltsAt(declared.port, power, atOutput),
      contested: declared.by !== "stack" && commanding.size > 1,
    };
    const former = before[declared.port];
    out[declared.port] = former && sameState(former, state) ? former : state;
  }
  return out;
}

/** What a line must give, whatever is asked for by it, where nothing else keeps the part alive. */
function leastVoltsAt(
  line: string,
  { load, selfPowered }: PowerTreatment,
  atOutput: (port: string) => Feed,
): Pick<SwitchState, "leastVolts"> {
  if (!load || selfPowered || !load.ports.includes(line)) return {};
  const isFedElsewhere = load.ports.some(
    (port) => port !== line && atOutput(port).some((o) => volts13Of(o) >= load.minVolts),
  );
  return isFedElsewhere ? {} : { leastVolts: load.minVolts };
}

/** Volts of a supply while whoever may choose asks for vertical. */
function volts13Of(offer: Offer): number {
  return offer.kind === "commands" ? offer.volts13 : offer.volts;
}

function sameState(a: SwitchState, b: SwitchState): boolean {
  return (
    a.offers === b.offers &&
    a.setting === b.setting &&
    a.thresholdVolts === b.thresholdVolts &&
    a.leastVolts === b.leastVolts &&
    a.contested === b.contested
  );
}

type Declared = NonNullable<PowerTreatment["switches"]>[number];

function settingOf(declared: Declared, offers: Feed, selfPowered: boolean): string | null {
  const first = offers[0];
  if (!first || first.volts <= 0) return selfPowered && declared.by === "position" ? "1" : null;
  if (declared.by === "stack") return "stack";
  const position = String(Math.min(declared.positions, Math.max(1, positionOf(first, declared.heeds))));
  if (declared.by === "position") return position;
  const polarisation = first.volts > declared.thresholdVolts ? "H" : "V";
  const tone = offers.some((o) => o.toneArrives && o.request?.half === "high");
  const quadrant = `${polarisation}${tone ? "H" : "L"}`;
  return declared.by === "both" ? `${position}:${quadrant}` : quadrant;
}
