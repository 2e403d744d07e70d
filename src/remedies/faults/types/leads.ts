/** Faults of leads: plugs and joints, two cables on each other's ports, and what is wrong along a cable. */
import { type Design, type Part, type Wire, wireId } from "../../../design/design.ts";
import { partById, portOf, portsOf } from "../../../design/lookup.ts";
import { GRADES, type Grade } from "../../../parts/cable.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import type { PortRole } from "../../../parts/contract.ts";
import { metresOf } from "../../../parts/meanings.ts";
import { inWire, withDeadCable, withOptions, withoutWire, withSwappedEnds } from "../change.ts";
import { type Fault, type FaultFinder, makeFault } from "../fault.ts";

/**
 * A joint that has drawn water for some winters: some 30 dB at 862 MHz and tens of ohms.
 * Orders of magnitude, from memory.
 */
const CORRODED = { fault: "corroded", lossDb: 30, ohms: 40 } as const;

/** A plug full of water: supply still passes, the top of the band is gone. Order of magnitude, from memory. */
const WET = { fault: "wet", lossDb: 15 } as const;

export const wireFaults: FaultFinder = (design) =>
  coaxWires(design).flatMap((wire) => {
    const key = wireId(wire);
    const common = { key, parts: [wire.to[0], wire.from[0]] as const, facts: { wire } };
    return [
      makeFault("plug-off", {
        ...common,
        apply: (d) => withoutWire(d, key),
      }),
      makeFault("open-joint", {
        ...common,
        apply: (d) => inWire(d, key, "bad-joint", { fault: "open" }),
      }),
      makeFault("short-joint", {
        ...common,
        apply: (d) => inWire(d, key, "bad-joint", { fault: "shorted" }),
      }),
      makeFault("corroded-joint", {
        ...common,
        apply: (d) => inWire(d, key, "bad-joint", CORRODED),
      }),
      makeFault("screen-off", {
        ...common,
        apply: (d) => inWire(d, key, "bad-joint", { fault: "screen" }),
      }),
      makeFault("wet-joint", {
        ...common,
        apply: (d) => inWire(d, key, "bad-joint", WET),
      }),
      makeFault("supply-blocked", {
        ...common,
        apply: (d) => inWire(d, key, "dc-block", {}),
      }),
    ];
  });

/**
 * A tail of an old lead that was left in the clamp of a plate [m]: a quarter of a wave at 615 MHz, with a velocity factor
 * of 0.82 (299.79 · 0.82 / (4 · 615)).
 */
const TAIL_M = 0.1;

/** Where two leads fit under one clamp: at plates. */
export const deadCableFaults: FaultFinder = (design) =>
  coaxWires(design)
    .filter((wire) => kindOf(partById(design, wire.to[0])?.kind ?? "")?.delivery)
    .map((wire) =>
      makeFault("dead-cable", {
        key: wireId(wire),
        parts: [wire.to[0], wire.from[0]],
        facts: { wire, lengthM: TAIL_M },
        apply: (d) => withDeadCable(d, wireId(wire), TAIL_M),
      }),
    );

/** Beyond so many inputs only neighbours are swapped: a 17-input switch has 136 pairs. */
const MOST_FOR_ALL_PAIRS = 6;

/** Outputs that carry something of their own: on others swapped leads are no fault of the part. */
const OWN: readonly PortRole[] = ["plane", "band", "socket"];

export const swapFaults: FaultFinder = (design) =>
  design.parts.flatMap((part) => {
    const at = (side: "from" | "to") =>
      design.wires.filter(
        (wire) => wire[side][0] === part.id && portOf(part, wire[side][1])?.medium === "coax",
      );
    // The lines of a cascade bear a plane each; the one trunk of a riser is not taken for a lead.
    const trunks = portsOf(part).filter((port) => port.role === "trunk").length;
    const own: readonly PortRole[] = trunks > 1 ? [...OWN, "trunk"] : OWN;
    const outputs = at("from").filter((wire) => {
      const role = portOf(part, wire.from[1])?.role;
      return role !== undefined && own.includes(role);
    });
    return [...swaps(part, at("to"), "to"), ...swaps(part, outputs, "from")];
  });

function swaps(part: Part, wires: readonly Wire[], end: "from" | "to"): Fault[] {
  const order = portsOf(part).map((port) => port.id);
  const sorted = [...wires].sort((a, b) => order.indexOf(a[end][1]) - order.indexOf(b[end][1]));
  return sorted.flatMap((a, i) => {
    const partners = sorted.length > MOST_FOR_ALL_PAIRS ? sorted.slice(i + 1, i + 2) : sorted.slice(i + 1);
    return partners.map((b) => {
      return makeFault("swapped", {
        key: `${part.id}.${a[end][1]}+${b[end][1]}`,
        parts: [part.id],
        facts: { side: end === "to" ? "in" : "out", ports: [a[end][1], b[end][1]] },
        apply: (d) => withSwappedEnds(d, wireId(a), wireId(b), end),
      });
    });
  });
}

/**
 * What a wet stretch adds at 2150 MHz, whatever the length of the rest [dB]; in proportion to the frequency,
 * as loss in a dielectric is. Order of magnitude, from memory.
 */
const WET_DB_AT_2150 = 60;
const MOST_K2 = 0.1;

export const cableFaults: FaultFinder = (design) =>
  design.parts
    .filter((part) => kindOf(part.kind)?.trade.job === "cable")
    .flatMap((part) => [wet(part), ...steel(part)]);

function wet(part: Part): Fault {
  const kind = kindOf(part.kind);
  const metres = (kind && metresOf(kind, part.options)) ?? 1;
  const grade = gradeOf(part);
  const dry = grade ? { k1: grade.k1, k2: grade.k2, loopOhmPerKm: grade.loopOhmPerKm } : {};
  const dryK2 = grade ? grade.k2 : typeof part.options.k2 === "number" ? part.options.k2 : 0;
  const k2 = Math.min(MOST_K2, dryK2 + (WET_DB_AT_2150 * 100) / metres / 2150);
  return makeFault("wet-cable", {
    key: part.id,
    parts: [part.id],
    facts: {},
    apply: (d) => withOptions(d, part.id, { grade: "own", ...dry, k2 }),
  });
}

function steel(part: Part): Fault[] {
  if (gradeOf(part)?.conductor === "clad steel") return [];
  return [
    makeFault("steel-cable", {
      key: part.id,
      parts: [part.id],
      facts: {},
      apply: (d) => withOptions(d, part.id, { grade: "clad-0.8" }),
    }),
  ];
}

/** Undefined for a grade of the user's own. */
function gradeOf(part: Part): Grade | undefined {
  return Object.entries(GRADES).find(([key]) => key === part.options.grade)?.[1];
}

/** Wires of cable: all but the beam of a dish. */
function coaxWires(design: Design): readonly Wire[] {
  return design.wires.filter((wire) => {
    const part = partById(design, wire.from[0]);
    return part && portOf(part, wire.from[1])?.medium === "coax";
  });
}
