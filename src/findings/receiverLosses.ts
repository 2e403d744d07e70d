/** What a receiver misses, followed to where it is lost. */
import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { traceCarrier } from "../evaluate/trace.ts";
import { defaultOptions } from "../parts/catalogue.ts";
import type { ReceiverInput } from "../parts/contract.ts";
import { optionsMeaning } from "../parts/meanings.ts";
import type { Service } from "../signal/carrier.ts";
import type { Offer } from "../signal/control.ts";
import { blameForBlocked } from "./blame/blocked.ts";
import { blameForLostCarrier } from "./blame/lostCarrier.ts";
import { commandStop, meetingOfCommands, SURELY_HORIZONTAL_VOLTS, voltageStop } from "./commandStop.ts";
import { feedsTaken } from "./feedsTaken.ts";
import { type Lost, whereLost } from "./lost.ts";
import type { Culprit, Missing, MissingReason } from "./missing.ts";
import { type MissingGroup, type ReceptionResult, receive } from "./reception.ts";
import { sourcesOf } from "./wanted.ts";
import { type Kept, keptWhile } from "./watched.ts";

/** Carriers lost for one reason by one culprit, to a receiver or to one of its tuners. */
export type ReceiverLoss = {
  readonly service: Service;
  readonly wanted: number;
  readonly got: number;
  readonly missing: Missing;
  /** Keys of the groups of `ReceptionResult` that turned out to be one. */
  readonly groups: readonly string[];
  /** Where the receiver has it by another tuner. */
  readonly tuner?: number;
};

const kept = new WeakMap<PartRecord, Kept<readonly ReceiverLoss[]>>();

/** Losses of a receiver: of each service, then what single tuners lack beyond that. */
export function receiverLosses(evaluation: Evaluation, record: PartRecord): readonly ReceiverLoss[] {
  const sources = sourcesOf(evaluation);
  const reception = receive(record, sources);
  if (!reception) return [];
  return keptWhile(kept, record, { evaluation, also: [reception] }, (watched) =>
    lossesOf(watched, record, reception),
  );
}

function lossesOf(evaluation: Evaluation, record: PartRecord, reception: ReceptionResult) {
  const inputs = record.kind.reception?.(record.options).inputs ?? [];
  const losses: ReceiverLoss[] = [];
  for (const { service, wanted, got, missing } of reception.services)
    losses.push(
      ...merged(missing, (group) =>
        follow(
          evaluation,
          record,
          inputs.filter((i) => i.services.includes(service)),
          group,
        ),
      ).map((loss) => ({ service, wanted, got, ...loss })),
    );
  for (const { service, number, inputs: ports, together, missing } of reception.tuners) {
    const own = inputs.filter((i) => ports.includes(i.port));
    const common = new Set(losses.filter((l) => l.service === service && !l.tuner).flatMap((l) => l.groups));
    losses.push(
      ...merged(
        missing.filter((group) => !common.has(group.key)),
        (group) => follow(evaluation, record, own, group),
      ).map((loss) => ({ service, wanted: together.of, got: together.got, tuner: number, ...loss })),
    );
  }
  return losses.some((loss) => isMisfit(loss, record.part.id))
    ? losses.map((loss) => ofMisfit(loss, record.part.id))
    : losses;
}

/** The receiver takes another feed than those on the same source: nothing of what is there is for it. */
function isMisfit({ missing: { reason, culprit } }: ReceiverLoss, receiver: string): boolean {
  return FEEDS_REFUSED.has(reason.kind) && culprit?.part === receiver;
}

const FEEDS_REFUSED: ReadonlySet<MissingReason["kind"]> = new Set([
  "switched feed on a wideband input",
  "wideband feed on a switched input",
  "plain feed on a single-cable input",
]);

/** What another output would give is of no more use to it. */
function ofMisfit(loss: ReceiverLoss, receiver: string): ReceiverLoss {
  const { missing } = loss;
  return missing.reason.kind === "other output" && missing.culprit?.part !== receiver
    ? { ...loss, missing: { ...missing, culprit: { part: receiver } } }
    : loss;
}

