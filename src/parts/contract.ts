/**
 * What a part kind declares. The tray, the inspector, the file format, the evaluator, the parts list
 * and the help all read this one declaration, and so do cures, faults, costs and rules: what the trade knows of a kind
 * stands in its `trade`, what it knows of an option at the option's field (`fields.ts`).
 */
import type { z } from "zod";
import type { Stub } from "../rf/stub.ts";
import type { TunerClass } from "../rf/tunerProtection.ts";
import type { Band, StackStandard } from "../signal/band.ts";
import type { Polarisation, Service, SkyHalf } from "../signal/carrier.ts";
import type { Offer, PositionCommand, Request } from "../signal/control.ts";
import type { FeedShares } from "../signal/leak.ts";
import type { Response } from "../signal/response.ts";
import type { OutsideField } from "./outsideField.ts";
import type { SymbolName } from "./symbols.ts";
import type { Trade } from "./trade.ts";

export type Family = "receive" | "convert" | "join" | "lift" | "run" | "deliver" | "use";

export const FAMILY_NAMES: Readonly<Record<Family, string>> = {
  receive: "Receive",
  convert: "Convert",
  join: "Combine and split",
  lift: "Amplify and adjust",
  run: "Run",
  deliver: "Deliver",
  use: "Use",
};

/** "sky": the beam between a dish and its LNB; "coax": everything with an F or IEC connector. */
export type Medium = "sky" | "coax";

/**
 * What a port is there for. Inputs and outputs: "beam" between dish and converter, "plane" of a satellite (a whole
 * polarisation or a quadrant), "band" of a diplexer or of a radio aerial, "terrestrial". Inputs: "input", "position".
 * Outputs: "output" (as good as its sisters), "leg" of a splitter, "tap" off a trunk, "trunk" where the line goes on,
 * "socket" for a receiver's lead.
 */
export type PortRole =
  | "beam"
  | "plane"
  | "band"
  | "terrestrial"
  | "input"
  | "position"
  | "output"
  | "leg"
  | "tap"
  | "trunk"
  | "socket";

export type Port = {
  readonly id: string;
  readonly role: PortRole;
  /** Signal goes in at inputs and out at outputs; supply and commands go the other way. */
  readonly side: "in" | "out";
  readonly medium: Medium;
  /** Short label beside the handle: "V", "out 3", "TV". */
  readonly label: string;
  /** What a port with the role "plane" carries; without a half the whole polarisation. */
  readonly plane?: PortPlane;
};

/** A part of what one satellite sends; position 1 is the first satellite of a unit. */
export type PortPlane = {
  readonly position: number;
  readonly polarisation: Polarisation;
  readonly half?: SkyHalf;
};

/** Rated output of an active part (EN 60728-3 two-carrier method). */
export type Rating = {
  /** Output level per carrier [dBµV] at which two carriers give the stated ratio. */
  readonly outputDbuv: number;
  /** Ratio of carrier to third-order product [dB]: 60 for TV amplifiers, 35 for satellite IF. */
  readonly ratioDb: number;
  /** The rating is that of the input of a stacking stage, where so much may come in and nothing is amplified yet. */
  readonly isInput?: true;
};

/** One way through a part, from an input to an output. */
export type Path = {
  /** An input port, or an inner node whose name starts with "#". */
  readonly from: string;
  /** An output port, or an inner node. */
  readonly to: string;
  /** Gain at the frequency that leaves the path (after conversion). */
  readonly response: Response;
  /** Absent: passive at 290 K, its noise follows from its loss. Present: active, with this noise figure [dB]. */
  readonly noiseFigureDb?: number;
  readonly rating?: Rating;
  /**
   * Automatic level control: all that comes by this path together leaves it with this level [dBµV], as far as its
   * gain reaches [dB]. It stands in the place of a gain: the response then holds filters only.
   */
  readonly levelControl?: { readonly outputDbuv: number; readonly mostGainDb: number };
  /** Takes only this polarisation, and only carriers centred in this part of the sky band [MHz]. */
  readonly takes?: {
    readonly polarisation?: Polarisation;
    readonly half?: SkyHalf;
    readonly fromMHz?: number;
    readonly toMHz?: number;
  };
  /** At the microwave side: how much of each wave the feed takes. What it takes beside what is wanted disturbs that. */
  readonly feed?: FeedShares;
  /** Other inputs whose signals come through on this path too, so much weaker [dB]. */
  readonly crosstalk?: { readonly from: readonly string[]; readonly isolationDb: number };
  /** Local oscillator [MHz]: a carrier at f leaves at f − lo. */
  readonly loMHz?: number;
  /** The oscillator stands above what is taken: a carrier at f leaves at lo − f, so the order is turned round. */
  readonly isInverted?: true;
  /** Conversion within the IF [MHz]: a carrier at f leaves at f + shift; after that it lies where `half` of `takes` is usual. */
  readonly shiftMHz?: number;
  /** The part itself sets the switches above `from`: only what it has set goes on, and nobody else can set them. */
  readonly holds?: true;
  /** Range in which a converter's own noise leaves this path beside the carriers [MHz]. */
  readonly floor?: NoiseFloorRange;
  /** The path exists only while the switch of `port` (an output of this part) stands at `setting`. */
  readonly condition?: { readonly port: string; readonly setting: string };
};

