/** What a receiver can really get: every carrier of its sources, and why the missing ones are missing. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { ReceiverInput } from "../parts/contract.ts";
import { noiseFactor } from "../rf/noise.ts";
import { type Band, SILENCE, type Stack } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import type { Condition } from "../signal/control.ts";
import { isLive } from "../signal/readout.ts";
import { partName } from "./words.ts";

/** Noise figure of the tuner behind every receiver input [dB]; typical, from memory. */
export const TUNER_NOISE_FIGURE_DB = 8;
/** A stacked or switched feed was converted with these oscillators [MHz]; EN 61319-1 values, from memory. */
const UNIVERSAL_LOS = { low: 9750, high: 10600 } as const;

export type ServiceReception = {
  readonly service: Service;
  readonly wanted: number;
  readonly got: number;
  /** Of the carriers got [dBµV, dBµV, dB]; absent when none. */
  readonly levelMin?: number;
  readonly levelMax?: number;
  readonly cnMin?: number;
  readonly missing: readonly Missing[];
};

export type Missing = {
  readonly count: number;
  readonly why: Why;
  /** Part to look at, if the reason names one. */
  readonly part?: string;
  /** A predicate in the plural: "are stopped by ⟦plate⟧". */
  readonly text: string;
};

/** From "not there at all" to "nearly": the best that happened to a carrier decides what is said of it. */
export type Why = "absent" | "cut" | "out of range" | "wrong feed" | "not selectable" | "disturbed" | "noisy";
const NEARNESS: readonly Why[] = [
  "absent",
  "cut",
  "out of range",
  "wrong feed",
  "not selectable",
  "noisy",
  "disturbed",
];

export type ReceptionResult = { readonly services: readonly ServiceReception[] };

/** Works out what the receiver of a record gets; `sources` are the records of the design's aerials and dishes. */
export function receive(record: PartRecord, sources: readonly PartRecord[]): ReceptionResult | undefined {
  const reception = record.kind.reception?.(record.options);
  if (!reception) return undefined;
  const services = reception.wants.map((service) => {
    const wanted = wantedCarriers(record, sources, service);
    const fates = new Map<string, Fate>();
    for (const input of reception.inputs)
      hear(record, { receiver: record.part.id, input, alone: false }, service, fates);
    return summed(service, wanted, fates);
  });
  return { services };
}

/** A carrier that a receiver gets or an outlet hands on, so that its figures can be followed to their source. */
export type GotCarrier = {
  readonly port: string;
  readonly origin: string;
  /** Entry of the source's plan. */
  readonly index: number;
  /** User band that carries it, on a channel-stacked feed. */
  readonly userBand?: number;
  readonly levelDbuv: number;
  readonly cnDb: number;
};

/** Every carrier of a service that a receiver gets, at the input where it gets it best. */
export function carriersGot(record: PartRecord, service: Service): readonly GotCarrier[] {
  const fates = new Map<string, Fate>();
  for (const input of record.kind.reception?.(record.options).inputs ?? [])
    hear(record, { receiver: record.part.id, input, alone: false }, service, fates);
  return [...fates.values()].filter((fate) => fate.got);
}

/** What a set of carriers comes to for one tuner. */
export type TunerCount = { readonly got: number; readonly of: number };

/** One tuner of a receiver and what it can get. */
export type TunerReception = {
  /** Counted from 1 over all inputs. */
  readonly number: number;
  readonly input: string;
  readonly service: Service;
  /** User band that it tunes through, on a channel-stacked feed. */
  readonly userBand?: number;
  /** If nobody else on its line asked for anything. */
  readonly alone: TunerCount;
  /** With all others asking for what they ask for now. */
  readonly together: TunerCount;
};

/**
 * For each satellite tuner the transponders it can get alone and together with the others.
 * Tuners behind one switched input share its quadrant: all but the first take what the first left selected.
 */
export function tunersOf(record: PartRecord, sources: readonly PartRecord[]): readonly TunerReception[] {
  const reception = record.kind.reception?.(record.options);
  const service = "satellite";
  if (!reception?.wants.includes(service)) return [];
  const of = wantedCarriers(record, sources, service).length;
  const tuners: TunerReception[] = [];
  for (const input of reception.inputs) {
    if (!input.services.includes(service)) continue;
    for (let k = 0; k < input.tuners; k++) {
      const own = input.userBands?.[k];
      const narrowed = input.feed === "stacked" ? { ...input, userBands: own ? [own] : [] } : input;
      const count = (alone: boolean): TunerCount => {
        const fates = new Map<string, Fate>();
        const selectedOnly = !alone && k > 0 && input.feed === "switched";
        hear(record, { receiver: record.part.id, input: narrowed, alone, selectedOnly }, service, fates);
        return { got: [...fates.values()].filter((f) => f.got).length, of };
      };
      tuners.push({
        number: tuners.length + 1,
        input: input.port,
        service,
        ...(own ? { userBand: own.number } : {}),
        alone: count(true),
        together: count(false),
      });
    }
  }
  return tuners;
}

