/** Faults on the roof: an aerial or a dish out of line, a converter that is dead. */
import { type Part, type Wire, wireId } from "../../../design/design.ts";
import { partById, portOf, quoted } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { moved, withOptions, withoutWire } from "../change.ts";
import type { Fault } from "../fault.ts";
import { makeFault, optionsOf, type Sort } from "./sort.ts";

/** An aerial turned off its transmitter: beside and behind it hears some 25 to 35 dB less. From memory. */
const AERIAL_OFF_DB = 34;
/** A dish moved by about its beamwidth. From the parabolic rule 12·(angle/beamwidth)² dB. */
const DISH_OFF_DB = 12;

export const roofFaults: Sort = (design) => [
  ...design.parts.flatMap((part) => [...aerialOff(part), ...dishOff(part)]),
  ...design.wires.flatMap((wire) => {
    const dish = partById(design, wire.from[0]);
    const converter = partById(design, wire.to[0]);
    const isBeam = dish && portOf(dish, wire.from[1])?.medium === "sky";
    return isBeam && converter ? [dead(wire, converter)] : [];
  }),
];

function aerialOff(part: Part): Fault[] {
  if (kindOf(part.kind)?.trade.job !== "aerial") return [];
  const levels = Object.fromEntries(
    optionsOf(part, "source level").map((key) => [key, moved(part, key, -AERIAL_OFF_DB)]),
  );
  return [
    makeFault("aerial-off", {
      key: part.id,
      title: `${quoted(part)} points elsewhere.`,
      parts: [part.id],
      apply: (d) => withOptions(d, part.id, levels),
    }),
  ];
}

function dishOff(part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "pointing loss");
  const pointingLossDb = moved(part, key, DISH_OFF_DB);
  if (pointingLossDb === undefined) return [];
  return [
    makeFault("dish-off", {
      key: part.id,
      title: `${quoted(part)} is off its satellite by a beamwidth.`,
      parts: [part.id],
      apply: (d) => withOptions(d, part.id, { [key]: pointingLossDb }),
    }),
  ];
}

/** It still draws its current and heeds commands; it only hears nothing. */
function dead(beam: Wire, converter: Part): Fault {
  return makeFault("converter-dead", {
    key: converter.id,
    title: `${quoted(converter)} is dead: it draws its current, and nothing comes out.`,
    parts: [converter.id],
    apply: (d) => withoutWire(d, wireId(beam)),
  });
}
