/** Taking parts and wires off. */
import { kindOf } from "../../parts/catalogue.ts";
import { type Design, type PartId, type PortRef, type Wire, wireId } from "../design.ts";
import { done, type Edit } from "./edit.ts";

/**
 * Removes parts and wires. A wire that led through removed inline parts (a cable, an amplifier; also
 * several in a row) closes up again; a wire that was itself taken off stays off.
 */
export function removeParts(design: Design, ids: ReadonlySet<PartId>, wireIds: ReadonlySet<string>): Edit {
  const parts = design.parts.filter((part) => !ids.has(part.id));
  const left = design.wires.filter((wire) => !wireIds.has(wireId(wire)));
  const wires = close(design, ids, left);
  if (parts.length === design.parts.length && wires.length === design.wires.length) return done(design);
  return done({ ...design, parts, wires });
}

function close(design: Design, ids: ReadonlySet<PartId>, wires: readonly Wire[]): Wire[] {
  const inline = new Map(
    design.parts.filter((part) => ids.has(part.id)).map((part) => [part.id, kindOf(part.kind)?.inline]),
  );
  const bySource = new Map(wires.map((wire) => [wire.from.join("/"), wire]));

  /** Where a wire ends once the removed parts are led through; undefined where it ends nowhere. */
  function landing(wire: Wire): PortRef | undefined {
    const passed = new Set<PartId>();
    let [id, port] = wire.to;
    while (ids.has(id)) {
      const way = inline.get(id);
      const next = way?.in === port && !passed.has(id) ? bySource.get(`${id}/${way.out}`) : undefined;
      if (!next) return undefined;
      passed.add(id);
      [id, port] = next.to;
    }
    return [id, port];
  }

  return wires
    .filter((wire) => !ids.has(wire.from[0]))
    .flatMap((wire) => {
      if (!ids.has(wire.to[0])) return [wire];
      const to = landing(wire);
      return to ? [{ from: wire.from, to }] : [];
    });
}
