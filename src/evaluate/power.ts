/** Supplies that come together on a line: which counts, whether they keep a part alive, and how switches stand by them. */
import type { PowerTreatment } from "../parts/contract.ts";
import type { Demand, DiesAtVertical, Feed, Offer, PositionCommand, SwitchState } from "../signal/control.ts";
import { positionAsked } from "../signal/control.ts";

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
    a.dormant === b.dormant &&
    a.sleeps === b.sleeps
  );
}

/** Supplies of one line that are worked out: the strongest. Four receivers on one are many. */
export const MOST_SUPPLIES = 64;

/**
 * Each supply once, as it comes by its strongest way; its tone arrives if it does by any way that is open.
 * `offers`: strongest first.
 */
export function byTheStrongestWay(offers: readonly Offer[]): readonly Offer[] {
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
export function withinCount(feed: readonly Offer[]): readonly Offer[] {
  if (feed.length <= MOST_SUPPLIES) return feed;
  const kept = feed.slice(0, MOST_SUPPLIES);
  const sendsTone = (offer: Offer) => !offer.dormant && offer.toneArrives && offer.request?.half === "high";
  const tone = kept.some(sendsTone) ? undefined : feed.find(sendsTone);
  return tone ? [...kept.slice(0, -1), tone] : kept;
}

/** Position an offer asks for: 1 when it sends no position command, or when the command does not arrive. */
export function positionOf(offer: Offer, heeds: PositionCommand | undefined): number {
  return offer.toneArrives ? (positionAsked(offer.request, heeds) ?? 1) : 1;
}

export function strongestFirst(a: Offer, b: Offer): number {
  return Number(a.dormant) - Number(b.dormant) || b.volts - a.volts;
}

/** True when some supply at one of the load's ports is strong enough; a part without load needs none. */
export function isPowered(power: PowerTreatment, atOutput: (port: string) => Feed): boolean {
  const { load } = power;
  if (!load || power.selfPowered) return power.selfPowered ?? true;
  return load.ports.some((port) => atOutput(port).some((o) => o.volts >= load.minVolts));
}

/** Told of a part that is alive now and would not be if everybody asked for vertical; the former where it is the same. */
export function diesAtVertical(
  part: string,
  power: PowerTreatment,
  atOutput: (port: string) => Feed,
  {
    before,
    verticalVolts,
  }: {
    readonly before: DiesAtVertical | undefined;
    /** What it gets when all ask for vertical at once, where the offers do not tell [V]. */
    readonly verticalVolts: number | undefined;
  },
): DiesAtVertical | undefined {
  const { load } = power;
  if (!load || power.selfPowered || !isPowered(power, atOutput)) return undefined;
  const all = load.ports.flatMap((port) => atOutput(port));
  const volts = verticalVolts ?? all.reduce((most, offer) => Math.max(most, volts13Of(offer)), 0);
  if (volts >= load.minVolts) return undefined;
  const offers = all.filter((o) => o.kind === "commands");
  const isSame =
    before?.volts === volts && before.leastVolts === load.minVolts && sameFeed(before.offers, offers);
  return isSame ? before : { part, volts, leastVolts: load.minVolts, offers };
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
  if (declared.by === "polarisation") return polarisation;
  const tone = offers.some((o) => o.toneArrives && o.request?.half === "high");
  const quadrant = `${polarisation}${tone ? "H" : "L"}`;
  return declared.by === "both" ? `${position}:${quadrant}` : quadrant;
}
