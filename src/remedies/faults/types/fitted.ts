/** Faults of parts themselves: out of line or dead on the roof, of the wrong kind, or never put in. */
import { type Part, type Wire, wireId } from "../../../design/design.ts";
import { removeParts } from "../../../design/edits/remove.ts";
import { partById, portOf, portsOf } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { describedOptions, doesCount } from "../../../parts/meanings.ts";
import { movedOption, optionsOf, withOptions, withOtherKind, withoutWire } from "../change.ts";
import { type Fault, type FaultFinder, type FaultType, makeFault } from "../fault.ts";

/** An aerial turned off its transmitter: beside and behind it hears some 25 to 35 dB less. From memory. */
const AERIAL_OFF_DB = 34;
/** A dish moved by about its beamwidth. From the parabolic rule 12·(angle/beamwidth)² dB. */
const DISH_OFF_DB = 12;
/** An LNB that hangs aslant; a choice of this tool: half way to the other polarisation nothing is left. */
const LNB_TURNED_DEG = 40;

export const roofFaults: FaultFinder = (design) => [
  ...design.parts.flatMap((part) => [...aerialOff(part), ...dishOff(part), ...lnbTurned(part)]),
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
    optionsOf(part, "source level").map((key) => [key, movedOption(part, key, -AERIAL_OFF_DB)]),
  );
  return [
    makeFault("aerial-off", {
      key: part.id,
      parts: [part.id],
      facts: {},
      apply: (d) => withOptions(d, part.id, levels),
    }),
  ];
}

function dishOff(part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "pointing loss");
  const pointingLossDb = movedOption(part, key, DISH_OFF_DB);
  if (pointingLossDb === undefined) return [];
  return [
    makeFault("dish-off", {
      key: part.id,
      parts: [part.id],
      facts: {},
      apply: (d) => withOptions(d, part.id, { [key]: pointingLossDb }),
    }),
  ];
}

/** Turned in its clamp by a knock, or never set: enough for the other polarisation to drown its own. */
function lnbTurned(part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "skew error");
  const kind = kindOf(part.kind);
  const meta = kind && describedOptions(kind).get(key);
  const turnedDeg = movedOption(part, key, LNB_TURNED_DEG);
  if (turnedDeg === undefined || !meta || !doesCount(meta, part.options)) return [];
  return [
    makeFault("lnb-turned", {
      key: part.id,
      parts: [part.id],
      facts: { turnedDeg },
      apply: (d) => withOptions(d, part.id, { [key]: turnedDeg }),
    }),
  ];
}

/** It still draws its current and heeds commands; it only hears nothing. */
function dead(beam: Wire, converter: Part): Fault {
  return makeFault("converter-dead", {
    key: converter.id,
    parts: [converter.id],
    facts: {},
    apply: (d) => withoutWire(d, wireId(beam)),
  });
}

/** A switch whose inputs run into each other, after water or a lightning stroke. A choice of this tool: most of a carrier. */
const LEAKING_DB = 3;

export const switchFaults: FaultFinder = (design) => design.parts.flatMap(leaking);

function leaking(part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "crosstalk");
  const crosstalkDb = movedOption(part, key, LEAKING_DB - Number(part.options[key]));
  if (crosstalkDb === undefined) return [];
  return [
    makeFault("switch-leaks", {
      key: part.id,
      parts: [part.id],
      facts: { crosstalkDb },
      apply: (d) => withOptions(d, part.id, { [key]: crosstalkDb }),
    }),
  ];
}

export const unfittedFaults: FaultFinder = (design) => design.parts.flatMap(missing);

function missing(part: Part): Fault[] {
  const job = kindOf(part.kind)?.trade.job;
  const type = job === "filter" ? "filter-missing" : job === "pad" ? "pad-missing" : null;
  if (type)
    return [
      makeFault(type, {
        key: part.id,
        parts: [part.id],
        facts: {},
        // In its place, and not taken away: its connectors are still there to measure at.
        apply: (d) => withOtherKind(d, part.id, "attenuator", { lossDb: 0, dcPass: true }),
      }),
    ];
  if (job !== "load") return [];
  return [
    makeFault("load-missing", {
      key: part.id,
      parts: [part.id],
      facts: {},
      apply: (d) => {
        const edit = removeParts(d, new Set([part.id]), new Set());
        return edit.ok ? edit.design : d;
      },
    }),
  ];
}

export const wrongKindFaults: FaultFinder = (design) => design.parts.flatMap(mistaken);

function mistaken(part: Part): Fault[] {
  const kind = kindOf(part.kind);
  const type: FaultType = kind?.delivery ? "wrong-plate" : "wrong-converter";
  // The line of a riser does not go on from a socket: where nothing takes it, it hangs loose.
  const leftOver = portsOf(part).some((p) => p.role === "trunk") ? "falls away" : "in order";
  return (kind?.trade.mistakenFor ?? []).map(({ kind: key, options }) =>
    makeFault(type, {
      key: `${part.id}=${key}`,
      parts: [part.id],
      facts: { kind: key },
      apply: (d) => withOtherKind(d, part.id, key, options, leftOver),
    }),
  );
}