/**
 * Where a converter's own noise goes [MHz], and how far it has fallen at 0.895 of the lower edge [dB]; absent where
 * nothing of it is below.
 */
export type NoiseFloorRange = {
  readonly fromMHz: number;
  readonly toMHz: number;
  readonly rollOffDb?: number;
};

/** Channel stacking: puts any carrier that arrives at the inner nodes onto a user band of an output. */
export type StackPath = {
  readonly from: readonly string[];
  /** What the unit takes each inner node for; whatever else comes in there is never where a receiver asks for it. */
  readonly planes?: Readonly<Record<string, Omit<PortPlane, "position">>>;
  readonly to: string;
  readonly standard: StackStandard;
  readonly userBands: readonly {
    readonly number: number;
    readonly centreMHz: number;
    readonly widthMHz: number;
    /** Where it listens to messages of another standard than `standard`. */
    readonly standard?: StackStandard;
  }[];
  /** Output level of each user band, held by automatic gain control [dBµV]. */
  readonly levelDbuv: number;
  /** Referred to the inner nodes. */
  readonly noiseFigureDb: number;
  /** Oscillator that it reckons with, where whole polarisations come in [MHz]. */
  readonly widebandLoMHz?: number;
  /** Least level at an inner node with which the gain control still reaches that output level [dBµV]. */
  readonly leastDbuv: number;
};

/** What a part does to signals. */
export type SignalTreatment = {
  /** Bands that a source puts on its ports. */
  readonly emits?: readonly { readonly port: string; readonly bands: readonly Band[] }[];
  /** What gets in through its screen from outside, at its output ports: no source of the design's own. */
  readonly ingress?: readonly { readonly port: string; readonly bands: readonly Band[] }[];
  readonly paths?: readonly Path[];
  readonly stacks?: readonly StackPath[];
  /** Decoupling between any two outputs [dB]; absent where it isn't stated. */
  readonly isolationDb?: number;
  /** Return loss at each of its ports [dB]; absent: what parts of its job usually have. */
  readonly returnLossDb?: number;
  /** Length of line between its two ports, as long as it looks to a wave: metres divided by the velocity factor. */
  readonly electricalM?: number;
};

/** A way for supply and commands, from an output port (where the supply comes in) up to an input port. */
export type PowerPath = {
  readonly from: string;
  readonly to: string;
  readonly ohms?: number;
  /** Forward drop of a steering diode [V]; current then flows this way only. */
  readonly dropVolts?: number;
  /** Current flows this way only, without a drop that counts. Otherwise a way without a diode conducts both ways. */
  readonly oneWay?: true;
  /** Whether 22 kHz and messages pass; direct current alone passes otherwise. */
  readonly tone: boolean;
  /** Only while position `position` is asked for on the output `from`, by the command that it heeds (1 to 16). */
  readonly position?: number;
  readonly heeds?: PositionCommand;
};

export type Supply = {
  /** Input port onto which the voltage is put, so that it travels upstream; an output port where it goes `down`. */
  readonly port: string;
  /** It feeds what hangs on an output: units on the trunks below a head end. */
  readonly down?: true;
  readonly kind: Offer["kind"];
  readonly volts13: number;
  readonly volts18: number;
  readonly limitMa: number;
  /** Supplies of this part with one name here have this limit together. */
  readonly shares?: string;
  /** It feeds only while a supply arrives at one of these outputs. */
  readonly whileFedAt?: readonly string[];
  readonly request?: Request;
};

