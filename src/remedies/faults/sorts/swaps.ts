/** Two cables on each other's ports. */
import { type Part, type Wire, wireId } from "../../../design/design.ts";
import { portOf, portsOf, quoted } from "../../../design/lookup.ts";
import { exchanged } from "../change.ts";
import type { Fault } from "../fault.ts";
import { makeFault, type Sort } from "./sort.ts";

/** Beyond so many inputs only neighbours are swapped: a 17-input switch has 136 pairs. */
const MOST_FOR_ALL_PAIRS = 6;

/** Outputs that are all alike ("out", "out3", "tap2"): swapping their leads is no fault of the part. */
const ALIKE = /^(out|tap)\d*$/;

export const swapFaults: Sort = (design) =>
  design.parts.flatMap((part) => {
    const at = (side: "from" | "to") =>
      design.wires.filter(
        (wire) => wire[side][0] === part.id && portOf(part, wire[side][1])?.medium === "coax",
      );
    const outputs = at("from").filter((wire) => !ALIKE.test(wire.from[1]));
    return [...swaps(part, at("to"), "to"), ...swaps(part, outputs, "from")];
  });

function swaps(part: Part, wires: readonly Wire[], end: "from" | "to"): Fault[] {
  const order = portsOf(part).map((port) => port.id);
  const sorted = [...wires].sort((a, b) => order.indexOf(a[end][1]) - order.indexOf(b[end][1]));
  return sorted.flatMap((a, i) => {
    const partners = sorted.length > MOST_FOR_ALL_PAIRS ? sorted.slice(i + 1, i + 2) : sorted.slice(i + 1);
    return partners.map((b) => {
      const name = (wire: Wire) => portOf(part, wire[end][1])?.label ?? wire[end][1];
      const side = end === "to" ? "inputs" : "outputs";
      return makeFault("swapped", {
        key: `${part.id}.${a[end][1]}+${b[end][1]}`,
        title: `The cables on ${side} ${name(a)} and ${name(b)} of ${quoted(part)} are swapped.`,
        parts: [part.id],
        apply: (d) => exchanged(d, wireId(a), wireId(b), end),
      });
    });
  });
}
