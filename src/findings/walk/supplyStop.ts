/** What keeps a supply from a part: searched from that part downwards, until the part to take in hand is found. */
import type { PartId, PortRef } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { PowerTreatment, Supply } from "../../parts/contract.ts";
import { describedOptions, optionMeaning } from "../../parts/meanings.ts";
import type { Service } from "../../signal/carrier.ts";
import { remembered } from "../../signal/remember.ts";
import { passesService } from "../passesService.ts";
import { type HeadStop, headStop, portsFedFromAbove } from "./headStop.ts";
import { type Setting, settingFor } from "./settings.ts";

/** A supply arrives at an output and goes no further. */
type Blocking = {
  readonly why: "blocks";
  readonly part: PartId;
  readonly port: string;
  readonly supply: PartId;
  readonly volts: number;
  /** A joint that is a defect itself: a sound one passes it. */
  readonly isBroken: boolean;
  /** The input that it would have to go on to, and the one that it goes to instead, where nobody draws on it. */
  readonly input: string;
  readonly feeds?: string;
  /** With which it would pass, and another output from which it passes as it is. */
  readonly setting?: Setting;
  readonly passesFrom?: string;
};

/** Why no supply comes, and the part at which it ends or should begin. */
export type SupplyStop =
  | HeadStop
  /** It joins the inner conductor to the screen. */
  | { readonly why: "short"; readonly part: PartId; readonly port: string; readonly supply: PartId }
  | Blocking
  /** The supply below has shut down, because more is drawn than it gives. */
  | {
      readonly why: "overloaded";
      readonly part: PartId;
      readonly milliamps: number;
      readonly limitMa: number;
    }
  /** It feeds, or passes supply to, another input than the one that leads up from here, which suits no such signal. */
  | {
      readonly why: "wrong input";
      readonly part: PartId;
      readonly port: string;
      readonly feeds: string;
      readonly supply: PartId;
    }
  /** Its mains is off, or it is a receiver that is off. */
  | { readonly why: "mains off" | "receiver off"; readonly part: PartId; readonly setting: Setting }
  /** It saves energy, and none of the receivers on its outputs is on. */
  | { readonly why: "asleep"; readonly part: PartId }
  /** It feeds as it is made, and has been set not to. */
  | { readonly why: "not set to feed"; readonly part: PartId; readonly setting: Setting }
  /** A unit above, which feeds away from here, or into the wrong end. */
  | {
      readonly why: "wrong side";
      readonly part: PartId;
      readonly volts: number;
      /** It feeds downwards, and so into an input that takes no supply. */
      readonly isDown?: true;
    }
  /** Nothing is connected to this output, by which a supply would come. */
  | { readonly why: "open"; readonly part: PartId; readonly port: string }
  /** Nothing below feeds it; `nearest`: what in the design could, and the setting with which it would. */
  | {
      readonly why: "nothing feeds";
      readonly part: PartId;
      readonly nearest?: PartId;
      readonly setting?: Setting;
    };

/** The surest first: what is certainly wrong before what may be meant. */
const RANK: Readonly<Record<SupplyStop["why"], number>> = {
  short: 0,
  overloaded: 0,
  blocks: 1,
  "wrong input": 1,
  "mains off": 2,
  "receiver off": 2,
  asleep: 2,
  "nothing above feeds": 6,
  "not set to feed": 3,
  "wrong side": 4,
  open: 5,
  "nothing feeds": 6,
};

type Found = { readonly stop: SupplyStop; readonly steps: number };

/** What is searched for: a supply that can give enough volts, which these parts can. */
type Wanted = {
  readonly evaluation: Evaluation;
  readonly minVolts: number;
  readonly able: ReadonlySet<PartId>;
};