/** What a part does to supply and commands. Absent lists mean: nothing passes. */
export type PowerTreatment = {
  readonly paths?: readonly PowerPath[];
  readonly supplies?: readonly Supply[];
  /** Own consumption, fed from whichever of these ports carries the highest voltage: outputs, or inputs fed from the head end. */
  readonly load?: {
    readonly milliamps: number;
    /** What each of these ports adds while a supply arrives there [mA]. */
    readonly perFedPort?: { readonly milliamps: number; readonly ports: readonly string[] };
    readonly ports: readonly string[];
    readonly minVolts: number;
    /** More than this it may not survive [V]. */
    readonly mostVolts?: number;
    /** It draws so many milliamperes at this voltage, and more at less: a switching regulator [V]. */
    readonly constantPowerAtVolts?: number;
  };
  /** Turns a dish while whoever feeds `port` tells it to, and then draws so much instead of its load [mA]. */
  readonly motor?: { readonly port: string; readonly turningMa: number };
  /** Fed from the mains or from its own unit, and switched on: works whatever the line carries. */
  readonly selfPowered?: boolean;
  /** Ports at which direct current would find a short to earth. */
  readonly shorts?: readonly string[];
  /** Ports at which it finds a resistor to earth. */
  readonly resistors?: readonly { readonly port: string; readonly ohms: number }[];
  /** Output ports that are switches: what arrives there as a command decides their setting. */
  readonly switches?: readonly SwitchDeclaration[];
};

export type SwitchDeclaration = {
  readonly port: string;
  /**
   * "quadrant": settings VL, VH, HL, HH. "polarisation": settings V and H, whatever the tone. "position": settings
   * "1".."16". "both": "1:VL" .. "4:HH". "stack": single-cable messages; no setting, but the list of who speaks counts.
   */
  readonly by: "quadrant" | "polarisation" | "position" | "both" | "stack";
  readonly positions: number;
  /** The command that decides the position; absent: a committed one. */
  readonly heeds?: PositionCommand;
  /** Above this voltage the converter takes the request as horizontal [V]. */
  readonly thresholdVolts: number;
};

/** What a part is told when it is asked for its signal treatment. */
export type SignalContext = {
  /** Id of the part: origins are named after it. */
  readonly id: string;
  /** Self-powered, or supplied with enough voltage. Always true for a part without load. */
  readonly powered: boolean;
  /** Transmitters near the installation; absent where there are none. */
  readonly field?: OutsideField;
  /** By leg of a part that simply joins its lines: what hangs there and ends open or shorted. */
  readonly deadEnds?: Readonly<Record<string, DeadEnd>>;
};

/** Cable that hangs on a joint and leads nowhere. */
export type DeadEnd = {
  readonly stub: Stub;
  /** Gain of it one way. */
  readonly loss: Response;
  readonly lengthM: number;
  /** Ids of its parts, from the joint on. */
  readonly parts: readonly string[];
};

/** What every tuner behind an input has before its demodulator. */
export type FrontEnd = {
  /** Noise figure [dB]. */
  readonly noiseFigureDb: number;
  /** Above this power of all that its filters let in together no carrier is received, however strong [dBµV]. */
  readonly overloadDbuv: number;
  /** How well it tells a carrier from those beside it. */
  readonly tuner: TunerClass;
};

/** One input of a receiver and what it can do with what arrives. */
export type ReceiverInput = {
  readonly port: string;
  /**
   * "terrestrial": tunes carriers directly. "switched": a universal LNB or multiswitch output, four quadrants.
   * "wideband": the whole of one polarisation at once. "stacked": user bands.
   */
  readonly feed: "terrestrial" | "switched" | "wideband" | "stacked";
  readonly services: readonly Service[];
  /** For a wideband input: the polarisation it is meant for (absent: finds out by itself). */
  readonly polarisation?: Polarisation;
  readonly tunesFromMHz: number;
  readonly tunesToMHz: number;
  /**
   * Modulations, by how their key begins, that it tunes in another range; without a range it has no tuner for them.
   * Those not named here it tunes as it tunes everything.
   */
  readonly systems?: readonly {
    readonly modes: string;
    readonly range: { readonly fromMHz: number; readonly toMHz: number } | undefined;
  }[];
  /** Tuners behind this input. */
  readonly tuners: number;
  /** What they take and what they add. */
  readonly frontEnd: FrontEnd;
  /** Own user bands of a stacked input: the receiver tunes only through these. */
  readonly userBands?: readonly { readonly number: number; readonly centreMHz: number }[];
  /** Standard of the messages that a stacked input sends; absent: either, as the unit needs it. */
  readonly standard?: StackStandard;
  /** Oscillators that its menu reckons with; absent: those of a universal LNB, and of a wideband one any. */
  readonly menu?: MenuOscillators;
};

