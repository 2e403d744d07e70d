/** What a satellite receiver puts onto its cable: supply and request, and when it does so. */
import type { Polarisation, SkyHalf } from "../signal/carrier.ts";
import type { Request } from "../signal/control.ts";
import { waveOf } from "../signal/leak.ts";
import type { Supply, WhatComes } from "./contract.ts";
import { choice, number, toggle } from "./fields.ts";
import { MEMORY } from "./passive.ts";
import { upTo } from "./quadrants.ts";

/** Option fields of every satellite receiver. */
export const SUPPLY_FIELDS = {
  state: choice({
    label: "The receiver is",
    choices: [
      { value: "on", label: "on" },
      { value: "standby", label: "in standby" },
      { value: "unplugged", label: "unplugged" },
    ],
    default: "on",
    means: "receiver state",
    soundValue: "on",
    defectValues: ["unplugged"],
  }),
  standbySupply: toggle({
    label: "Feeds the cable in standby",
    help: "Many receivers let the cable go dead, some keep it fed.",
    default: false,
    means: "standby supply",
    source: MEMORY,
    advanced: true,
  }),
  volts13: number({
    label: "Voltage for vertical",
    circular: "Voltage for right-hand",
    unit: "V",
    min: 11,
    max: 15,
    step: 0.1,
    default: 13,
    onSite: "factory",
    source: "12.5–14.0 V, a receiver’s service manual of 1998",
    advanced: true,
  }),
  volts18: number({
    label: "Voltage for horizontal",
    circular: "Voltage for left-hand",
    unit: "V",
    min: 15,
    max: 21,
    step: 0.1,
    default: 18,
    onSite: "factory",
    source: "17.0–19.0 V, a receiver’s service manual of 1998",
    advanced: true,
    means: "horizontal volts",
  }),
  limitMa: number({
    label: "Supply limit of an input",
    unit: "mA",
    min: 50,
    max: 1000,
    default: 400,
    onSite: "factory",
    source: "350–500 mA, typical, from memory",
    advanced: true,
    means: "supply limit",
  }),
};

/** Of a receiver with several inputs: whether they share its supply. */
export const SHARED_LIMIT = toggle({
  label: "Limit for all inputs together",
  help: "Many recorders have one supply for all their inputs; otherwise each input has the whole limit.",
  default: false,
  onSite: "factory",
  source: "0.5 A a socket and 1 A in total, a multiswitch’s manual; of receivers from memory",
  means: "common supply limit",
  advanced: true,
});

/** What supplies of one receiver share, where they do. */
export function sharing(o: { readonly sharedLimit: boolean }): Pick<Supply, "shares"> {
  return o.sharedLimit ? { shares: "inputs" } : {};
}

export type SupplyOptions = {
  readonly state: "on" | "standby" | "unplugged";
  readonly standbySupply: boolean;
  readonly volts13: number;
  readonly volts18: number;
  readonly limitMa: number;
};

export function feedsCable(o: SupplyOptions): boolean {
  return o.state === "on" || (o.state === "standby" && o.standbySupply);
}

/** 13 V stands for right-hand circular, 18 V for left-hand: the way circular LNBs are labelled (common practice, no source). */
export function polarisationField(label: string, value: Polarisation = "V") {
  return choice({
    label,
    choices: [
      { value: "V", label: "Vertical (13 V)", circular: "Right-hand (13 V)" },
      { value: "H", label: "Horizontal (18 V)", circular: "Left-hand (18 V)" },
    ],
    default: value,
    means: "asked polarisation",
  });
}

export function halfField(label: string, value: SkyHalf = "low") {
  return choice({
    label,
    choices: [
      { value: "low", label: "Low (no tone)" },
      { value: "high", label: "High (22 kHz)" },
    ],
    default: value,
    means: "asked half",
  });
}

export function positionField(label: string) {
  return choice({
    label,
    help: "For a position switch; none where one satellite is received.",
    choices: [
      { value: "none", label: "None" },
      { value: "1", label: "1" },
      { value: "2", label: "2" },
      { value: "3", label: "3" },
      { value: "4", label: "4" },
    ],
    default: "none",
    means: "asked position",
  });
}

