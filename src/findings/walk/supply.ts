/** The walk of a supply: from the input that gives it upwards, with what is left of its voltage at every part. */
import type { PartId, PortRef } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { Feed, Offer } from "../../signal/control.ts";

/** Why a way ends at a part. */
export type SupplyEnd =
  | "feeds"
  | "too low"
  /** A part with a supply of its own takes only the commands. */
  | "heard"
  | "blocked"
  | "shorted"
  | "nothing above"
  /** Every way on from here has come up by another branch. */
  | "met before"
  | "loop";

export type SupplyStep = {
  readonly part: PartId;
  /** Output at which the supply arrives; for the first step the input onto which it is put. */
  readonly port: string;
  /** Place in the list of the step before this one, for the way may fork; null for the first. */
  readonly before: number | null;
  /** What arrives for a vertical request, for a horizontal one, and now [V]. */
  readonly volts13: number;
  readonly volts18: number;
  readonly volts: number;
  /** Current of everything that hangs on this point [mA]. */
  readonly milliamps: number;
  /** Series resistance of the part itself [Ω] and what it takes [V], a steering diode included; 0 where it hands none on. */
  readonly ohms: number;
  readonly dropVolts: number;
  readonly diodeVolts: number;
  readonly toneArrives: boolean;
  /** Behind a switch that stands elsewhere now. */
  readonly dormant: boolean;
  /** Least voltage that the part itself lives on [V], where it is fed from here. */
  readonly needsVolts?: number;
  readonly end?: SupplyEnd;
};

type Source = { readonly part: PartId; readonly port: string };

/** Follows the supply of an input up to the last parts that it reaches; nothing where it puts none on its cable. */
export function walkSupply(evaluation: Evaluation, source: Source): readonly SupplyStep[] {
  const steps: SupplyStep[] = [];
  const record = evaluation.record(source.part);
  const own = offerOf(record?.offers[source.port], source);
  if (record && own) {
    const far = record.joined[source.port];
    const milliamps = record.demands[source.port]?.milliamps ?? 0;
    steps.push(stepWith(source, own, { before: null, milliamps, ...(far ? {} : { end: "nothing above" }) }));
    if (far) climb(evaluation, source, far, steps);
  }
  return steps;
}

function stepWith(
  at: Source,
  offer: Offer,
  more: Pick<SupplyStep, "before" | "milliamps"> & Partial<SupplyStep>,
): SupplyStep {
  const { volts13, volts18, volts, toneArrives, dormant } = offer;
  const { part, port } = at;
  return {
    part,
    port,
    volts13,
    volts18,
    volts,
    toneArrives,
    dormant,
    ohms: 0,
    dropVolts: 0,
    diodeVolts: 0,
    ...more,
  };
}

/** Where the supply arrives next, and the step that it comes from. */
type Arrival = { readonly at: PortRef; readonly before: number };

/** Climbs all ways, each point once: where ways part and come together again, the second time ends there. */
function climb(evaluation: Evaluation, source: Source, start: PortRef, steps: SupplyStep[]): void {
  const seen = new Set([start.join("/")]);
  // Not by recursion: a line may be thousands of parts long.
  const open: Arrival[] = [{ at: start, before: 0 }];
  for (let next = open.pop(); next; next = open.pop()) {
    const { at, before } = next;
    const [part, port] = at;
    const record = evaluation.record(part);
    if (!record) continue;
    const offer = offerOf(record.feeds[port], source);
    if (!offer) {
      // A part on a loop is not calculated: the supply is known up to its door.
      const last = steps[before];
      if (record.looped && last)
        steps.push({ ...last, part, port, before, ohms: 0, dropVolts: 0, diodeVolts: 0, end: "loop" });
      continue;
    }
    const index = steps.length;
    const { step, above } = stepAt(record, port, { source, offer, before });
    const fresh = above.filter((far) => !seen.has(far.join("/")));
    for (const far of fresh) seen.add(far.join("/"));
    steps.push(above.length > 0 && fresh.length === 0 ? { ...step, end: "met before" } : step);
    for (const far of fresh.reverse()) open.push({ at: far, before: index });
  }
}

/** The step at a part, and the ports that it leads on to. */
function stepAt(
  record: PartRecord,
  port: string,
  { source, offer, before }: { readonly source: Source; readonly offer: Offer; readonly before: number },
): { readonly step: SupplyStep; readonly above: PortRef[] } {
  const ways = onward(record, port, source);
  const above = ways.flatMap((way) => {
    const far = record.joined[way.port];
    return far ? [far] : [];
  });
  const joined = ways.filter((way) => record.joined[way.port]);
  // Of a switch the way that is open now.
  const first = joined.find((way) => !way.offer.dormant) ?? joined[0] ?? ways[0];
  const { load } = record.power;
  const end = above.length > 0 ? undefined : endOf(record, port, ways.length > 0);
  const step = stepWith({ part: record.part.id, port }, offer, {
    before,
    milliamps: record.demands[port]?.milliamps ?? 0,
    ...(first
      ? {
          ohms: first.offer.ohms - offer.ohms,
          dropVolts: first.offer.dropVolts - offer.dropVolts,
          diodeVolts: first.diodeVolts,
        }
      : {}),
    ...(load?.ports.includes(port) ? { needsVolts: load.minVolts } : {}),
    ...(end ? { end } : {}),
  });
  return { step, above };
}

type Way = { readonly port: string; readonly offer: Offer; readonly diodeVolts: number };

/** Inputs onto which a part hands the supply on. */
function onward(record: PartRecord, from: string, source: Source): readonly Way[] {
  const paths = record.power.paths ?? [];
  return paths
    .filter((path) => path.from === from)
    .flatMap((path) => {
      const offer = offerOf(record.offers[path.to], source);
      return offer ? [{ port: path.to, offer, diodeVolts: path.dropVolts ?? 0 }] : [];
    });
}

function offerOf(feed: Feed | undefined, source: Source): Offer | undefined {
  return feed?.find((o) => o.part === source.part && o.port === source.port);
}

function endOf(record: PartRecord, port: string, leadsOn: boolean): SupplyEnd {
  const { load, shorts, switches } = record.power;
  if (shorts?.includes(port)) return "shorted";
  if (load?.ports.includes(port)) return record.powered ? "feeds" : "too low";
  if (switches?.some((s) => s.port === port)) return "heard";
  return leadsOn ? "nothing above" : "blocked";
}
