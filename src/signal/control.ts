/** Supply and commands as they travel upstream, and the switches that they set. */
import type { Polarisation, SkyHalf } from "./carrier.ts";

/** What a receiver input asks for at this moment. */
export type Request = {
  /** 13 V asks for vertical, 18 V for horizontal. */
  readonly polarisation: Polarisation;
  /** No tone: low band; 22 kHz tone: high band. */
  readonly half: SkyHalf;
  /** Position of a position switch, 1 to 4 (absent: no position command sent). */
  readonly position?: number;
  /** Input of a switch for uncommitted commands, 1 to 16 (absent: none sent); sent before the position. */
  readonly uncommitted?: number;
  /** Sends commands for a dish motor too. */
  readonly motor?: true;
  /** Tone burst: A without modulation, B with it (absent: none sent). */
  readonly burst?: "A" | "B";
  /** Numbers of the user bands this input tunes through; present only in single-cable mode. */
  readonly userBands?: readonly number[];
};

/** Which of its commands a position switch heeds. */
export type PositionCommand = "committed" | "uncommitted" | "burst";

/** The position that a request asks a switch for, by the command that it heeds; undefined where none is sent. */
export function positionAsked(
  request: Request | undefined,
  heeds: PositionCommand = "committed",
): number | undefined {
  if (heeds === "uncommitted") return request?.uncommitted;
  if (heeds === "committed") return request?.position;
  return request?.burst === undefined ? undefined : request.burst === "A" ? 1 : 2;
}

/** One supply that reaches a point, with what has become of it on the way. */
export type Offer = {
  /** The part and port that supplies: a receiver input, a mains unit, an inserter. */
  readonly part: string;
  readonly port: string;
  /** "commands": a receiver that may switch; "plain": a fixed supply without commands. */
  readonly kind: "commands" | "plain";
  /** Voltage arriving here for a vertical and for a horizontal request [V] (equal for a plain supply). */
  readonly volts13: number;
  readonly volts18: number;
  /** Voltage arriving now [V]. */
  readonly volts: number;
  /** Series resistance passed so far [Ω] and the drop it caused at the present load [V]. */
  readonly ohms: number;
  readonly dropVolts: number;
  /** Current limit of the source [mA]. */
  readonly limitMa: number;
  /** Whether 22 kHz tone and messages still reach this point. */
  readonly toneArrives: boolean;
  /** What the source asks for; absent for a plain supply. */
  readonly request?: Request;
  /** True where the way leads through a switch that stands elsewhere now, but could be set here. */
  readonly dormant: boolean;
  /** Its unit saves energy: it gives this only while a receiver below it is on. */
  readonly sleeps?: true;
};

/** The supplies that reach one point, strongest first (the higher voltage wins, tones add up). */
export type Feed = readonly Offer[];
export const NO_FEED: Feed = [];

/** What one part draws [mA]. */
export type Draw = { readonly part: string; readonly milliamps: number };

/** Load that hangs upstream of a point, if it were supplied from here. */
export type Demand = {
  /** All draws together [mA]. */
  readonly milliamps: number;
  /** Parts that draw the current, each once, by however many ways it is reached. */
  readonly draws: readonly Draw[];
  /** Part that shorts the line to earth for direct current, if one does. */
  readonly shortedBy: string | null;
};
export const NO_DEMAND: Demand = { milliamps: 0, draws: [], shortedBy: null };

/** A switched output and how it stands. Its identity changes when who speaks to it changes. */
export type SwitchState = {
  /** "part/port" of the switched output. */
  readonly id: string;
  readonly part: string;
  readonly port: string;
  /** Everybody who can reach it, winner first. */
  readonly offers: Feed;
  /** Setting now: a quadrant, or quadrant and position ("HL", "2:HL", "2"); null: nobody supplies it. */
  readonly setting: string | null;
  /** Above this voltage a request counts as horizontal [V]. */
  readonly thresholdVolts: number;
  /** Its part lives on this line alone and dies below so many volts [V]; absent where something else feeds it. */
  readonly leastVolts?: number;
  /** True when two different receiver inputs speak to it: each sees what the winner asks for. */
  readonly contested: boolean;
};

/** A part that lives on its lines now, and on none of them while all who may choose ask for vertical. */
export type DiesAtVertical = {
  readonly part: string;
  /** Most that it gets then, and what it needs [V]. */
  readonly volts: number;
  readonly leastVolts: number;
  /** Supplies with commands that reach it. */
  readonly offers: Feed;
};

/** "Only while that switch stands so." */
export type Condition = { readonly at: SwitchState; readonly setting: string };