/** Who listens, and how: alone, as if nobody else spoke to any switch; or only to what is selected now. */
type Listener = {
  readonly receiver: string;
  readonly input: ReceiverInput;
  readonly alone: boolean;
  readonly selectedOnly?: boolean;
};

function hear(record: PartRecord, listener: Listener, service: Service, fates: Map<string, Fate>): void {
  const { input, selectedOnly } = listener;
  if (!input.services.includes(service)) return;
  for (const band of (record.inputs[input.port] ?? SILENCE).bands)
    if (band.origin.service === service && (!selectedOnly || band.selected)) listen(listener, band, fates);
}

type Wanted = { readonly key: string };

/** Carriers that the user may expect: those of every source upstream, or else of every source drawn. */
function wantedCarriers(record: PartRecord, sources: readonly PartRecord[], service: Service): Wanted[] {
  const offering = sources.filter((s) => bandsOf(s).some((b) => b.origin.service === service));
  const upstream = offering.filter((s) => record.sources.includes(s.part.id));
  const chosen = upstream.length > 0 ? upstream : offering;
  return chosen.flatMap((s) =>
    bandsOf(s)
      .filter((b) => b.origin.service === service)
      .flatMap((b) => Array.from(b.grid.index, (i) => ({ key: `${b.origin.key}#${i}` }))),
  );
}

function bandsOf(source: PartRecord): readonly Band[] {
  return Object.values(source.outputs).flatMap((s) =>
    s.bands.filter((b) => b.origin.part === source.part.id),
  );
}

type Fate =
  | ({ readonly got: true } & GotCarrier)
  | { readonly got: false; readonly why: Why; readonly text: string; readonly part?: string };

function better(a: Fate | undefined, b: Fate): Fate {
  if (!a) return b;
  if (a.got && b.got) return b.cnDb > a.cnDb ? b : a;
  if (a.got !== b.got) return a.got ? a : b;
  if (!a.got && !b.got) return NEARNESS.indexOf(b.why) > NEARNESS.indexOf(a.why) ? b : a;
  return a;
}

/** What becomes of the carriers of one band at one input. */
function listen(listener: Listener, band: Band, fates: Map<string, Fate>): void {
  const { input } = listener;
  if (band.stack) {
    listenStacked(listener, band, fates);
    return;
  }
  const note = (i: number, fate: Fate) => {
    const key = `${band.origin.key}#${band.grid.index[i] ?? 0}`;
    fates.set(key, better(fates.get(key), fate));
  };
  const refused = refusal(listener, band);
  for (let i = 0; i < band.level.length; i++) note(i, cutFate(band, i) ?? refused ?? quality(input, band, i));
}

function cutFate(band: Band, i: number): Fate | undefined {
  if (isLive(band, i)) return undefined;
  const cut = band.cuts[(band.cut[i] ?? 1) - 1];
  const part = cut?.part ?? "";
  return { got: false, why: "cut", part, text: `are stopped by ${partName(part)}` };
}

/** Why the whole band is of no use at this input; undefined when it is. */
function refusal(listener: Listener, band: Band): Fate | undefined {
  const wrong = wrongFeed(listener.input, band);
  if (wrong) return { got: false, why: "wrong feed", text: wrong };
  for (const condition of band.conditions) {
    const barrier = unreachable(listener, condition);
    if (barrier) return barrier;
  }
  return undefined;
}

/** What is wrong with a kind of feed for an input, as words; undefined when it suits. */
function wrongFeed(input: ReceiverInput, band: Band): string | undefined {
  if (band.origin.service !== "satellite") return undefined;
  const lo = band.shifts[0];
  if (lo === undefined) return "are not converted to satellite IF";
  if (input.feed === "wideband") {
    if (band.half) return "are on a switched or quattro feed, but this input needs a wideband one";
    if (input.polarisation && input.polarisation !== band.origin.polarisation)
      return `are on the input for ${input.polarisation}, but polarised ${band.origin.polarisation ?? "otherwise"}`;
    return undefined;
  }
  if (input.feed === "stacked") return "are not on a user band";
  const expected = band.half ? UNIVERSAL_LOS[band.half] : undefined;
  if (expected === undefined || Math.abs(lo - expected) > 5)
    return "are on a wideband feed, which this input cannot tune";
  return undefined;
}

