/** Where on the way from a receiver up to a switch a command is lost, weakened, or contested. */
import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { Feed, Offer } from "../signal/control.ts";
import { inletsOf } from "./inlets.ts";
import type { Culprit } from "./missing.ts";
import { passesService } from "./passesService.ts";

/** Below this voltage every converter takes the request as vertical, from the other one on as horizontal [V]. */
export const SURELY_VERTICAL_VOLTS = 14;
export const SURELY_HORIZONTAL_VOLTS = 16;

/** Who speaks, and to which part. */
export type Line = { readonly receiver: PartId; readonly input: string; readonly target: PartId };

/** A part on the line, with what it gets from below and what it hands on. */
type Leg = {
  readonly record: PartRecord;
  readonly output: string;
  /** Input that leads on to the target. */
  readonly input: string;
  readonly below: Offer | undefined;
  readonly above: Offer | undefined;
};

/**
 * The part that passes a command no further: the first above the receiver whose upper side does not have it. A short
 * leaves nothing on the whole line below it, so it comes first.
 */
export function commandStop(
  evaluation: Evaluation,
  line: Line,
  has: (offer: Offer) => boolean,
): Culprit | undefined {
  const shorting = legsTo(evaluation, line).find(({ record }) => record.shorts.includes(line.receiver));
  const stop = shorting ?? legWithout(evaluation, line, has);
  return stop && { part: stop.record.part.id, port: stop.output };
}

function legWithout(evaluation: Evaluation, line: Line, has: (offer: Offer) => boolean): Leg | undefined {
  return legsTo(evaluation, line).find(({ below, above }) => !above || !has(above) || (below && !has(below)));
}

/** A part hands commands on to one input, and the switch that they are for is joined to another one. */
export type WrongInput = {
  readonly port: string;
  readonly feeds: string;
  /** The switch's input is not made for what comes from it: the leads are changed, not the type of part wrong. */
  readonly isMiswired: boolean;
};

/** The part that sends supply and commands another way than to the target; undefined where none does. */
export function commandTurnedAway(
  evaluation: Evaluation,
  line: Line,
): { readonly part: PartId; readonly wrongInput: WrongInput } | undefined {
  const stop = legWithout(evaluation, line, (offer) => offer.volts18 > 0);
  if (!stop) return undefined;
  const { record, output, input } = stop;
  const feeds = (record.power.paths ?? []).find((path) => path.from === output && record.joined[path.to])?.to;
  if (feeds === undefined || feeds === input) return undefined;
  const isMiswired = !passesService(record, input, "satellite");
  return { part: record.part.id, wrongInput: { port: input, feeds, isMiswired } };
}

/**
 * The part at which most of a voltage is lost; the receiver where nothing is, or where it gives less than is needed.
 * `given`: the voltage in question of an offer [V]; `needs`: with how many it would do [V].
 */
export function voltageStop(
  evaluation: Evaluation,
  line: Line,
  { given, needs }: { readonly given: (offer: Offer) => number; readonly needs: number },
): Culprit {
  const volts = (offer: Offer | undefined) => (offer ? given(offer) : 0);
  const legs = legsTo(evaluation, line);
  let most = 0;
  let part = line.receiver;
  if (volts(legs[0]?.below) < needs) return { part };
  for (const { record, below, above } of legs) {
    const lost = volts(below) - volts(above);
    if (lost > most) {
      most = lost;
      part = record.part.id;
    }
  }
  return { part };
}

/** The part at which the commands of two receivers come together; undefined where they do not. */
export function meetingOfCommands(evaluation: Evaluation, line: Line, other: PartId): Culprit | undefined {
  const meeting = legsTo(evaluation, line).find(({ record, output }) =>
    Object.entries(record.feeds).some(
      ([port, feed]) => port !== output && feed.some((offer) => offer.part === other),
    ),
  );
  return meeting && { part: meeting.record.part.id };
}

/** Parts between a receiver's input and the target, the receiver's side first; the target is none of them. */
function legsTo(evaluation: Evaluation, line: Line): readonly Leg[] {
  const { receiver, input, target } = line;
  const start = evaluation.record(receiver)?.joined[input];
  if (!start) return [];
  const seen = new Set<PartId>();
  const goUp = (part: PartId, output: string): readonly Leg[] | undefined => {
    const record = evaluation.record(part);
    if (part === target) return [];
    if (!record || seen.has(part)) return undefined;
    seen.add(part);
    for (const port of inputsOnLine(record, output)) {
      const end = record.joined[port];
      const above = end && goUp(end[0], end[1]);
      if (above)
        return [
          {
            record,
            output,
            input: port,
            below: ownOffer(record.feeds[output], line),
            above: ownOffer(record.offers[port], line),
          },
          ...above,
        ];
    }
    return undefined;
  };
  return goUp(start[0], start[1]) ?? [];
}

/** Inputs that a supply or a signal at an output has to do with; those that it gets to come first. */
function inputsOnLine(record: PartRecord, output: string): readonly string[] {
  const fed = (record.power.paths ?? []).filter((path) => path.from === output).map((path) => path.to);
  return [...new Set([...fed, ...inletsOf(record, output).map((inlet) => inlet.port)])];
}

function ownOffer(feed: Feed | undefined, { receiver, input }: Line): Offer | undefined {
  return feed?.find((o) => o.part === receiver && o.port === input);
}
