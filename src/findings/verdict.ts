/** Receivers and outlets, judged: facts only, words are made of them in `src/sentences/verdict.ts`. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import { optionMeaning } from "../parts/meanings.ts";
import type { Band } from "../signal/band.ts";
import { type Service, televisionOf } from "../signal/carrier.ts";
import { cniDb } from "../signal/readout.ts";
import type { ServiceVerdict, TunerVerdict, Verdict } from "./finding.ts";
import { isFormer } from "./former.ts";
import { barrierOf, comingOut, type HandedOn, type Sockets, uselessBy } from "./handedOn.ts";
import { inletsOf } from "./inlets.ts";
import { byUrgency, type Margin } from "./margin.ts";
import type { Missing } from "./missing.ts";
import type { ReceiverLoss } from "./receiverLosses.ts";
import type { ReceptionResult } from "./reception.ts";
import { outdoneOn } from "./rivals.ts";
import { soundHandedOn } from "./sound.ts";
import type { TunerReception } from "./tuners.ts";
import { isOfUse, userBandsBehind } from "./userBandsBehind.ts";

/** A receiver with all its tuners; `losses`: what it misses, followed to where it is lost; `margins`: what it has to spare. */
export function receiverVerdict(
  record: PartRecord,
  reception: ReceptionResult,
  losses: readonly ReceiverLoss[],
  margins: ReadonlyMap<Service, Margin>,
): Verdict {
  const common = losses.filter((l) => l.tuner === undefined);
  const services = reception.services.map(
    ({ missing: _, ...service }): ServiceVerdict => ({
      ...service,
      ...marginField(margins.get(service.service)),
      missing: common.filter((l) => l.service === service.service).map((l) => l.missing),
    }),
  );
  const tuners = reception.tuners.map((tuner) => tunerVerdict(tuner, losses));
  const verdict = { part: record.part.id, role: "receiver" as const, services, tuners };
  const idle = idleReason(record, reception);
  if (idle) return { ...verdict, state: isAsleep(idle) ? "works" : "fails", idle };
  return losses.length > 0 ? { ...verdict, state: "fails" } : decidedBy(margins, verdict);
}

/** Where nothing is missing, what has the least to spare decides. */
function decidedBy(margins: ReadonlyMap<Service, Margin>, verdict: Omit<Verdict, "state">): Verdict {
  const [deciding] = [...margins.values()].sort(byUrgency);
  if (!deciding) return { ...verdict, state: "works" };
  const { marginDb, tightest, edge, culprit } = deciding;
  const why = { ...(edge ? { edge } : {}), ...(culprit ? { culprit } : {}) };
  return { ...verdict, state: edge ? "edge" : "works", marginDb, tightest, ...why };
}

function marginField(margin: Margin | undefined): Pick<ServiceVerdict, "marginDb"> {
  return margin ? { marginDb: margin.marginDb } : {};
}

/** Why there is nothing to judge at a receiver; undefined where there is. */
export function idleReason(record: PartRecord, { services }: ReceptionResult): Verdict["idle"] {
  if (!record.ports.some((p) => p.side === "in" && record.joined[p.id])) return "nothing connected";
  if (services.length === 0) return isInStandby(record) ? "standby" : "off";
  return services.every((s) => s.wanted === 0) ? "no source" : undefined;
}

/** Whether a receiver is off, or in standby: it asks for nothing now. */
export function isAsleep(idle: Verdict["idle"]): boolean {
  return idle === "off" || idle === "standby";
}

function isInStandby({ kind, options }: PartRecord): boolean {
  const state = optionMeaning(kind, "receiver state");
  return state !== undefined && options[state] === "standby";
}

function tunerVerdict(tuner: TunerReception, losses: readonly ReceiverLoss[]): TunerVerdict {
  const { number, input, userBand, together, missing } = tuner;
  const own = new Set(missing.map((group) => group.key));
  const isOwn = (loss: ReceiverLoss) =>
    loss.tuner === number ||
    (loss.tuner === undefined && loss.service === tuner.service && loss.groups.some((key) => own.has(key)));
  return {
    number,
    input,
    ...(userBand === undefined ? {} : { userBand }),
    wanted: together.of,
    got: together.got,
    missing: losses.filter(isOwn).map((l) => l.missing),
  };
}

/**
 * An outlet is judged by what arrives at it: does it hand all of that on, on the socket meant for it? What it has to
 * spare there is known with more of the design (`withMargins`).
 */
export function outletVerdict(record: PartRecord): Verdict | undefined {
  const delivery = record.kind.delivery?.(record.options);
  if (!delivery) return undefined;
  const offered = [...new Set(delivery.sockets.flatMap((s) => s.services))];
  const services = offered
    .map((service) => outletService(record, delivery.sockets, service))
    .filter((s) => s.wanted > 0);
  const verdict = { part: record.part.id, role: "outlet" as const, services, tuners: [] };
  if (services.length === 0) return { ...verdict, state: "fails", idle: "no source" };
  return { ...verdict, state: services.every((s) => s.got === s.wanted) ? "works" : "fails" };
}

