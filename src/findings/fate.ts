/** What becomes of one carrier at a receiver: it is got, or it is missing for a reason. */

import { type Clause, partName } from "../sentences/phrases.ts";
import type { Band } from "../signal/band.ts";
import type { Polarisation, Service } from "../signal/carrier.ts";
import { isLive } from "../signal/readout.ts";

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

export type Lost = {
  readonly got: false;
  readonly why: Why;
  /** "3 are stopped by ⟦plate⟧". */
  readonly clause: Clause;
  /** Of a carrier that is missing with the whole of its polarisation. */
  readonly polarisation?: Polarisation;
  /** Part to look at, if the reason names one. */
  readonly part?: string;
};

export type Fate = ({ readonly got: true } & GotCarrier) | Lost;

/** Fates of carriers by `carrierKey`, filled in while the receiver's inputs are gone through. */
export type Fates = Map<string, Fate>;

/** Names a carrier of a source's plan wherever it arrives. */
export function carrierKey(origin: string, index: number): string {
  return `${origin}#${index}`;
}

/** Notes what becomes of a carrier by one more way; the best way counts. */
export function note(fates: Fates, key: string, fate: Fate): void {
  fates.set(key, better(fates.get(key), fate));
}

function better(a: Fate | undefined, b: Fate): Fate {
  if (!a) return b;
  if (a.got && b.got) return b.cnDb > a.cnDb ? b : a;
  if (a.got !== b.got) return a.got ? a : b;
  if (!a.got && !b.got) return NEARNESS.indexOf(b.why) > NEARNESS.indexOf(a.why) ? b : a;
  return a;
}

/** Fate of a carrier that some part upstream stops; undefined while it is live. */
export function cutFate(band: Band, i: number): Lost | undefined {
  if (isLive(band, i)) return undefined;
  const cut = band.cuts[(band.cut[i] ?? 1) - 1];
  const part = cut?.part ?? "";
  const by = partName(part);
  return {
    got: false,
    why: "cut",
    part,
    clause: { one: (n) => `${n} is stopped by ${by}`, other: (n) => `${n} are stopped by ${by}` },
  };
}

/** Fate of a wanted carrier that reaches no input at all. */
export function absent(key: string, service: Service): Lost {
  const polarisation = service === "satellite" ? /\/([VH])#/.exec(key)?.[1] : undefined;
  if (polarisation === "V" || polarisation === "H")
    return { got: false, why: "absent", polarisation, clause: ABSENT_POLARISED[polarisation] };
  return { got: false, why: "absent", clause: ABSENT };
}

const ABSENT: Clause = {
  one: (n) => `${n} does not arrive here`,
  other: (n) => `${n} do not arrive here`,
};

const ABSENT_POLARISED: Readonly<Record<Polarisation, Clause>> = {
  V: {
    one: (n) => `${n} is vertical and does not arrive here`,
    other: (n) => `${n} are vertical and do not arrive here`,
  },
  H: {
    one: (n) => `${n} is horizontal and does not arrive here`,
    other: (n) => `${n} are horizontal and do not arrive here`,
  },
};
