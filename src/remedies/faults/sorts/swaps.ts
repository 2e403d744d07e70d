/** Two cables on each other's ports. */
import { type Part, type Wire, wireId } from "../../../design/design.ts";
import { portOf, portsOf, quoted } from "../../../design/lookup.ts";
import type { PortRole } from "../../../parts/contract.ts";
import { exchanged } from "../change.ts";
import type { Fault } from "../fault.ts";
import { makeFault, type Sort } from "./sort.ts";

/** Beyond so many inputs only neighbours are swapped: a 17-input switch has 136 pairs. */
const MOST_FOR_ALL_PAIRS = 6;

/** Outputs that carry something of their own: on others swapped leads are no fault of the part. */
const OWN: readonly PortRole[] = ["plane", "band", "socket"];

export const swapFaults: Sort = (design) =>
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
