/** Who speaks to a switched output, and what of it arrives there. */

import type { Evaluation, PartRecord } from "../../../../evaluate/evaluation.ts";
import { plainLabelOf } from "../../../../sentences/phrases.ts";
import type { Offer, SwitchState } from "../../../../signal/control.ts";
import { loadOfSource, requestWords } from "./supply.ts";

export type Speaker = {
  readonly key: string;
  readonly name: string;
  readonly offer: Offer;
  /** Volts arriving for horizontal do not reach the threshold. */
  readonly tooLow: boolean;
  /** "asks for H high, position 2", "speaks for user bands 1, 2", "feeds". */
  readonly words: string;
  readonly load: { readonly milliamps: number; readonly limitMa: number } | null;
};

/** Whether the voltage decides anything there: a position switch and a stacked output leave that to others. */
export function decidesByVolts({ power }: PartRecord, port: string): boolean {
  const by = power.switches?.find((s) => s.port === port)?.by;
  return by === "quadrant" || by === "both";
}

/** Everybody who reaches a switched output, the winner first. */
export function speakersOf(evaluation: Evaluation, at: SwitchState): readonly Speaker[] {
  const record = evaluation.record(at.part);
  const byVolts = record !== undefined && decidesByVolts(record, at.port);
  return at.offers.map((offer) => ({
    key: `${offer.part}/${offer.port}`,
    name: plainLabelOf(evaluation, offer.part),
    offer,
    tooLow: byVolts && asksByVolts(offer) && offer.volts18 <= at.thresholdVolts,
    words: requestWords(evaluation, offer),
    load: loadOfSource(evaluation, offer),
  }));
}

function asksByVolts({ kind, request }: Offer): boolean {
  return kind === "commands" && request?.userBands === undefined;
}
