/** All single faults that a design can have. */
import type { Design, PartId } from "../../design/design.ts";
import type { Fault } from "./fault.ts";
import { cableFaults } from "./sorts/cables.ts";
import { missingFaults } from "./sorts/missing.ts";
import { roofFaults } from "./sorts/roof.ts";
import { settingFaults } from "./sorts/settings.ts";
import type { Sort } from "./sorts/sort.ts";
import { supplyFaults } from "./sorts/supply.ts";
import { swapFaults } from "./sorts/swaps.ts";
import { wireFaults } from "./sorts/wires.ts";
import { wrongKindFaults } from "./sorts/wrongKind.ts";

const SORTS: readonly Sort[] = [
  wireFaults,
  supplyFaults,
  swapFaults,
  wrongKindFaults,
  settingFaults,
  roofFaults,
  cableFaults,
  missingFaults,
];

/** Every single fault of a design, in a fixed order; many change nothing that anybody would notice. */
export function faults(design: Design): readonly Fault[] {
  return SORTS.flatMap((sort) => sort(design));
}

/** The fault with this id; undefined where the design has no such part or wire. */
export function faultOf(design: Design, id: string): Fault | undefined {
  return faults(design).find((fault) => fault.id === id);
}

/** What can be wrong at one part, its own plugs included. */
export function faultsAt(design: Design, part: PartId): readonly Fault[] {
  return faults(design).filter((fault) => fault.parts.includes(part));
}
