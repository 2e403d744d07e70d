/** Where on the way from a receiver up to a switch a command is lost, weakened, or contested. */
import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { Feed, Offer } from "../signal/control.ts";
import type { Culprit } from "./missing.ts";

/** Below this voltage every converter takes the request as vertical, from the other one on as horizontal [V]. */
export const SURELY_VERTICAL_VOLTS = 14;
export const SURELY_HORIZONTAL_VOLTS = 16;

/** Who speaks, and to which part. */
export type Line = { readonly receiver: PartId; readonly input: string; readonly target: PartId };

/** A part on the line, with what it gets from below and what it hands on. */
type Leg = {
  readonly record: PartRecord;
  readonly output: string;
  readonly below: Offer | undefined;
  readonly above: Offer | undefined;
};

/** The part that passes a command no further: the first above the receiver whose upper side does not have it. */
export function commandStop(
  evaluation: Evaluation,
  line: Line,
  has: (offer: Offer) => boolean,
): Culprit | undefined {
  const stop = legsTo(evaluation, line).find(
    ({ below, above }) => !above || !has(above) || (below && !has(below)),
  );
  return stop && { part: stop.record.part.id, port: stop.output };
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
    for (const { id: port, side } of record.ports) {
      const end = side === "in" ? record.joined[port] : undefined;
      const above = end && goUp(end[0], end[1]);
      if (above)
        return [
          {
            record,
            output,
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

function ownOffer(feed: Feed | undefined, { receiver, input }: Line): Offer | undefined {
  return feed?.find((o) => o.part === receiver && o.port === input);
}