/** Whether the receiver itself can make a switch stand as needed; the barrier if not. */
function unreachable({ receiver, input, alone }: Listener, condition: Condition): Fate | undefined {
  const { at, setting } = condition;
  const speaks = at.offers.filter((o) => o.kind === "commands");
  const own = speaks.find((o) => o.part === receiver && o.port === input.port);
  const foreign = alone ? undefined : speaks.find((o) => !o.dormant && o !== own);
  if (!own || foreign) {
    if (at.setting === setting) return undefined;
    const text = foreign
      ? `are there only when ${partName(foreign.part)} asks for the same at ${partName(at.part)}`
      : `are out of reach: no command gets from here to ${partName(at.part)}`;
    return { got: false, why: "not selectable", text, part: at.part };
  }
  const quadrant = /[VH][LH]$/.exec(setting)?.[0];
  if (quadrant?.startsWith("H") && own.volts18 <= at.thresholdVolts)
    return {
      got: false,
      why: "not selectable",
      part: at.part,
      text: `are horizontal, and ${partName(at.part)} sees too few volts to select it`,
    };
  const needsTone = quadrant?.endsWith("H") || /^[2-9]/.test(setting);
  if (needsTone && !own.toneArrives)
    return {
      got: false,
      why: "not selectable",
      part: at.part,
      text: `need the 22 kHz tone, which does not reach ${partName(at.part)}`,
    };
  return undefined;
}

/** Level and quality of one carrier behind the tuner's own noise. */
function quality(input: ReceiverInput, band: Band, i: number): Fate {
  const { grid } = band;
  const f = grid.centre[i] ?? 0;
  if (f < input.tunesFromMHz || f > input.tunesToMHz)
    return {
      got: false,
      why: "out of range",
      text: `are outside ${input.tunesFromMHz} to ${input.tunesToMHz} MHz, where this input tunes`,
    };
  const levelDbuv = band.level[i] ?? 0;
  const tuner = (grid.ktb[i] ?? 0) * (noiseFactor(TUNER_NOISE_FIGURE_DB) - 1);
  return graded({
    port: input.port,
    origin: band.origin.key,
    index: grid.index[i] ?? 0,
    levelDbuv,
    noise: (band.noise[i] ?? 0) + tuner,
    interference: band.interference[i] ?? 0,
    requiredDb: grid.required[i] ?? 0,
  });
}

type Measured = Omit<GotCarrier, "cnDb"> & {
  readonly noise: number;
  readonly interference: number;
  readonly requiredDb: number;
};

function graded({ noise, interference, requiredDb, ...carrier }: Measured): Fate {
  const ratio = (power: number) => carrier.levelDbuv - 10 * Math.log10(power);
  const cnDb = ratio(noise + interference);
  if (cnDb >= requiredDb) return { got: true, ...carrier, cnDb };
  return ratio(noise) >= requiredDb
    ? { got: false, why: "disturbed", text: "are drowned by another signal on the same frequencies" }
    : { got: false, why: "noisy", text: "are too weak or too noisy" };
}

/** Through its own user bands a receiver gets any carrier that the converter holds. */
function listenStacked(listener: Listener, band: Band, fates: Map<string, Fate>): void {
  const { stack } = band;
  const { input } = listener;
  if (!stack) return;
  const lines = usableUserBands(listener, band);
  for (const held of stack.holds)
    for (let i = 0; i < held.level.length; i++) {
      const key = `${held.origin.key}#${held.grid.index[i] ?? 0}`;
      for (const line of lines) {
        const fate =
          cutFate(held, i) ??
          (typeof line === "number" ? overUserBand(input.port, band, line, held, i) : line);
        fates.set(key, better(fates.get(key), fate));
      }
    }
}