/**
 * Local oscillators as a receiver's menu has them [MHz], for each band of the sky: a menu has an entry for each
 * satellite. `wideband`: absent where it finds that out by itself; C and Ka band: absent where the usual ones stand.
 */
export type MenuOscillators = {
  readonly lowMHz: number;
  readonly highMHz: number;
  readonly cBandMHz?: number;
  readonly kaBandMHz?: number;
  readonly widebandMHz?: number;
};

export type Reception = {
  readonly inputs: readonly ReceiverInput[];
  /** Services that whoever sits before it expects. */
  readonly wants: readonly Service[];
};

/** A wall plate: which output is meant for what. */
export type Delivery = {
  readonly sockets: readonly { readonly port: string; readonly services: readonly Service[] }[];
};

export type OptionsSchema = z.ZodObject;

/** Complete, checked options of a part; a kind casts them to its own type once, in `define`. */
export type AnyOptions = Readonly<Record<string, unknown>>;

export type PartKind = {
  /** Key in files and links; never changed once released. */
  readonly kind: string;
  readonly family: Family;
  /** Name in the tray. */
  readonly name: string;
  /** The name when links were first made, where it was another: a label that a link leaves out keeps its meaning. */
  readonly firstName?: string;
  /** One plain sentence: what it is for. */
  readonly summary: string;
  /** Further words a user may search for. */
  readonly keywords: readonly string[];
  /** Prefix of ids and default label: "lnb" gives lnb1, lnb2. */
  readonly prefix: string;
  readonly trade: Trade;
  readonly options: OptionsSchema;
  readonly symbol: (o: AnyOptions) => SymbolName;
  /** One short line under the label: "30 m · 1.0 mm copper". */
  readonly caption: (o: AnyOptions, comes?: WhatComes) => string;
  /** What stands on its wire, for a kind that is drawn there and not as a card of its own: "30 m". */
  readonly onWire?: (o: AnyOptions) => string;
  readonly ports: (o: AnyOptions) => readonly Port[];
  readonly signal: (o: AnyOptions, context: SignalContext) => SignalTreatment;
  readonly power: (o: AnyOptions) => PowerTreatment;
  readonly reception?: (o: AnyOptions) => Reception;
  readonly delivery?: (o: AnyOptions) => Delivery;
  /**
   * True for parts through which a wire can be led: they have one natural way in and out, so they can be
   * dropped onto a wire, and their wire heals when they are deleted.
   */
  readonly inline?: { readonly in: string; readonly out: string };
  /** Its lines are simply joined: one that ends open or shorted acts on the others, and `signal` is told of it. */
  readonly joinsLines?: true;
  /** Usual cautions shown in the inspector (mains, height, bonding); see `cautions.ts`. */
  readonly cautions?: readonly Caution[];
};

/** What a caption may say of what comes in: waves that turn have other names. */
export type WhatComes = { readonly circular: boolean };

export type Caution = "mains" | "height" | "bonding";

type Typed<S extends OptionsSchema> = Omit<
  PartKind,
  "options" | "symbol" | "caption" | "onWire" | "ports" | "signal" | "power" | "reception" | "delivery"
> & {
  readonly options: S;
  readonly symbol: SymbolName | ((o: z.output<S>) => SymbolName);
  readonly caption: (o: z.output<S>, comes?: WhatComes) => string;
  readonly onWire?: (o: z.output<S>) => string;
  readonly ports: (o: z.output<S>) => readonly Port[];
  readonly signal: (o: z.output<S>, context: SignalContext) => SignalTreatment;
  readonly power?: (o: z.output<S>) => PowerTreatment;
  readonly reception?: (o: z.output<S>) => Reception;
  readonly delivery?: (o: z.output<S>) => Delivery;
};

/**
 * Declares a kind with its options typed by its own schema. The one cast from checked to typed options
 * lives here: whoever makes a Part has parsed its options with `kind.options`.
 */
export function define<S extends OptionsSchema>(kind: Typed<S>): PartKind {
  const { symbol } = kind;
  return {
    ...kind,
    symbol: typeof symbol === "function" ? symbol : () => symbol,
    power: kind.power ?? (() => ({})),
  } as unknown as PartKind;
}
