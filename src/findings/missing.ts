/** Why carriers are missing at a receiver or a tuner, as facts. `src/sentences/verdict.ts` makes words of them. */
import type { PartId } from "../design/design.ts";
import type { SatelliteBand } from "../parts/planSatellite.ts";
import type { CutReason, StackStandard } from "../signal/band.ts";
import type { Polarisation, SkyHalf } from "../signal/carrier.ts";
import type { Blamed } from "./blame/culprit.ts";
import type { Spoiler } from "./blame/quality.ts";
import type { BlockedAt } from "./blockedCarriers.ts";

/** One quadrant of one orbital position: what 13/18 V, the 22 kHz tone and a position command select together. */
export type Plane = {
  /** Dish that sends it. */
  readonly source: PartId;
  /** Orbital position as the user wrote it, for instance "20.0°E". */
  readonly position?: string;
  readonly polarisation: Polarisation;
  readonly half: SkyHalf;
  /** Of a satellite of another band than Ku, which has no halves: nothing but the polarisation is asked for. */
  readonly isUndivided?: true;
  /** The waves turn: right-hand where `polarisation` is V, left-hand where it is H. */
  readonly circular?: true;
};

/** From "not there at all" to "nearly": the best that happened to a carrier decides what is said of it. */
export type Why =
  | "absent"
  | "cut"
  | "out of range"
  | "wrong feed"
  | "not selectable"
  | "disturbed"
  | "noisy"
  | "blocked";

/** A port of a part; without a port the part as a whole. */
export type Culprit = { readonly part: PartId; readonly port?: string };

