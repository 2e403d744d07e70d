/** What becomes of one carrier at a receiver: it is got, or it is missing for a reason. */
import type { Band } from "../signal/band.ts";
import { isLive } from "../signal/readout.ts";
import type { Headroom } from "./blocking.ts";
import type { Culprit, MissingReason, Why } from "./missing.ts";

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
  /** C/N that its modulation needs [dB]. */
  readonly requiredDb: number;
  /** How far the tuner is from being blocked; absent on a socket. */
  readonly headroom?: Headroom;
};

export type LostCarrier = {
  readonly got: false;
  readonly why: Why;
  readonly reason: MissingReason;
  /** Part to look at, if the reason names one. */
  readonly culprit?: Culprit;
  readonly userBand?: number;
};

export type CarrierResult = ({ readonly got: true } & GotCarrier) | LostCarrier;

/** Results by `carrierKey`, filled in while a receiver's inputs are gone through. */
export type CarrierResults = Map<string, CarrierResult>;

const NEARNESS: readonly Why[] = [
  "absent",
  "cut",
  "out of range",
  "wrong feed",
  "not selectable",
  "noisy",
  "disturbed",
  "blocked",
];

/** Names a carrier of a source's plan wherever it arrives. */
export function carrierKey(origin: string, index: number): string {
  return `${origin}#${index}`;
}

/** Adds what becomes of a carrier by one more way; the best way counts. */
export function addResult(results: CarrierResults, key: string, result: CarrierResult): void {
  results.set(key, better(results.get(key), result));
}

function better(a: CarrierResult | undefined, b: CarrierResult): CarrierResult {
  if (!a) return b;
  if (a.got && b.got) return b.cnDb > a.cnDb ? b : a;
  if (a.got !== b.got) return a.got ? a : b;
  if (!a.got && !b.got) return NEARNESS.indexOf(b.why) > NEARNESS.indexOf(a.why) ? b : a;
  return a;
}

/** Result for a carrier that some part upstream stops; undefined while it is live. */
export function cutResult(band: Band, i: number): LostCarrier | undefined {
  if (isLive(band, i)) return undefined;
  const cut = band.cuts[(band.cut[i] ?? 1) - 1];
  if (!cut) return undefined;
  const { part, reason } = cut;
  return { got: false, why: "cut", reason: { kind: "cut", part, cut: reason }, culprit: { part } };
}

/** Result for a wanted carrier that reaches no input at all. */
export const ABSENT: LostCarrier = { got: false, why: "absent", reason: { kind: "does not arrive" } };
