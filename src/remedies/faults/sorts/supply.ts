/** Faults of supplies: a mains unit off, a receiver unplugged or tired, supply led on the wrong leg. */
import type { Part } from "../../../design/design.ts";
import { quoted } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { type FieldMeta, fieldMeta } from "../../../parts/fields.ts";
import { withOptions } from "../change.ts";
import type { Fault } from "../fault.ts";
import { makeFault, type Sort } from "./sort.ts";

/** Switches by which a part says that its mains unit runs. */
const MAINS = ["mainsOn", "switchedOn"] as const;
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
  return MAINS.filter((key) => part.options[key] === true).map((key) =>
    makeFault("mains-off", {
      key: part.id,
      title: `${quoted(part)} has no mains.`,
      parts: [part.id],
      apply: (d) => withOptions(d, part.id, { [key]: false }),
    }),
  );
}

function receiverOff(part: Part): Fault[] {
  if (part.options.state !== "on") return [];
  return [
    makeFault("receiver-off", {
      key: part.id,
      title: `${quoted(part)} is unplugged.`,
      parts: [part.id],
      apply: (d) => withOptions(d, part.id, { state: "unplugged" }),
    }),
  ];
}

function tired(part: Part): Fault[] {
  const volts = part.options.volts18;
  if (typeof volts !== "number" || volts <= TIRED_VOLTS) return [];
  return [
    makeFault("weak-supply", {
      key: part.id,
      title: `${quoted(part)} delivers only ${TIRED_VOLTS} V where it should deliver ${volts} V.`,
      parts: [part.id],
      apply: (d) => withOptions(d, part.id, { volts18: TIRED_VOLTS }),
    }),
  ];
}

/** Where a part lets the user choose the legs on which supply passes: every other choice. */
function wrongLeg(part: Part): Fault[] {
  if (part.options.dcPass === true)
    return [
      makeFault("wrong-leg", {
        key: `${part.id}=none`,
        title: `${quoted(part)} does not pass the supply.`,
        parts: [part.id],
        apply: (d) => withOptions(d, part.id, { dcPass: false }),
      }),
    ];
  const schema = kindOf(part.kind)?.options.shape.dc;
  const choices: FieldMeta["choices"] = schema && fieldMeta(schema)?.choices;
  return (choices ?? [])
    .filter(({ value }) => value !== part.options.dc)
    .map(({ value, label }) =>
      makeFault("wrong-leg", {
        key: `${part.id}=${value}`,
        title: `In ${quoted(part)} supply and tone pass ${label.toLowerCase()}.`,
        parts: [part.id],
        apply: (d) => withOptions(d, part.id, { dc: value }),
      }),
    );
}