/** Mechanism of a loss. Parts named in it are those that the mechanism needs; the culprit stands beside it. */
export type MissingReason =
  /** No way to it was found that only lacks one thing. */
  | { readonly kind: "does not arrive" }
  /** Nothing is drawn that sends the service. */
  | { readonly kind: "no source" }
  /** The input of a tuner has no lead. */
  | { readonly kind: "no lead"; readonly port: string }
  /** It would come in by this input, which is open; `free`: an open output that has it. */
  | {
      readonly kind: "open input";
      readonly part: PartId;
      readonly port: string;
      readonly free?: { readonly part: PartId; readonly port: string };
    }
  /** This input gets another signal than belongs there; `right`: the output that has what is missing. */
  | {
      readonly kind: "wrong lead";
      readonly part: PartId;
      readonly port: string;
      readonly from: { readonly part: PartId; readonly port: string };
      readonly right?: { readonly part: PartId; readonly port: string };
    }
  /** The part has it at an input, and hands it on at another output only. */
  | {
      readonly kind: "other output";
      readonly part: PartId;
      readonly port: string;
      readonly outputs: readonly string[];
    }
  /** The part has it at an input and lets it through to no output. */
  | { readonly kind: "no way through"; readonly part: PartId; readonly from: string; readonly to: string }
  /** The LNB is made for other frequencies [MHz]: for another band than that of the satellite, or for a part of it. */
  | {
      readonly kind: "outside its range";
      readonly part: PartId;
      readonly band: SatelliteBand;
      readonly fromMHz: number;
      readonly toMHz: number;
    }
  | { readonly kind: "no supply"; readonly part: PartId }
  | { readonly kind: "loop"; readonly part: PartId }
  /** The output of the source, or of a part behind it, leads nowhere. */
  | { readonly kind: "open output"; readonly part: PartId; readonly port: string }
  | { readonly kind: "cut"; readonly part: PartId; readonly cut: CutReason }
  | { readonly kind: "outside tuning range"; readonly fromMHz: number; readonly toMHz: number }
  /** It arrives, and the receiver has no tuner for its system: cable television at a set for terrestrial TV, or DVB-T2 at an old one. */
  | { readonly kind: "no tuner for it"; readonly system: "DVB-C" | "DVB-T2" }
  | { readonly kind: "not converted" }
  | { readonly kind: "switched feed on a wideband input" }
  | { readonly kind: "wideband feed on a switched input" }
  /**
   * The receiver's menu, or a unit between, has another oscillator than the LNB [MHz]: all appears beside where it is
   * looked for.
   */
  | {
      readonly kind: "other oscillator";
      readonly menuMHz: number;
      readonly realMHz: number;
      /**
       * "above": both stand above the signal, and the higher one puts it higher. "either": one above and one below it, so
       * that it appears in turned order, each carrier by another difference. Absent: both below.
       */
      readonly sides?: "above" | "either";
      /** The unit that is set so; absent where the receiver is. */
      readonly unit?: PartId;
    }
  | { readonly kind: "plain feed on a single-cable input" }
  | { readonly kind: "single-cable feed on a plain input" }
  | {
      readonly kind: "wrong polarisation at the input";
      readonly circular?: true;
      readonly port: string;
      readonly input: Polarisation;
      readonly arrives: Polarisation;
    }
  /** It hides behind another quadrant's name: two leads are changed at the switch. */
  | { readonly kind: "leads changed"; readonly part: PartId }
  | { readonly kind: "no user band set" }
  | { readonly kind: "no such user band"; readonly part: PartId; readonly userBand: number }
  | {
      readonly kind: "other centre";
      readonly part: PartId;
      readonly userBand: number;
      readonly hereMHz: number;
      readonly thereMHz: number;
    }
  /** The user band listens to messages of another standard than the receiver sends. */
  | {
      readonly kind: "other messages";
      readonly part: PartId;
      readonly userBand: number;
      readonly sends: StackStandard;
      readonly knows: StackStandard;
    }
  | { readonly kind: "user band used twice"; readonly by: PartId; readonly userBand: number }
  /** A receiver in another mode holds the single-cable line. */
  /** `volts`: it keeps so many on the line and speaks to nobody [V]. */
  | { readonly kind: "line held"; readonly by: PartId; readonly volts?: number }
  /** The receiver gives one voltage and no tone, so the switch stays as that leaves it. */
  | { readonly kind: "fixed supply"; readonly part: PartId }
  /** A switch, and what does not get to it from here. */
  | { readonly kind: "no command"; readonly part: PartId }
  | { readonly kind: "no message"; readonly part: PartId }
  | { readonly kind: "no tone"; readonly part: PartId }
  | {
      readonly kind: "too few volts";
      readonly part: PartId;
      readonly volts: number;
      readonly thresholdVolts: number;
    }
  /** Its supply keeps it alive at 18 V only: whoever asks for vertical gets nothing through it, or too little. */
  | {
      readonly kind: "dies at vertical";
      readonly part: PartId;
      readonly volts: number;
      readonly leastVolts: number;
      /** Whose 13 V these are, where it is another receiver's. */
      readonly by?: { readonly part: PartId; readonly port: string };
    }
  /** Somebody else decides how the switch stands. */
  | { readonly kind: "set by another"; readonly part: PartId; readonly by: PartId }
  /** Of an outlet: it arrives, and no socket meant for it has it usable. */
  | { readonly kind: "not handed on" }
  /** Strong and clean, but the tuner at this input is blocked: by all together, or by what is beside it. */
  | ({ readonly kind: "blocked" } & BlockedAt)
  | { readonly kind: "disturbed" }
  | { readonly kind: "noisy" };

/** So many carriers are missing for the same reason, by the same culprit. */
export type Missing = {
  readonly why: Why;
  readonly count: number;
  readonly reason: MissingReason;
  /** What a tradesman would take in hand; absent where it is the receiver itself. */
  readonly culprit?: Culprit;
  /** What the culprit does, where carriers arrive too weak, too noisy or disturbed; and what they are disturbed by. */
  readonly blamed?: Blamed;
  readonly spoiler?: Spoiler;
  /** Satellite planes that are missing as a whole for this reason; empty where single carriers are. */
  readonly planes: readonly Plane[];
  /** Where it concerns one user band. */
  readonly userBand?: number;
};