/** Groups that turn out to have one reason and one culprit are one. */
function merged(
  groups: readonly MissingGroup[],
  follow: (group: MissingGroup) => Lost,
): readonly Pick<ReceiverLoss, "missing" | "groups">[] {
  const byReason = new Map<string, { missing: Missing; groups: string[] }>();
  for (const group of groups) {
    const { sample: _, key, ...missing } = group;
    const lost = follow(group);
    const same = JSON.stringify([missing.why, mechanism(lost.reason), culpritOf(lost)]);
    const known = byReason.get(same);
    const { count, planes } = known?.missing ?? { count: 0, planes: [] };
    const reason = known ? joined(known.missing.reason, lost.reason) : lost.reason;
    byReason.set(same, {
      missing: {
        ...missing,
        ...lost,
        reason,
        count: count + group.count,
        planes: [...planes, ...group.planes],
      },
      groups: [...(known?.groups ?? []), key],
    });
  }
  return [...byReason.values()].sort((a, b) => b.missing.count - a.missing.count);
}

/** What two losses must have in common to be one: all, but for what differs from plane to plane. */
function mechanism(reason: MissingReason): unknown {
  if (reason.kind === "other output") return [reason.kind, reason.part, reason.port];
  return reason.kind === "wrong polarisation at the input" ? reason.kind : reason;
}

function culpritOf({ reason, culprit }: Lost): Culprit | undefined {
  return reason.kind === "wrong polarisation at the input" ? undefined : culprit;
}

function joined(a: MissingReason, b: MissingReason): MissingReason {
  return a.kind === "other output" && b.kind === "other output"
    ? { ...a, outputs: [...new Set([...a.outputs, ...b.outputs])] }
    : a;
}

/** Where a group of missing carriers is lost, and what a tradesman would take in hand. */
function follow(
  evaluation: Evaluation,
  record: PartRecord,
  inputs: readonly ReceiverInput[],
  { reason, culprit, sample }: MissingGroup,
): Lost {
  const receiver = record.part.id;
  const lines = (target: string) => inputs.map(({ port }) => ({ receiver, input: port, target }));
  const first = (ask: (line: ReturnType<typeof lines>[number]) => Culprit | undefined, target: string) =>
    lines(target)
      .filter(({ input }) => record.joined[input])
      .map(ask)
      .find((found) => found !== undefined);
  const by = (found: Culprit | undefined): Lost => {
    const blamed = found ?? culprit;
    return { reason, ...(blamed ? { culprit: blamed } : {}) };
  };
  switch (reason.kind) {
    case "does not arrive":
      return whereLost(evaluation, record, inputs, sample);
    case "no tone":
      return by(first((line) => commandStop(evaluation, line, (o) => o.toneArrives), reason.part));
    case "no message":
      return by(
        first((line) => commandStop(evaluation, line, (o) => o.toneArrives && o.volts > 0), reason.part),
      );
    case "no command":
      return by(
        shortOf(record, inputs) ??
          first((line) => commandStop(evaluation, line, (o) => o.volts18 > 0), reason.part),
      );
    case "too few volts": {
      const asked = { given: (o: Offer) => o.volts18, needs: SURELY_HORIZONTAL_VOLTS };
      return by(
        shortOf(record, inputs) ?? first((line) => voltageStop(evaluation, line, asked), reason.part),
      );
    }
    case "dies at vertical": {
      const asked = { given: (o: Offer) => o.volts13, needs: reason.leastVolts };
      const { by: feeder } = reason;
      if (!feeder) return by(first((line) => voltageStop(evaluation, line, asked), reason.part));
      const line = { receiver: feeder.part, input: feeder.port, target: reason.part };
      return by(voltageStop(evaluation, line, asked));
    }
    case "set by another":
      return by(first((line) => meetingOfCommands(evaluation, line, reason.by), reason.part));
    case "switched feed on a wideband input":
    case "wideband feed on a switched input":
    case "plain feed on a single-cable input":
      return by(misfitOf(evaluation, record, inputs, sample));
    case "other oscillator":
      return by(
        reason.unit === undefined ? oddOscillator(evaluation, record, inputs, sample) : { part: reason.unit },
      );
    case "noisy":
    case "disturbed":
      return { reason, ...spoiledBy(evaluation, record, inputs, sample, reason.kind) };
    case "blocked": {
      const blamed = blameForBlocked(evaluation, receiver, reason);
      return { reason, ...(blamed ? { culprit: { part: blamed.part, port: blamed.port }, blamed } : {}) };
    }
    case "wrong polarisation at the input":
    case "no user band set":
    case "no such user band":
    case "other centre":
      return { reason, culprit: { part: receiver } };
    case "other messages":
      return { reason, culprit: { part: oddAtMessages(evaluation, receiver, reason) } };
    default:
      return by(undefined);
  }
}