/** For switches that listen to other commands than the usual one of a position switch. */
export function uncommittedField(label: string) {
  return choice({
    label,
    help: "For a switch with up to 16 inputs (uncommitted command), alone or in a row with a position switch.",
    choices: [
      { value: "none", label: "None" },
      ...upTo(16).map((n) => ({ value: String(n), label: String(n) })),
    ],
    default: "none",
    means: "asked uncommitted input",
    advanced: true,
  });
}

export function burstField(label: string) {
  return choice({
    label,
    help: "For a switch between satellite A and B that knows no position command.",
    choices: [
      { value: "none", label: "None" },
      { value: "A", label: "A" },
      { value: "B", label: "B" },
    ],
    default: "none",
    means: "asked burst",
    advanced: true,
  });
}

/** What a receiver for switched feeds gives; some boxes, and some menus, know one voltage only. */
export const GIVES_FIELD = choice({
  label: "Gives the cable",
  help: "A fixed voltage without tone leaves an LNB in one quadrant.",
  choices: [
    { value: "commands", label: "13/18 V and 22 kHz" },
    { value: "13", label: "13 V always" },
    { value: "18", label: "18 V always" },
    { value: "none", label: "nothing" },
  ],
  default: "commands",
  means: "receiver supply",
  soundValue: "commands",
  advanced: true,
});

/** Supplies of an input that gives what its menu says. */
export function suppliesOf(
  o: SupplyOptions & { readonly gives: "commands" | "13" | "18" | "none" },
  port: string,
  request: Request,
): readonly Supply[] {
  if (!feedsCable(o) || o.gives === "none") return [];
  if (o.gives === "commands") return [commandSupply(o, port, request)];
  const volts = o.gives === "13" ? o.volts13 : o.volts18;
  return [{ port, kind: "plain", volts13: volts, volts18: volts, limitMa: o.limitMa }];
}

export function motorField(label: string) {
  return toggle({
    label,
    help: "Tells a dish motor on the cable where to turn (DiSEqC).",
    default: false,
    means: "motor commands",
    advanced: true,
  });
}

export type ReceiverWish = {
  readonly polarisation: Polarisation;
  readonly half: SkyHalf;
  readonly position: "none" | "1" | "2" | "3" | "4";
  /** "none", or "1" to "16". */
  readonly uncommitted: string;
  readonly burst: "none" | "A" | "B";
  readonly motor: boolean;
};

export function requestOf(asked: ReceiverWish): Request {
  const { polarisation, half, position, uncommitted, burst, motor } = asked;
  return {
    polarisation,
    half,
    ...(position === "none" ? {} : { position: Number(position) }),
    ...(uncommitted === "none" ? {} : { uncommitted: Number(uncommitted) }),
    ...(burst === "none" ? {} : { burst }),
    ...(motor ? { motor } : {}),
  };
}

/** A supply that may switch what lies before it. */
export function commandSupply(o: SupplyOptions, port: string, request: Request): Supply {
  const { volts13, volts18, limitMa } = o;
  return { port, kind: "commands", volts13, volts18, limitMa, request };
}

/** "V low", "H high, position 2", "V low, input 12"; of circular waves "R low". */
export function wishWords(asked: ReceiverWish, comes?: WhatComes): string {
  const { polarisation, half, position, uncommitted, burst } = asked;
  return [
    `${waveOf({ polarisation, ...(comes?.circular ? { circular: true } : {}) })} ${half}`,
    ...(position === "none" ? [] : [`position ${position}`]),
    ...(uncommitted === "none" ? [] : [`input ${uncommitted}`]),
    ...(burst === "none" ? [] : [`burst ${burst}`]),
  ].join(", ");
}

/** Caption of a receiver that isn't on. */
export const STATE_WORDS = { standby: "standby", unplugged: "unplugged" } as const;