/** The verdict on an outlet with what its carriers have to spare. */
export function withMargins({ state, ...verdict }: Verdict, margins: ReadonlyMap<Service, Margin>): Verdict {
  const services = verdict.services.map((s) => ({ ...s, ...marginField(margins.get(s.service)) }));
  return state === "works" ? decidedBy(margins, { ...verdict, services }) : { ...verdict, services, state };
}

/** A socket for a service: the inputs that lead to it, and the user bands that receivers behind it use. */
type Line = { readonly port: string; readonly inputs: readonly string[]; readonly used: ReadonlySet<number> };

/** User bands that are of use at an input; empty: any of them, as a socket that nobody is set behind may want each. */
function usedAt(lines: readonly Line[], input: string): ReadonlySet<number> {
  const behind = lines.filter((line) => line.inputs.includes(input));
  const all = (behind.length > 0 ? behind : lines).map((line) => line.used);
  return all.some((used) => used.size === 0) ? new Set() : new Set(all.flatMap((used) => [...used]));
}

function outletService(record: PartRecord, sockets: Sockets, service: Service): ServiceVerdict {
  const lines = sockets
    .filter((s) => s.services.includes(service))
    .map(({ port }): Line => {
      const inputs = inletsOf(record, port).map((inlet) => inlet.port);
      return { port, inputs, used: userBandsBehind(record, port) };
    });
  // Of two single-cable lines through one plate each has user bands of its own.
  const arriving = new Set<string>();
  const modes: string[] = [];
  let isStacked = false;
  for (const [input, spectrum] of Object.entries(record.inputs)) {
    const used = usedAt(lines, input);
    const isOutdone = outdoneOn(spectrum.bands);
    for (const band of spectrum.bands) {
      // What an earlier filter removed as a whole was never meant for this outlet.
      if (band.origin.service !== service || !band.cut.includes(0)) continue;
      isStacked = band.stack !== undefined;
      for (let i = 0; i < band.level.length; i++)
        if (isOfUse(band, i, used) && !isOutdone(band, i) && !isFormer(band, i)) {
          arriving.add(keyOf(band, i, input));
          modes.push(modeAt(band, i));
        }
    }
  }
  const got = new Set<string>();
  let levelMin = Number.POSITIVE_INFINITY;
  let levelMax = Number.NEGATIVE_INFINITY;
  let cnMin = Number.POSITIVE_INFINITY;
  const outOfReach = new Map<string, Missing>();
  const stations = new Map<string, HandedOn>();
  for (const carrier of comingOut(record, sockets, service)) {
    const { port, band, i } = carrier;
    const inputs = lines.find((line) => line.port === port)?.inputs ?? [];
    const keys = inputs.map((input) => keyOf(band, i, input)).filter((key) => arriving.has(key));
    const reason = uselessBy(record, carrier);
    const spoilt: Missing | undefined = reason && { why: reason.kind, count: 0, reason, planes: [] };
    if (spoilt) {
      for (const key of keys) if (!outOfReach.has(key)) outOfReach.set(key, spoilt);
      continue;
    }
    const barrier = barrierOf(record, port, band);
    if (barrier) {
      for (const key of keys) outOfReach.set(key, barrier);
      continue;
    }
    const level = band.level[i] ?? 0;
    for (const key of keys) {
      got.add(key);
      if (service === "fm") stations.set(key, carrier);
    }
    levelMin = Math.min(levelMin, level);
    levelMax = Math.max(levelMax, level);
    cnMin = Math.min(cnMin, cniDb(band, i));
  }
  const lost = counted([...outOfReach].flatMap(([key, barrier]) => (got.has(key) ? [] : [barrier])));
  const count = arriving.size - got.size - lost.reduce((sum, m) => sum + m.count, 0);
  const missing: Missing = { why: "cut", count, reason: { kind: "not handed on" }, planes: [] };
  const sound = soundHandedOn(stations);
  return {
    service,
    wanted: arriving.size,
    got: got.size,
    ...televisionOf(service, modes),
    ...(isStacked ? { counted: "user band" as const } : {}),
    ...(got.size > 0 ? { levelMin, levelMax, cnMin } : {}),
    ...(sound ? { sound } : {}),
    missing: count > 0 ? [...lost, missing] : lost,
  };
}

function modeAt({ grid }: Band, i: number): string {
  return grid.plan[grid.index[i] ?? 0]?.mode ?? "";
}

/** Alike ones as one, with their number. */
function counted(missing: readonly Missing[]): readonly Missing[] {
  const byReason = new Map<string, Missing>();
  for (const one of missing) {
    const key = JSON.stringify(one.reason);
    byReason.set(key, { ...one, count: (byReason.get(key)?.count ?? 0) + 1 });
  }
  return [...byReason.values()];
}

/** A carrier, whichever way it comes; a user band is one of its line. */
function keyOf({ origin, grid, stack }: Band, i: number, input: string): string {
  return `${stack ? `${input} ` : ""}${origin.key}#${grid.index[i]}`;
}