/** What keeps the supply from a part that lives on one. What can never give it enough volts is none. */
export function supplyStop(evaluation: Evaluation, part: PartId): SupplyStop {
  const record = evaluation.record(part);
  if (record && portsFedFromAbove(record).length > 0) return headStop(evaluation, record);
  const { ports = [], minVolts = 0 } = record?.power.load ?? {};
  const wanted: Wanted = { evaluation, minVolts, able: feeders(evaluation, minVolts) };
  const found = ports.flatMap((port): Found[] => {
    const far = record?.joined[port];
    if (!far) return [{ stop: { why: "open", part, port }, steps: 0 }];
    const below = searched(wanted, far);
    return below ? [below] : [];
  });
  const best = likeliest(evaluation, found);
  if (record && best && RANK[best.stop.why] < RANK["wrong side"])
    return judged(evaluation, record, best.stop);
  const above = record && feederAbove(evaluation, record);
  if (above) return above;
  if (best?.stop.why === "nothing feeds") return { ...best.stop, nearest: best.stop.part, part };
  if (best?.stop.why === "open" && ports.length === 1) return best.stop;
  const nearest = nearestFeeder(wanted, part);
  return { why: "nothing feeds", part, ...(nearest === undefined ? {} : { nearest }) };
}

/**
 * A part that passes supply elsewhere is wired wrongly where its other input would suit the signal better; and an output
 * that passes the supply is no way out where it does not pass the signal.
 */
function judged(evaluation: Evaluation, victim: PartRecord, stop: SupplyStop): SupplyStop {
  if (stop.why !== "blocks") return stop;
  const record = evaluation.record(stop.part);
  const service = serviceOf(victim);
  if (!record || !service) return stop;
  const { passesFrom, ...others } = stop;
  const { part, supply, feeds, input } = others;
  if (feeds !== undefined && !passesService(record, input, service))
    return { why: "wrong input", part, port: input, feeds, supply };
  return passesFrom === undefined || passesService(record, input, service, passesFrom) ? stop : others;
}

/** What a part without supply would send down: what comes into it. */
function serviceOf(record: PartRecord): Service | undefined {
  return Object.values(record.inputs).flatMap((spectrum) => spectrum.bands)[0]?.origin.service;
}

/** Of like stops, the one of a unit that feeds nobody yet: it was put in for this. Then the nearest. */
function likeliest(evaluation: Evaluation, found: readonly Found[]): Found | undefined {
  const idle = ({ stop }: Found) => Number(isOfIdleUnit(evaluation, stop));
  return found.reduce<Found | undefined>((best, one) => {
    if (!best) return one;
    const by = RANK[one.stop.why] - RANK[best.stop.why] || idle(best) - idle(one) || one.steps - best.steps;
    return by < 0 ? one : best;
  }, undefined);
}

function isOfIdleUnit(evaluation: Evaluation, stop: SupplyStop): boolean {
  return stop.why === "blocks" && idleFeeders(evaluation).has(stop.supply);
}

const searches = new WeakMap<Evaluation, Map<string, Found | null>>();

/** The likeliest stop from an input downwards; each place is searched once in an evaluation for the same volts. */
function searched(wanted: Wanted, start: PortRef): Found | undefined {
  const { evaluation, minVolts } = wanted;
  const known = remembered(searches, evaluation, () => new Map<string, Found | null>());
  const keyOf = (place: PortRef) => `${minVolts}/${place.join("/")}`;
  // Not by recursion: a line may be thousands of parts long. Parts on a loop are left out, so it comes to an end.
  const open: PortRef[] = [start];
  for (let at = open.at(-1); at; at = open.at(-1)) {
    const key = keyOf(at);
    const record = evaluation.record(at[0]);
    const isOpen = record && !record.looped && !known.has(key) && !isUnit(wanted, record, at[1]);
    const below = isOpen ? joinedBelow(record, at[1]) : [];
    const waiting = below.filter((far) => !known.has(keyOf(far)));
    if (waiting.length > 0) {
      open.push(...waiting);
      continue;
    }
    open.pop();
    if (known.has(key)) continue;
    const further = below.flatMap((far) => {
      const found = known.get(keyOf(far));
      return found ? [{ ...found, steps: found.steps + 1 }] : [];
    });
    const own =
      record && !record.looped ? stopsAt(wanted, record, at[1]).map((stop) => ({ stop, steps: 0 })) : [];
    known.set(key, likeliest(evaluation, [...own, ...further]) ?? null);
  }
  return known.get(keyOf(start)) ?? undefined;
}

/** Outputs from which a part passes supply to an input. */
function legsTo(record: PartRecord, input: string): readonly string[] {
  return (record.power.paths ?? []).filter((path) => path.to === input).map((path) => path.from);
}

