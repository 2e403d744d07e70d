/** Faults of supplies and settings: mains, receivers, motors, the wrong leg, gains, taps, user bands, modes. */
import { z } from "zod";
import type { Design, Part } from "../../../design/design.ts";
import { isSameValue } from "../../../design/options.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { describedOptions } from "../../../parts/meanings.ts";
import { movedOption, optionsOf, withOptions } from "../change.ts";
import { type Fault, type FaultFinder, makeFault } from "../fault.ts";

/** Below what a converter takes as horizontal, with any drop at all [V]. */
const TIRED_VOLTS = 15;
/** How many times its turning current a motor draws that cannot turn; typical of small gear motors, from memory. */
const JAMMED_TIMES = 2;

export const supplyFaults: FaultFinder = (design) =>
  design.parts.flatMap((part) => [
    ...mainsOff(part),
    ...receiverOff(part),
    ...tired(part),
    ...aerialSupplyOff(part),
    ...jammed(part),
    ...wrongLeg(part),
  ]);

function mainsOff(part: Part): Fault[] {
  return optionsOf(part, "mains")
    .filter((key) => part.options[key] === true)
    .map((key) =>
      makeFault("mains-off", {
        key: part.id,
        parts: [part.id],
        facts: {},
        apply: (d) => withOptions(d, part.id, { [key]: false }),
      }),
    );
}

function receiverOff(part: Part): Fault[] {
  return optionsOf(part, "receiver state")
    .filter((key) => part.options[key] === "on")
    .map((key) =>
      makeFault("receiver-off", {
        key: part.id,
        parts: [part.id],
        facts: {},
        apply: (d) => withOptions(d, part.id, { [key]: "unplugged" }),
      }),
    );
}

function tired(part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "horizontal volts");
  const volts = part.options[key];
  if (typeof volts !== "number" || volts <= TIRED_VOLTS) return [];
  return [
    makeFault("weak-supply", {
      key: part.id,
      parts: [part.id],
      facts: { volts: TIRED_VOLTS, plannedVolts: volts },
      apply: (d) => withOptions(d, part.id, { [key]: TIRED_VOLTS }),
    }),
  ];
}

/** After a reset to how it came, a set or an amplifier no longer feeds what sits at the aerial. */
function aerialSupplyOff(part: Part): Fault[] {
  return optionsOf(part, "aerial supply")
    .filter((key) => Number(part.options[key]) > 0)
    .map((key) =>
      makeFault("aerial-supply-off", {
        key: part.id,
        parts: [part.id],
        facts: { plannedVolts: Number(part.options[key]) },
        apply: (d) => withOptions(d, part.id, { [key]: "0" }),
      }),
    );
}

/** Rust or ice holds it: it goes on trying, and draws more than it would while turning. */
function jammed(part: Part): Fault[] {
  const [state = ""] = optionsOf(part, "motor state");
  const [key = ""] = optionsOf(part, "turning current");
  const turningMa = part.options[key];
  if (typeof turningMa !== "number" || part.options[state] !== "resting") return [];
  const more = movedOption(part, key, turningMa * (JAMMED_TIMES - 1));
  if (more === undefined) return [];
  return [
    makeFault("motor-jammed", {
      key: part.id,
      parts: [part.id],
      facts: { milliamps: more },
      apply: (d) => withOptions(d, part.id, { [state]: "turning", [key]: more }),
    }),
  ];
}

/** Where a part lets the user choose the legs on which supply passes: every other choice. */
function wrongLeg(part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "supply pass");
  const now = part.options[key];
  if (now === true)
    return [
      makeFault("wrong-leg", {
        key: `${part.id}=none`,
        parts: [part.id],
        facts: { option: key, choice: null },
        apply: (d) => withOptions(d, part.id, { [key]: false }),
      }),
    ];
  const kind = kindOf(part.kind);
  const choices = kind && describedOptions(kind).get(key)?.choices;
  return (choices ?? [])
    .filter(({ value }) => value !== now)
    .map(({ value }) =>
      makeFault("wrong-leg", {
        key: `${part.id}=${value}`,
        parts: [part.id],
        facts: { option: key, choice: value },
        apply: (d) => withOptions(d, part.id, { [key]: value }),
      }),
    );
}

