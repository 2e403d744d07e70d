/**
 * What a meter shows, looped into a line: no more than a real one would, so that who measures must think.
 * It does not know where a carrier comes from, what a switch is about to do, or what the fault is.
 */

import type { PortRef, Wire } from "../../design/design.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { tunerNoiseUv2 } from "../../findings/tunerQuality.ts";
import { ratioToDb } from "../../rf/decibel.ts";
import type { Band } from "../../signal/band.ts";
import type { Service } from "../../signal/carrier.ts";
import type { Feed } from "../../signal/control.ts";
import { disturbanceUv2 } from "../../signal/readout.ts";

export type Quantity = "level" | "cn" | "mer" | "volts" | "tone";
export const QUANTITIES: readonly Quantity[] = ["level", "cn", "mer", "volts", "tone"];
export const QUANTITY_UNITS: Readonly<Record<Quantity, string>> = {
  level: "dBµV",
  cn: "dB",
  mer: "dB",
  volts: "V",
  tone: "",
};

/** One carrier as the meter shows it. */
export type CarrierReading = {
  readonly service: Service;
  /** Name in the channel plan: "C23", "12B"; on a channel-stacked line the user band. */
  readonly name: string;
  readonly centreMHz: number;
  /** Rounded to half a decibel [dBµV for level, dB for C/N and MER]. */
  readonly value: number;
};

export type Reading =
  | { readonly quantity: "level" | "cn" | "mer"; readonly carriers: readonly CarrierReading[] }
  | {
      readonly quantity: "volts";
      /** Rounded to a tenth; 0 on a dead line [V]. */
      readonly volts: number;
    }
  | { readonly quantity: "tone"; readonly tone: boolean };

/** Below this a meter shows a dash [dBµV]; typical, from memory. */
export const METER_FLOOR_DBUV = 20;
/** The best MER that a good meter can show, for its own errors [dB]; typical, from memory. */
export const METER_MER_DB = 40;
/** Noise figure of a meter [dB]; as of a receiver, from memory. */
const METER_NOISE_FIGURE_DB = 8;

/** Reads a meter at a port or a wire; null where none can be connected: a dish's beam, a part that is not there. */
export function reading(evaluation: Evaluation, at: PortRef | Wire, quantity: Quantity): Reading | null {
  const [id, portId] = "from" in at ? at.from : at;
  const record = evaluation.record(id);
  const port = record?.ports.find((p) => p.id === portId);
  if (!record || port?.medium !== "coax") return null;
  const isOutput = port.side === "out";
  const feed = (isOutput ? record.feeds : record.offers)[portId] ?? [];
  if (quantity === "volts") return { quantity, volts: voltsOf(feed) };
  if (quantity === "tone") return { quantity, tone: hasTone(feed) };
  const bands = (isOutput ? record.outputs : record.inputs)[portId]?.bands ?? [];
  return { quantity, carriers: carriersOf(bands, quantity) };
}

/** The highest voltage on the line now wins. */
function voltsOf(feed: Feed): number {
  const volts = feed
    .filter((offer) => !offer.dormant)
    .reduce((most, offer) => Math.max(most, offer.volts), 0);
  return Math.round(volts * 10) / 10;
}

/** Steady tone only: messages to a stacking converter are bursts, too short to read. */
function hasTone(feed: Feed): boolean {
  return feed.some(
    ({ dormant, toneArrives, volts, request }) =>
      !dormant && toneArrives && volts > 0 && request?.half === "high" && request.userBands === undefined,
  );
}

/** Carriers strong enough to be seen, of what the switches let through now, in rising frequency. */
function carriersOf(bands: readonly Band[], quantity: "level" | "cn" | "mer"): readonly CarrierReading[] {
  const seen: CarrierReading[] = [];
  for (const band of bands) {
    if (!band.selected || band.isFloor) continue;
    for (let i = 0; i < band.level.length; i++) {
      const measured = measure(band, i);
      if (!measured || measured.level < METER_FLOOR_DBUV) continue;
      seen.push({
        service: band.origin.service,
        name: nameOf(band, i),
        centreMHz: Math.round((band.grid.centre[i] ?? 0) * 100) / 100,
        value: Math.round(measured[quantity] * 2) / 2,
      });
    }
  }
  return seen.sort((a, b) => a.centreMHz - b.centreMHz);
}

function nameOf(band: Band, i: number): string {
  if (band.stack) return `user band ${band.stack.numbers[i] ?? 0}`;
  return band.grid.plan[band.grid.index[i] ?? 0]?.name ?? "";
}

/**
 * Level: all the power in the channel. C/N: against noise alone, as measured beside the carriers. MER: against
 * noise, interference and the meter's own errors. A meter adds noise as a receiver's tuner does.
 */
function measure(band: Band, i: number): Readonly<Record<"level" | "cn" | "mer", number>> | null {
  const carrier = 10 ** ((band.level[i] ?? 0) / 10);
  const noise = (band.noise[i] ?? 0) + tunerNoiseUv2(band.grid, i, METER_NOISE_FIGURE_DB);
  const interference = disturbanceUv2(band, i);
  if (!(carrier > 0) || !(noise > 0)) return null;
  const errors = carrier / 10 ** (METER_MER_DB / 10);
  return {
    level: ratioToDb(carrier + noise + interference),
    cn: ratioToDb(carrier / noise),
    mer: ratioToDb(carrier / (noise + interference + errors)),
  };
}