/** Where a search goes on: down the legs that pass supply, or past a part that blocks. */
function joinedBelow(record: PartRecord, input: string): readonly PortRef[] {
  const legs = legsTo(record, input);
  const outputs = record.ports.filter((p) => p.side === "out").map((p) => p.id);
  return (legs.length > 0 ? legs : outputs).flatMap((port) => {
    const far = record.joined[port];
    return far ? [far] : [];
  });
}

function stopsAt(wanted: Wanted, record: PartRecord, input: string): readonly SupplyStop[] {
  const part = record.part.id;
  const legs = legsTo(record, input);
  const waiting = record.ports.flatMap((p) => {
    const offer = legs.includes(p.id)
      ? undefined
      : record.feeds[p.id]?.find((each) => wanted.able.has(each.part));
    return offer ? [{ port: p.id, offer }] : [];
  });
  const stops = waiting.map(({ port, offer }): SupplyStop => {
    const common = { part, supply: offer.part };
    if (record.power.shorts?.includes(port)) return { ...common, why: "short", port };
    const feeds = idleInput(record, port);
    const setting = settingFor(record, (power) =>
      (power.paths ?? []).some((path) => path.from === port && path.to === input),
    );
    return {
      ...common,
      why: "blocks",
      port,
      volts: offer.volts,
      isBroken: record.kind.trade.defect === true,
      input,
      ...(legs[0] === undefined ? {} : { passesFrom: legs[0] }),
      ...(feeds === undefined ? {} : { feeds }),
      ...(setting ? { setting: { option: setting.option, value: setting.value } } : {}),
    };
  });
  const open = legs.filter((leg) => !record.joined[leg]);
  const isClosed = isUnit(wanted, record, input) || waitsItself(record, legs);
  return [
    ...(isClosed ? stops.filter((stop) => stop.why === "short") : stops),
    ...ownSupply(wanted, record, input),
    ...open.map((port): SupplyStop => ({ why: "open", part, port })),
  ];
}

/** Where a unit should feed an input, the way past it is closed on purpose: whatever is below is none of its supplies. */
function isUnit(wanted: Wanted, record: PartRecord, input: string): boolean {
  return ownSupply(wanted, record, input).some(({ why }) => why === "mains off" || why === "not set to feed");
}

/** A dead part that lives on the supply that it passes on: what keeps that away is to blame, not the part. */
function waitsItself({ power, powered }: PartRecord, legs: readonly string[]): boolean {
  return !powered && legs.some((leg) => power.load?.ports.includes(leg));
}

/** An input to which a part passes this supply although nothing there draws on it. */
function idleInput(record: PartRecord, output: string): string | undefined {
  const inputs = (record.power.paths ?? []).filter((path) => path.from === output).map((path) => path.to);
  return inputs.find((port) => (record.demands[port]?.milliamps ?? 0) === 0);
}

/** What a part that could feed an input does instead. */
function ownSupply({ minVolts, able }: Wanted, record: PartRecord, input: string): readonly SupplyStop[] {
  const part = record.part.id;
  if (!able.has(part)) return [];
  const { supplies = [], selfPowered } = record.power;
  const own = supplies.find((s) => s.port === input && !s.down);
  if (own && record.shutDown.includes(input)) return [shutDownBy(record, own)];
  if (own) return isAsleep(record, own) ? [{ why: "asleep", part }] : [];
  // One that feeds downwards is set so: it is not led to a wrong input.
  const isIdle = supplies.every((s) => !s.down && (record.demands[s.port]?.milliamps ?? 0) === 0);
  const [first] = supplies;
  if (first && isIdle && !record.kind.reception)
    return [{ why: "wrong input", part, port: input, feeds: first.port, supply: part }];
  const tried =
    settingFor(record, (power) =>
      (power.supplies ?? []).some((s) => s.port === input && s.volts18 >= minVolts),
    ) ?? settingFor(record, (power) => (power.supplies ?? []).some((s) => s.port === input));
  if (!tried) return [];
  const setting = { option: tried.option, value: tried.value };
  // What a TV set gives an aerial is a setting of its own: that it is off says nothing of the set.
  const isForAerials = optionMeaning(record.kind, "aerial supply") === tried.option;
  if (record.kind.reception && !isForAerials) return [{ why: "receiver off", part, setting }];
  if (selfPowered !== true && tried.power.selfPowered === true) return [{ why: "mains off", part, setting }];
  const isUsual = record.kind.options.shape[tried.option]?.safeParse(undefined).data === tried.value;
  return [{ why: isUsual ? "not set to feed" : "nothing feeds", part, setting }];
}