/** Positions of the user bands this input may use, or why it has none. */
function usableUserBands(listener: Listener, band: Band): readonly (number | Fate)[] {
  const { input } = listener;
  const { stack } = band;
  if (!stack) return [];
  if (input.feed !== "stacked" || !input.userBands)
    return [{ got: false, why: "wrong feed", text: "are on user bands, which this input cannot ask for" }];
  const heard = stack.control.offers.some((o) => o.toneArrives && o.request?.userBands !== undefined);
  if (!heard)
    return [
      {
        got: false,
        why: "not selectable",
        text: `are out of reach: no message gets to ${partName(stack.part)}`,
        part: stack.part,
      },
    ];
  return input.userBands.map((own): number | Fate => {
    const at = stack.numbers.indexOf(own.number);
    if (at < 0)
      return {
        got: false,
        why: "wrong feed",
        text: `are out of reach on user band ${own.number}, which ${partName(stack.part)} does not have`,
      };
    if (Math.abs((band.grid.plan[band.grid.index[at] ?? 0]?.airMHz ?? 0) - own.centreMHz) > 2)
      return {
        got: false,
        why: "wrong feed",
        text: `are out of reach on user band ${own.number}, set to another centre than at ${partName(stack.part)}`,
      };
    return cutFate(band, at) ?? occupied(listener, own.number, stack) ?? at;
  });
}

/** Who else keeps a user band from being tuned in peace. */
function occupied({ receiver, input, alone }: Listener, userBand: number, stack: Stack): Fate | undefined {
  if (alone) return undefined;
  const others = stack.control.offers.filter(
    (o) => o.kind === "commands" && !(o.part === receiver && o.port === input.port),
  );
  const holder = others.find((o) => o.request && !o.request.userBands);
  if (holder)
    return {
      got: false,
      why: "not selectable",
      part: holder.part,
      text: `are out of reach: ${partName(holder.part)} holds the line`,
    };
  const rival = others.find((o) => o.request?.userBands?.includes(userBand));
  if (rival)
    return {
      got: false,
      why: "not selectable",
      part: rival.part,
      text: `are retuned by ${partName(rival.part)}, which uses the same user band`,
    };
  return undefined;
}

/** Quality of a held carrier, behind what the line from the converter adds. */
function overUserBand(port: string, band: Band, at: number, held: Band, i: number): Fate {
  const { stack } = band;
  const levelDbuv = band.level[at] ?? 0;
  const power = 10 ** (levelDbuv / 10);
  const heldPower = 10 ** ((held.level[i] ?? 0) / 10);
  const line = Math.max(0, (band.noise[at] ?? 0) - power * (stack?.entryNoiseRatio ?? 0));
  const foreign = Math.max(0, (band.interference[at] ?? 0) - power * (stack?.entryInterferenceRatio ?? 0));
  const tuner = (band.grid.ktb[at] ?? 0) * (noiseFactor(TUNER_NOISE_FIGURE_DB) - 1);
  return graded({
    port,
    origin: held.origin.key,
    index: held.grid.index[i] ?? 0,
    userBand: stack?.numbers[at] ?? 0,
    levelDbuv,
    noise: line + tuner + (power * (held.noise[i] ?? 0)) / heldPower,
    interference: foreign + (power * (held.interference[i] ?? 0)) / heldPower,
    requiredDb: held.grid.required[i] ?? 0,
  });
}

function summed(
  service: Service,
  wanted: readonly Wanted[],
  fates: ReadonlyMap<string, Fate>,
): ServiceReception {
  let got = 0;
  let levelMin = Number.POSITIVE_INFINITY;
  let levelMax = Number.NEGATIVE_INFINITY;
  let cnMin = Number.POSITIVE_INFINITY;
  const missing = new Map<string, Missing>();
  for (const { key } of wanted) {
    const fate = fates.get(key) ?? absent(key, service);
    if (fate.got) {
      got++;
      levelMin = Math.min(levelMin, fate.levelDbuv);
      levelMax = Math.max(levelMax, fate.levelDbuv);
      cnMin = Math.min(cnMin, fate.cnDb);
      continue;
    }
    const former = missing.get(fate.text);
    missing.set(fate.text, {
      count: (former?.count ?? 0) + 1,
      why: fate.why,
      text: fate.text,
      ...(fate.part ? { part: fate.part } : {}),
    });
  }
  return {
    service,
    wanted: wanted.length,
    got,
    ...(got > 0 ? { levelMin, levelMax, cnMin } : {}),
    missing: [...missing.values()].sort((a, b) => b.count - a.count),
  };
}

function absent(key: string, service: Service): Fate {
  const polarisation = service === "satellite" ? /\/([VH])#/.exec(key)?.[1] : undefined;
  const text = polarisation
    ? `are ${polarisation === "H" ? "horizontal" : "vertical"} and do not arrive here`
    : "do not arrive here";
  return { got: false, why: "absent", text };
}
