/** The walk of a supply: from the input that gives it upwards, with what is left of its voltage at every part. */
import type { PartId, PortRef } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { partName, round1, withLabels } from "../../sentences/phrases.ts";
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
  /** Series resistance of the part itself [Ω] and what it takes [V]; 0 where the way ends. */
  readonly ohms: number;
  readonly dropVolts: number;
  readonly toneArrives: boolean;
  /** Behind a switch that stands elsewhere now. */
  readonly dormant: boolean;
  /** Least voltage that the part itself lives on [V], where it is fed from here. */
  readonly needsVolts?: number;
  readonly end?: SupplyEnd;
  /** This step as a sentence. */
  readonly words: string;
};

export type SupplyWalk = {
  /** Empty where the input puts no supply on its cable. */
  readonly steps: readonly SupplyStep[];
  /** One line for each step; or why there is nothing to walk. */
  readonly lines: readonly string[];
};

type Source = { readonly part: PartId; readonly port: string };

/** Follows the supply of an input up to the last parts that it reaches. */
export function walkSupply(evaluation: Evaluation, source: Source): SupplyWalk {
  const steps: Bare[] = [];
  const record = evaluation.record(source.part);
  const own = offerOf(record?.offers[source.port], source);
  if (record && own) {
    const far = record.joined[source.port];
    const milliamps = record.demands[source.port]?.milliamps ?? 0;
    steps.push(bare(source, own, { before: null, milliamps, ...(far ? {} : { end: "nothing above" }) }));
    if (far) climb(evaluation, source, far, steps);
  }
  const label = (id: string) => evaluation.record(id)?.part.label || id;
  const spoken = steps.map((step) => ({ ...step, words: withLabels(wordsOf(step), label) }));
  const silent = withLabels(`${partName(source.part)} puts no supply on this cable.`, label);
  return { steps: spoken, lines: spoken.length > 0 ? spoken.map((step) => step.words) : [silent] };
}

/** A step before it is put into words. */
type Bare = Omit<SupplyStep, "words">;

function bare(at: Source, offer: Offer, more: Pick<Bare, "before" | "milliamps"> & Partial<Bare>): Bare {
  const { volts13, volts18, volts, toneArrives, dormant } = offer;
  const { part, port } = at;
  return { part, port, volts13, volts18, volts, toneArrives, dormant, ohms: 0, dropVolts: 0, ...more };
}

/** Where the supply arrives next, and the step that it comes from. */
type Arrival = { readonly at: PortRef; readonly before: number };

/** Climbs all ways, each point once: where ways part and come together again, the second time ends there. */
function climb(evaluation: Evaluation, source: Source, start: PortRef, steps: Bare[]): void {
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
      // A part on a loop is not computed: the supply is known up to its door.
      const last = steps[before];
      if (record.looped && last)
        steps.push({ ...last, part, port, before, ohms: 0, dropVolts: 0, end: "loop" });
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
): { readonly step: Bare; readonly above: PortRef[] } {
  const ways = onward(record, port, source);
  const above = ways.flatMap((way) => {
    const far = record.joined[way.port];
    return far ? [far] : [];
  });
  const first = ways.find((way) => record.joined[way.port]) ?? ways[0];
  const { load } = record.power;
  const end = above.length > 0 ? undefined : endOf(record, port, ways.length > 0);
  const step = bare({ part: record.part.id, port }, offer, {
    before,
    milliamps: record.demands[port]?.milliamps ?? 0,
    ...(first
      ? { ohms: first.offer.ohms - offer.ohms, dropVolts: first.offer.dropVolts - offer.dropVolts }
      : {}),
    ...(load?.ports.includes(port) ? { needsVolts: load.minVolts } : {}),
    ...(end ? { end } : {}),
  });
  return { step, above };
}

type Way = { readonly port: string; readonly offer: Offer };

/** Inputs onto which a part hands the supply on. */
function onward(record: PartRecord, from: string, source: Source): readonly Way[] {
  const paths = record.power.paths ?? [];
  return paths
    .filter((path) => path.from === from)
    .flatMap((path) => {
      const offer = offerOf(record.offers[path.to], source);
      return offer ? [{ port: path.to, offer }] : [];
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

const END_WORDS: Readonly<Record<SupplyEnd, string>> = {
  feeds: "here it is used",
  "too low": "here it is needed",
  heard: "here its commands are heard; this part has a supply of its own",
  blocked: "here it ends: this part passes no direct current",
  shorted: "here it is shorted to earth",
  "nothing above": "nothing is joined above",
  "met before": "from here on it goes by a way that is listed already",
  loop: "here it ends: this part lies on a loop",
};

function enough({ volts13, volts18 }: Bare, needsVolts: number): string {
  if (Math.min(volts13, volts18) >= needsVolts) return "enough";
  return Math.max(volts13, volts18) < needsVolts ? "not enough" : "enough for horizontal only";
}

/** "0.6 Ω of its own take 0.1 V"; a steering diode takes volts without being a resistance. */
function ownDrop({ ohms, dropVolts }: Bare): readonly string[] {
  const volts = dropVolts < 0.05 ? "less than 0.1 V" : `${round1(dropVolts)} V`;
  if (ohms > 0) return [`${round1(ohms)} Ω of its own take ${volts}`];
  return dropVolts > 0 ? [`it takes ${volts}`] : [];
}

function wordsOf(step: Bare): string {
  const volts =
    step.volts13 === step.volts18
      ? `${round1(step.volts)} V`
      : `${round1(step.volts13)} V for vertical, ${round1(step.volts18)} V for horizontal`;
  const gives = step.before === null;
  const facts = [
    `${volts} ${gives ? "put on the cable" : "arrive"}`,
    `${Math.round(step.milliamps)} mA`,
    ...ownDrop(step),
    ...(gives ? [] : [step.toneArrives ? "tone arrives" : "no tone arrives"]),
    ...(step.dormant ? ["behind a switch that stands elsewhere now"] : []),
    ...(step.needsVolts === undefined
      ? []
      : [`${round1(step.needsVolts)} V are needed: ${enough(step, step.needsVolts)}`]),
    ...(step.end ? [END_WORDS[step.end]] : []),
  ];
  return `${partName(step.part)}: ${facts.join("; ")}.`;
}
