/** Adding parts that hang on a port: one part, or a whole run such as cable, outlet and what is plugged in there. */
import type { AnyOptions } from "../../parts/contract.ts";
import type { Design, PartId, PortRef } from "../design.ts";
import { partById, portOf, portsOf, wireAt } from "../lookup.ts";
import { type Edit, refuse } from "./edit.ts";
import { planJoin } from "./join.ts";
import { addPart, newPart } from "./parts.ts";

/** A new part, the port of its own by which it is joined, and what hangs on its other ports. */
export type Attachment = {
  readonly kind: string;
  /** What differs from the typical values. */
  readonly options: AnyOptions;
  readonly port: string;
  readonly behind: readonly { readonly from: string; readonly attachment: Attachment }[];
};

/** A part that was added, and the port that it hangs on. */
export type Attached = { readonly part: PartId; readonly port: string; readonly to: PortRef };

export type AttachEdit =
  | (Edit & { readonly ok: true; readonly added: readonly Attached[] })
  | (Edit & { readonly ok: false });

/** Joins new parts to a free port; each stands at the place of the part it hangs on until it is given one. */
export function attach(design: Design, to: PortRef, attachment: Attachment): AttachEdit {
  const start = partById(design, to[0]);
  if (!start || !portOf(start, to[1])) return refuse("That port is no longer in the design.");
  const part = newPart(design, attachment.kind, start.at, attachment.options);
  if (!part) return refuse("That part cannot be added here.");
  const added = addPart(design, part);
  if (!added.ok) return added;
  const joined = planJoin(added.design, to, [part.id, attachment.port]);
  if (!joined.ok) return joined;
  const all: Attached[] = [{ part: part.id, port: attachment.port, to }];
  let now = joined;
  for (const branch of attachment.behind) {
    const further = attach(now.design, [part.id, branch.from], branch.attachment);
    if (!further.ok) return further;
    now = further;
    all.push(...further.added);
  }
  return { ...now, added: all };
}

/** The ports of a part that nothing is joined to, outputs first. */
export function freePorts(design: Design, id: PartId): readonly PortRef[] {
  const part = partById(design, id);
  if (!part) return [];
  return portsOf(part)
    .slice()
    .sort((a, b) => Number(a.side === "in") - Number(b.side === "in"))
    .map((port): PortRef => [id, port.id])
    .filter((ref) => !wireAt(design, ref));
}
