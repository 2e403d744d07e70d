/** Which ports of a part have to do with one another for direct current. */
import type { PowerTreatment } from "../../parts/contract.ts";

/**
 * Groups of ports between which direct current flows, or whose currents depend on one another; ports in order of name.
 * An output that has to do with no other is a group of its own: a supply may arrive there and end.
 */
export function tiedPorts(power: PowerTreatment, outputs: readonly string[]): readonly (readonly string[])[] {
  const groups: Set<string>[] = [];
  const tie = (ports: readonly string[]) => {
    const merged = new Set(ports);
    for (const group of groups.filter((g) => ports.some((port) => g.has(port)))) {
      for (const port of group) merged.add(port);
      groups.splice(groups.indexOf(group), 1);
    }
    if (merged.size > 0) groups.push(merged);
  };
  for (const { from, to } of power.paths ?? []) tie([from, to]);
  tie(power.load?.ports ?? []);
  for (const { port, whileFedAt = [] } of power.supplies ?? []) tie([port, ...whileFedAt]);
  for (const name of new Set((power.supplies ?? []).map((s) => s.shares)))
    if (name !== undefined) tie((power.supplies ?? []).filter((s) => s.shares === name).map((s) => s.port));
  for (const port of power.shorts ?? []) tie([port]);
  for (const { port } of power.resistors ?? []) tie([port]);
  for (const port of outputs) tie([port]);
  return groups.map((group) => [...group].sort());
}
