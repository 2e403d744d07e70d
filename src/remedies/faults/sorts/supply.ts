/** Faults of supplies: a mains unit off, a receiver unplugged or tired, supply led on the wrong leg. */
import type { Part } from "../../../design/design.ts";
import { quoted } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { describedOptions } from "../../../parts/meanings.ts";
import { withOptions } from "../change.ts";
import type { Fault } from "../fault.ts";
import { makeFault, optionsOf, type Sort } from "./sort.ts";

/** Below what a converter takes as horizontal, with any drop at all [V]. */
const TIRED_VOLTS = 15;

export const supplyFaults: Sort = (design) =>
  design.parts.flatMap((part) => [
    ...mainsOff(part),
    ...receiverOff(part),
    ...tired(part),
    ...wrongLeg(part),
  ]);

function mainsOff(part: Part): Fault[] {
  return optionsOf(part, "mains")
    .filter((key) => part.options[key] === true)
    .map((key) =>
      makeFault("mains-off", {
        key: part.id,
        title: `${quoted(part)} has no mains.`,
        parts: [part.id],
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
        title: `${quoted(part)} is unplugged.`,
        parts: [part.id],
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
      title: `${quoted(part)} delivers only ${TIRED_VOLTS} V where it should deliver ${volts} V.`,
      parts: [part.id],
      apply: (d) => withOptions(d, part.id, { [key]: TIRED_VOLTS }),
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
        title: `${quoted(part)} does not pass the supply.`,
        parts: [part.id],
        apply: (d) => withOptions(d, part.id, { [key]: false }),
      }),
    ];
  const kind = kindOf(part.kind);
  const choices = kind && describedOptions(kind).get(key)?.choices;
  return (choices ?? [])
    .filter(({ value }) => value !== now)
    .map(({ value, label }) =>
      makeFault("wrong-leg", {
        key: `${part.id}=${value}`,
        title: `In ${quoted(part)} supply and tone pass ${label.toLowerCase()}.`,
        parts: [part.id],
        apply: (d) => withOptions(d, part.id, { [key]: value }),
      }),
    );
}
