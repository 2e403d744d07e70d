/** Which user bands of a single-cable feed matter at a port. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { Band } from "../signal/band.ts";

/**
 * User bands that the receivers behind an output are set to; at a receiver's input its own. Empty where nobody
 * behind it is set to one: then any of them may be wanted there one day.
 */
export function userBandsBehind(record: PartRecord, port: string): ReadonlySet<number> {
  const own = record.kind.reception?.(record.options).inputs.find((input) => input.port === port);
  if (own) return new Set((own.userBands ?? []).map((b) => b.number));
  return new Set((record.feeds[port] ?? []).flatMap((offer) => offer.request?.userBands ?? []));
}

/** Whether carrier i of a band counts at a port whose user bands are `used`: all do but other people's user bands. */
export function isOfUse({ stack }: Band, i: number, used: ReadonlySet<number>): boolean {
  return !stack || used.size === 0 || used.has(stack.numbers[i] ?? 0);
}
