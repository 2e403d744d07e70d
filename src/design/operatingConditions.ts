/**
 * Conditions that an installation must work under: one design, and what becomes of it in rain, in a tropospheric lift,
 * with phone masts on and off, with all receivers on and with one on alone. Each is a pure edit of options, and never of
 * the document: what comes out is evaluated and thrown away.
 */
import { kindOf } from "../parts/catalogue.ts";
import type { AnyOptions, PartKind } from "../parts/contract.ts";
import { describedOptions, optionsMeaning } from "../parts/meanings.ts";
import { changedBySurroundings, type Surroundings } from "../parts/surroundings.ts";
import { yearPercentOfWorstMonth } from "../rf/rain.ts";
import type { Design, Part, PartId } from "./design.ts";
import { checkOptions } from "./options.ts";
import { type Settings, settingsOf } from "./settings.ts";

export type OperatingCondition =
  | { readonly type: "as drawn" }
  | { readonly type: "all on" }
  /** All other receivers are unplugged. */
  | { readonly type: "one on"; readonly receiver: PartId }
  | Surroundings;

/** More receivers than these are not tried each alone: the first of the design are. */
export const MOST_ALONE = 40;

/**
 * The conditions that change anything in a design, as it is drawn first. Its settings say which of them count; what is
 * drawn already is no other condition.
 */
export function operatingConditions(design: Design): readonly OperatingCondition[] {
  const settings = settingsOf(design);
  const offered: readonly OperatingCondition[] = [
    ...surroundingsOf(settings),
    ...(settings.judgeReceivers ? receiverConditions(design) : []),
  ];
  return [AS_DRAWN, ...offered.filter((condition) => designUnder(design, condition) !== design)];
}

const AS_DRAWN: OperatingCondition = { type: "as drawn" };

function surroundingsOf(settings: Settings): readonly Surroundings[] {
  const { rainPercent, rainOf, liftRiseDb, liftFadeDb } = settings;
  const yearPercent = rainOf === "worst month" ? yearPercentOfWorstMonth(rainPercent) : rainPercent;
  return [
    ...(settings.judgeRain ? [{ type: "dry" } as const, { type: "rain", yearPercent } as const] : []),
    ...(settings.judgeLift ? [{ type: "lift", riseDb: liftRiseDb, fadeDb: liftFadeDb } as const] : []),
    ...(settings.judgeMasts ? [{ type: "masts on" } as const, { type: "masts off" } as const] : []),
  ];
}

/** Only receivers that feed and command the cable have a state; alone they are tried where there are several. */
function receiverConditions({ parts }: Design): readonly OperatingCondition[] {
  const switched = parts.filter((part) => stateKeyOf(part) !== undefined);
  const alone = switched.length > 1 ? switched.slice(0, MOST_ALONE) : [];
  return [{ type: "all on" }, ...alone.map(({ id }) => ({ type: "one on" as const, receiver: id }))];
}

/** The design under a condition; the very same where that changes nothing. Unchanged parts stay the same objects. */
export function designUnder(design: Design, condition: OperatingCondition): Design {
  if (condition.type === "as drawn") return design;
  const parts = design.parts.map((part) => partUnder(part, condition));
  const changed = parts.every((part, i) => part === design.parts[i]) ? design : { ...design, parts };
  return condition.type === "masts off" ? withoutMastField(changed) : changed;
}

/** A mast that the settings name is off too; a cordless phone stays. */
function withoutMastField(design: Design): Design {
  const settings = settingsOf(design);
  return settings.mastBand === "none" ? design : { ...design, settings: { ...settings, mastBand: "none" } };
}

function partUnder(part: Part, condition: Exclude<OperatingCondition, { type: "as drawn" }>): Part {
  const kind = kindOf(part.kind);
  if (!kind) return part;
  const changed = changedOptions(part, kind, condition);
  if (Object.keys(changed).length === 0) return part;
  const checked = checkOptions(kind, { ...part.options, ...changed });
  return checked.ok ? { ...part, options: checked.options } : part;
}

function changedOptions(
  part: Part,
  kind: PartKind,
  condition: Exclude<OperatingCondition, { type: "as drawn" }>,
): AnyOptions {
  switch (condition.type) {
    case "all on":
      return stateUnder(part, true);
    case "one on":
      return stateUnder(part, condition.receiver === part.id);
    default:
      return changedBySurroundings(kind, part.options, condition);
  }
}

/**
 * A receiver on or unplugged, or in standby where its loop-out feeds another one; nothing for what has no such state, or
 * is as wanted already.
 */
function stateUnder(part: Part, isOn: boolean): AnyOptions {
  const kind = kindOf(part.kind);
  const key = stateKeyOf(part);
  const meta = kind && key !== undefined ? describedOptions(kind).get(key) : undefined;
  const loop = kind && optionsMeaning(kind, "loop-out")[0];
  const leadsOn = loop !== undefined && part.options[loop] !== "none";
  const value = isOn ? meta?.soundValue : leadsOn ? "standby" : meta?.defectValues?.[0];
  return key === undefined || value === undefined || part.options[key] === value ? {} : { [key]: value };
}

function stateKeyOf(part: Part): string | undefined {
  const kind = kindOf(part.kind);
  return kind && optionsMeaning(kind, "receiver state")[0];
}
