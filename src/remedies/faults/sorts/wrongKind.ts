/** A part of another kind in the place of the right one: converters and plates. */
import type { Part } from "../../../design/design.ts";
import { portsOf, quoted } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { asKind } from "../change.ts";
import type { Fault, FaultType } from "../fault.ts";
import { makeFault, type Sort } from "./sort.ts";

export const wrongKindFaults: Sort = (design) => design.parts.flatMap(mistaken);

function mistaken(part: Part): Fault[] {
  const kind = kindOf(part.kind);
  const type: FaultType = kind?.delivery ? "wrong-plate" : "wrong-converter";
  // The line of a riser does not go on from a socket: where nothing takes it, it hangs loose.
  const leftOver = portsOf(part).some((p) => p.role === "trunk") ? "falls away" : "in order";
  return (kind?.trade.mistakenFor ?? []).map(({ kind: key, options }) =>
    makeFault(type, {
      key: `${part.id}=${key}`,
      title: `${quoted(part)} is a part of the kind “${kindOf(key)?.name ?? key}”, not “${kind?.name ?? part.kind}”.`,
      parts: [part.id],
      apply: (d) => asKind(d, part.id, key, options, leftOver),
    }),
  );
}