/** How far off a gain is that somebody turned to try it out [dB]. */
const GAIN_OFF_DB = 25;
/** A tap from the wrong end of the shelf [dB]. */
const TAP_OFF_DB = 12;
/** Most settings of other receivers that one receiver is tried with. */
const MOST_RIVALS = 4;

const bandRows = z.array(z.object({ number: z.number(), centreMHz: z.number() }));

export const settingFaults: FaultFinder = (design) =>
  design.parts.flatMap((part) => [
    ...gains(part),
    ...taps(part),
    ...wrongMode(part),
    ...wrongUserBands(design, part),
  ]);

function gains(part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "gain");
  return ([1, -1] as const).flatMap((sign) => {
    const gainDb = movedOption(part, key, sign * GAIN_OFF_DB);
    if (gainDb === undefined) return [];
    const type = sign > 0 ? "gain-high" : "gain-low";
    return makeFault(type, {
      key: part.id,
      parts: [part.id],
      facts: { gainDb },
      apply: (d) => withOptions(d, part.id, { [key]: gainDb }),
    });
  });
}

function taps(part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "tap loss");
  return [TAP_OFF_DB, -TAP_OFF_DB].flatMap((by) => {
    const tapLossDb = movedOption(part, key, by);
    if (tapLossDb === undefined) return [];
    return makeFault("wrong-tap", {
      key: `${part.id}=${tapLossDb}`,
      parts: [part.id],
      facts: { tapLossDb },
      apply: (d) => withOptions(d, part.id, { [key]: tapLossDb }),
    });
  });
}

function wrongMode(part: Part): Fault[] {
  const mode = modeKey(part);
  if (mode === undefined) return [];
  return [
    makeFault("wrong-mode", {
      key: part.id,
      parts: [part.id],
      facts: {},
      apply: (d) => withOptions(d, part.id, { [mode]: "universal" }),
    }),
  ];
}

/** The option that sets a receiver to single-cable mode, where it is set so. */
function modeKey(part: Part): string | undefined {
  return optionsOf(part, "receiver mode").find((key) => part.options[key] === "single-cable");
}

/** The user bands of another receiver, or a centre that the converter does not have. */
function wrongUserBands(design: Design, part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "receiver user bands");
  if (modeKey(part) === undefined) return [];
  const own = bandRows.safeParse(part.options[key]);
  if (!own.success || own.data.length === 0) return [];
  const rivals = design.parts
    .filter((other) => other.id !== part.id && modeKey(other) !== undefined)
    .map((other) => ({ other, userBands: other.options[optionsOf(other, "receiver user bands")[0] ?? ""] }))
    .filter(({ userBands }) => !isSameValue(userBands, part.options[key]))
    .slice(0, MOST_RIVALS);
  const [first, ...rest] = own.data;
  const shifted = [{ number: first?.number ?? 1, centreMHz: (first?.centreMHz ?? 1210) + 74 }, ...rest];
  return [
    ...rivals.map(({ other, userBands }) =>
      makeFault("wrong-user-band", {
        key: `${part.id}=${other.id}`,
        parts: [part.id, other.id],
        facts: { as: "another receiver", other: other.id },
        apply: (d) => withOptions(d, part.id, { [key]: userBands }),
      }),
    ),
    makeFault("wrong-user-band", {
      key: `${part.id}=centre`,
      parts: [part.id],
      facts: { as: "another centre", userBand: first?.number ?? 1 },
      apply: (d) => withOptions(d, part.id, { [key]: shifted }),
    }),
  ];
}