/**
 * Of a unit and receivers that send other messages, the unit where it obeys those on none of its user bands, and more than
 * one receiver, and more than understand it, send them.
 */
function oddAtMessages(
  evaluation: Evaluation,
  receiver: PartId,
  { part, sends }: Extract<MissingReason, { readonly kind: "other messages" }>,
): PartId {
  const unit = evaluation.record(part);
  const known = (unit?.treatment.stacks ?? []).flatMap(({ standard, userBands }) =>
    userBands.map((band) => band.standard ?? standard),
  );
  if (!unit || known.some((standard) => standard === "both" || standard === sends)) return receiver;
  const offers = Object.values(unit.switches).flatMap((state) => state.offers);
  const speakers = offers.filter((o) => o.toneArrives && o.request?.userBands !== undefined);
  const alike = speakers.filter((offer) => {
    const record = evaluation.record(offer.part);
    const inputs = record?.kind.reception?.(record.options).inputs ?? [];
    return inputs.find((input) => input.port === offer.port)?.standard === sends;
  }).length;
  return alike > Math.max(1, speakers.length - alike) ? part : receiver;
}

/** What shorts the line of an input: the receiver's own supply shuts down, so nothing on the way tells. */
function shortOf({ demands }: PartRecord, inputs: readonly ReceiverInput[]): Culprit | undefined {
  const part = inputs.map(({ port }) => demands[port]?.shortedBy).find((by) => by);
  return part ? { part } : undefined;
}

/** The part that makes a carrier noisy, or lets in or makes what disturbs it. */
function spoiledBy(
  evaluation: Evaluation,
  record: PartRecord,
  inputs: readonly ReceiverInput[],
  sample: MissingGroup["sample"],
  kind: "noisy" | "disturbed",
): Pick<Missing, "culprit" | "blamed" | "spoiler"> {
  const at = { receiver: record.part.id, inputs: inputs.map((i) => i.port) };
  const { culprit: blamed, spoiler } = blameForLostCarrier(evaluation, at, sample, kind) ?? {};
  return {
    ...(blamed ? { culprit: { part: blamed.part, port: blamed.port }, blamed } : {}),
    ...(spoiler ? { spoiler } : {}),
  };
}

/**
 * Of a converter and a receiver that do not suit each other, the one to take in hand: the receiver where it alone
 * is of another sort than those on the same source, else the converter.
 */
function misfitOf(
  evaluation: Evaluation,
  record: PartRecord,
  inputs: readonly ReceiverInput[],
  sample: MissingGroup["sample"],
): Culprit | undefined {
  const converter = converterOf(evaluation, record, inputs, sample);
  const [own] = inputs;
  if (!converter || !own) return converter;
  const feeds = feedsTaken(evaluation, converter.part);
  const like = feeds.filter((feed) => feed === own.feed).length;
  return feeds.length - like >= Math.max(1, like) ? { part: record.part.id } : converter;
}

/**
 * Of a menu and a converter that do not fit, the converter where its oscillator is an unusual one, else the receiver. In C
 * band and Ka band oscillators of several values are sold, and the menu follows them.
 */
function oddOscillator(
  evaluation: Evaluation,
  record: PartRecord,
  inputs: readonly ReceiverInput[],
  sample: MissingGroup["sample"],
): Culprit {
  const own = { part: record.part.id };
  const isOwn = optionsMeaning(record.kind, "menu oscillator").some(
    (key) => record.options[key] !== defaultOptions(record.kind)[key],
  );
  return isOwn || sample.plane?.isUndivided ? own : (converterOf(evaluation, record, inputs, sample) ?? own);
}

/** The part that converted a carrier to the frequency at which it arrives. */
function converterOf(
  evaluation: Evaluation,
  record: PartRecord,
  inputs: readonly ReceiverInput[],
  { origin, index }: MissingGroup["sample"],
): Culprit | undefined {
  for (const { port } of inputs) {
    const end = record.joined[port];
    const steps = end ? traceCarrier(evaluation, { part: end[0], port: end[1] }, { origin, index }) : [];
    const step = steps.find((s) => s.loMHz !== undefined);
    if (step) return { part: step.part };
  }
  return undefined;
}
