/** Faults of plugs and joints: one of each sort for every wire of cable. */
import { wireId } from "../../../design/design.ts";
import { inWire, withoutWire } from "../change.ts";
import { betweenEnds, coaxWires, makeFault, type Sort } from "./sort.ts";

/**
 * A joint that has drawn water for some winters: some 30 dB at 862 MHz and tens of ohms.
 * Orders of magnitude, from memory.
 */
const CORRODED = { fault: "corroded", lossDb: 30, ohms: 40 } as const;

export const wireFaults: Sort = (design) =>
  coaxWires(design).flatMap((wire) => {
    const key = wireId(wire);
    const where = betweenEnds(design, wire);
    const common = { key, parts: [wire.to[0], wire.from[0]] as const };
    return [
      makeFault("plug-off", {
        ...common,
        title: `The plug is off ${where}.`,
        apply: (d) => withoutWire(d, key),
      }),
      makeFault("open-joint", {
        ...common,
        title: `The inner conductor is broken ${where}.`,
        apply: (d) => inWire(d, key, "bad-joint", { fault: "open" }),
      }),
      makeFault("short-joint", {
        ...common,
        title: `The inner conductor touches the screen ${where}.`,
        apply: (d) => inWire(d, key, "bad-joint", { fault: "shorted" }),
      }),
      makeFault("corroded-joint", {
        ...common,
        title: `The joint is corroded ${where}.`,
        apply: (d) => inWire(d, key, "bad-joint", CORRODED),
      }),
      makeFault("supply-blocked", {
        ...common,
        title: `An isolator sits ${where} and blocks the supply.`,
        apply: (d) => inWire(d, key, "dc-block", {}),
      }),
    ];
  });
