/** How little a part sends back of what reaches it. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { Job } from "../parts/trade.ts";

/**
 * Typical return loss by job, for kinds that do not state their own [dB]. Converter 8 and receiver 6 at least: an operator's
 * LNB specification and a professional receiver's manual; headends 6 to 10: Spanish Royal Decree 346/2011; the
 * rest from memory.
 */
const BY_JOB: Readonly<Partial<Record<Job, number>>> = {
  converter: 8,
  receiver: 8,
  combiner: 14,
  separator: 14,
  filter: 14,
  pad: 18,
  equaliser: 15,
  supply: 16,
  block: 16,
  load: 20,
  meter: 18,
};

/** Aerials, amplifiers, switch units. */
const OTHERS_DB = 10;

/** Return loss at the ports of a part [dB]: its own, or what is usual for its job. */
export function partReturnLossDb({ treatment, kind }: PartRecord): number {
  return treatment.returnLossDb ?? BY_JOB[kind.trade.job] ?? OTHERS_DB;
}
