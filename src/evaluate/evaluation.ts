/** What an evaluation yields. Unchanged things are the same objects as in the evaluation before. */
import type { Design, Part, PartId, Wire } from "../design/design.ts";
import type {
  AnyOptions,
  DeadEnd,
  PartKind,
  Port,
  PowerTreatment,
  SignalTreatment,
} from "../parts/contract.ts";
import type { DeratingRule } from "../rf/intermod.ts";
import type { Spectrum } from "../signal/band.ts";
import type { Clash } from "../signal/combine.ts";
import type { Demand, Feed, SwitchState } from "../signal/control.ts";

/** Two signals that share frequencies where they are first brought together. */
export type Meeting = Clash & {
  /** Output port (or inner node) at which they meet; victim and other are as they are there. */
  readonly port: string;
};

/** What a part left out of the alternatives that switches above it make, because there are too many. */
export type Omitted = {
  /** Combinations of switch positions left out; absent where none was. */
  readonly alternatives?: number;
  /** Alternatives behind more than so many switches in a row were left out; absent where none were. */
  readonly behindSwitches?: number;
  /** Supplies beyond the strongest that were left out; absent where none were. */
  readonly supplies?: number;
  /** Requests and switch positions on its supply network that were taken as if all asked alike; absent where none were. */
  readonly supplyStates?: number;
};

/** How hard an active path is driven, where it is driven hardest. */
export type Drive = {
  readonly from: string;
  readonly port: string;
  /** Derating that was applied, for so many equal carriers as what is there amounts to. */
  readonly rule: DeratingRule;
  readonly carriers: number;
  /** Level of each of these at the output, and total power [dBµV]. */
  readonly levelDbuv: number;
  readonly totalDbuv: number;
  /** Rated output less derating [dBµV]. */
  readonly allowedDbuv: number;
  /** Carrier to third-order products at this level [dB]. */
  readonly ratioDb: number;
};

/** All that is known of one part. The same object while nothing about it changed. */
export type PartRecord = {
  readonly part: Part;
  readonly kind: PartKind;
  readonly options: AnyOptions;
  readonly ports: readonly Port[];
  /** What the kind declares for these options, and for this state of power; nothing on a loop. */
  readonly power: PowerTreatment;
  readonly treatment: SignalTreatment;
  /** By leg of a part that simply joins its lines: cable there that ends open or shorted. */
  readonly deadEnds: Readonly<Record<string, DeadEnd>>;
  /** Lies on a loop: not computed. */
  readonly looped: boolean;
  /** Self-powered, or supplied with enough voltage; always true for a part without load. */
  readonly powered: boolean;
  /** Whatever is joined to a port: [part, port] of the other end. */
  readonly joined: Readonly<Record<string, readonly [PartId, string]>>;
  readonly inputs: Readonly<Record<string, Spectrum>>;
  readonly outputs: Readonly<Record<string, Spectrum>>;
  /** Supplies and commands arriving at output ports from downstream. */
  readonly feeds: Readonly<Record<string, Feed>>;
  /** Supplies this part hands on upstream, by input port. */
  readonly offers: Readonly<Record<string, Feed>>;
  /** What flows up through each port, and who draws it; of a supply that shut down what it would have had to give. */
  readonly demands: Readonly<Record<string, Demand>>;
  readonly switches: Readonly<Record<string, SwitchState>>;
  /** What it draws itself now, from whoever feeds it [mA]. */
  readonly drawsMa: number;
  /** Ports of own supplies that shut down, because they are shorted or asked for too much. */
  readonly shutDown: readonly string[];
  /** Supplies that shut down because this part joins inner conductor and screen. */
  readonly shorts: readonly PartId[];
  readonly meetings: readonly Meeting[];
  /** Active paths and how hard they are driven. */
  readonly drives: readonly Drive[];
  /** Present where not everything that switches and supplies make possible is worked out. */
  readonly omitted?: Omitted;
  /** What its signals took to work out: a count of carriers handed on and bands held against each other. */
  readonly work: number;
  /** Source parts (dishes, aerials) upstream by any way, sorted; the same array while unchanged. */
  readonly sources: readonly PartId[];
};

export type Evaluation = {
  readonly design: Design;
  /** In the order of `design.parts`. */
  readonly records: readonly PartRecord[];
  /** Record of a part; undefined for an unknown id. */
  readonly record: (id: PartId) => PartRecord | undefined;
  /** What is on a wire; silence for a wire of an unknown part. */
  readonly spectrum: (wire: Wire) => Spectrum;
  /** How many parts were worked out anew in the signal pass, for benchmarks and tests. */
  readonly recomputed: number;
};
