/** Voltage and current at the ports of a part on a powered line. */

import type { Evaluation, PartRecord } from "../../../../evaluate/evaluation.ts";
import { plainLabelOf } from "../../../../sentences/phrases.ts";
import { waveAsked } from "../../../../sentences/planes.ts";
import type { Offer } from "../../../../signal/control.ts";
import { plural } from "../../../../words/plural.ts";

export type SupplyRow = {
  readonly port: string;
  /** "arrives": from downstream, at an output. "handed on": to what lies upstream, at an input. */
  readonly way: "arrives" | "handed on";
  readonly source: string;
  /** "asks for H high, position 2", "speaks for user bands 1, 2". */
  readonly asks: string;
  readonly volts: number;
  /** Current drawn from upstream of this port, if anything draws one [mA]. */
  readonly milliamps: number;
  /** "feeds": the strongest that counts now. "weaker": the line carries a higher voltage. "dormant": behind a switch that stands otherwise. */
  readonly state: "feeds" | "weaker" | "dormant";
};

/** Every supply at every port, the strongest of each port first; empty for a part on no powered line. */
export function supplyRows(evaluation: Evaluation, record: PartRecord): readonly SupplyRow[] {
  return record.ports.flatMap((port) => {
    const feed = (port.side === "out" ? record.feeds[port.id] : record.offers[port.id]) ?? [];
    const winner = feed.find((offer) => !offer.dormant);
    return feed.map(
      (offer): SupplyRow => ({
        port: port.label,
        way: port.side === "out" ? "arrives" : "handed on",
        source: plainLabelOf(evaluation, offer.part),
        asks: requestWords(evaluation, offer),
        volts: offer.volts,
        milliamps: record.demands[port.id]?.milliamps ?? 0,
        state: offer.dormant ? "dormant" : offer === winner ? "feeds" : "weaker",
      }),
    );
  });
}

/** How much of its limit the source of a supply has to deliver [mA]; null when nothing draws on it. */
export function loadOfSource(
  evaluation: Evaluation,
  offer: Offer,
): { readonly milliamps: number; readonly limitMa: number } | null {
  const milliamps = evaluation.record(offer.part)?.demands[offer.port]?.milliamps ?? 0;
  return milliamps > 0 ? { milliamps, limitMa: offer.limitMa } : null;
}

/** What the source of a supply asks for on its line. */
export function requestWords(evaluation: Evaluation, { part, request }: Offer): string {
  if (!request) return "feeds, asks for nothing";
  const { polarisation, half, position, uncommitted, burst, userBands } = request;
  if (userBands)
    return plural(userBands.length, {
      zero: "speaks for no user band",
      one: `speaks for user band ${userBands.join(", ")}`,
      other: `speaks for user bands ${userBands.join(", ")}`,
    });
  return [
    `asks for ${waveAsked(evaluation.record(part), polarisation)} ${half}`,
    ...(position === undefined ? [] : [`position ${position}`]),
    ...(uncommitted === undefined ? [] : [`input ${uncommitted}`]),
    ...(burst === undefined ? [] : [`burst ${burst}`]),
  ].join(", ");
}