/** Whether a unit that saves energy gives nothing now. */
function isAsleep({ offers, part }: PartRecord, { port, whileFedAt }: Supply): boolean {
  const own = offers[port]?.find((offer) => offer.part === part.id && offer.port === port);
  return whileFedAt !== undefined && own?.volts === 0;
}

/** Why a supply is shut down: a short that it feeds into, or all that draws on what shares its limit. */
function shutDownBy({ part, power, demands }: PartRecord, own: Supply): SupplyStop {
  const shortedBy = demands[own.port]?.shortedBy;
  if (shortedBy) return { why: "short", part: shortedBy, port: "out", supply: part.id };
  const sharing = (power.supplies ?? []).filter(
    ({ port, shares }) => port === own.port || (shares !== undefined && shares === own.shares),
  );
  const milliamps = sharing.reduce((sum, { port }) => sum + (demands[port]?.milliamps ?? 0), 0);
  return { why: "overloaded", part: part.id, milliamps, limitMa: own.limitMa };
}

const feedersOf = new WeakMap<Evaluation, Map<number, ReadonlySet<PartId>>>();

/** Parts of a design that feed others with at least so many volts, or could. */
function feeders(evaluation: Evaluation, minVolts: number): ReadonlySet<PartId> {
  const known = remembered(feedersOf, evaluation, () => new Map<number, ReadonlySet<PartId>>());
  const found =
    known.get(minVolts) ??
    new Set(evaluation.records.filter((r) => couldFeed(r, minVolts)).map((r) => r.part.id));
  known.set(minVolts, found);
  return found;
}

/** As it is set, by another setting, or by the knob for its volts: the menu of a TV set gives 5 V and no more. */
function couldFeed(record: PartRecord, minVolts: number): boolean {
  const suits = ({ supplies = [] }: PowerTreatment) => supplies.some((s) => s.volts18 >= minVolts);
  if (suits(record.power) || settingFor(record, suits)) return true;
  const key = optionMeaning(record.kind, "supply volts");
  const most = key === undefined ? undefined : describedOptions(record.kind).get(key)?.max;
  return most !== undefined && most >= minVolts;
}

const idleOf = new WeakMap<Evaluation, ReadonlyMap<PartId, number>>();

/** Units that feed an input on which nobody draws, and with how many volts. */
function idleFeeders(evaluation: Evaluation): ReadonlyMap<PartId, number> {
  return remembered(idleOf, evaluation, () => {
    const idle = evaluation.records.flatMap(({ part, power, demands }): [PartId, number][] => {
      const supply = power.supplies?.[0];
      const isIdle = (power.supplies ?? []).every(({ port }) => (demands[port]?.milliamps ?? 0) === 0);
      return supply?.kind === "plain" && isIdle ? [[part.id, supply.volts18]] : [];
    });
    return new Map(idle);
  });
}

/** A unit on the other side, whose supply goes up to where nobody draws on it. */
function feederAbove(evaluation: Evaluation, from: PartRecord): SupplyStop | undefined {
  const idle = idleFeeders(evaluation);
  if (idle.size === 0) return undefined;
  const seen = new Set([from.part.id]);
  for (const id of seen) {
    const record = evaluation.record(id);
    if (!record || record.looped) continue;
    const volts = id === from.part.id ? undefined : idle.get(id);
    const isDown = (record.power.supplies ?? []).some(({ down }) => down);
    if (volts !== undefined) return { why: "wrong side", part: id, volts, ...(isDown ? { isDown } : {}) };
    for (const port of record.ports) {
      const far = port.side === "in" ? record.joined[port.id] : undefined;
      if (far) seen.add(far[0]);
    }
  }
  return undefined;
}

/** The part nearest in the design that feeds an input of its own, or could. */
function nearestFeeder({ evaluation, able }: Wanted, from: PartId): PartId | undefined {
  if (able.size === 0) return undefined;
  const seen = new Set([from]);
  for (const id of seen) {
    if (id !== from && able.has(id)) return id;
    for (const end of Object.values(evaluation.record(id)?.joined ?? {})) seen.add(end[0]);
  }
  // Parts that stand apart: whichever, as long as it is the same however they are drawn.
  return [...able].filter((id) => !seen.has(id)).sort()[0];
}
