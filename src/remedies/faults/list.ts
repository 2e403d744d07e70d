/** All single faults that a design can have. */
import type { Design, PartId } from "../../design/design.ts";
import type { Fault, FaultFinder } from "./fault.ts";
import { roofFaults, switchFaults, unfittedFaults, wrongKindFaults } from "./types/fitted.ts";
import { cableFaults, deadCableFaults, swapFaults, wireFaults } from "./types/leads.ts";
import { settingFaults, supplyFaults } from "./types/settings.ts";

const FINDERS: readonly FaultFinder[] = [
  wireFaults,
  supplyFaults,
  swapFaults,
  wrongKindFaults,
  settingFaults,
  roofFaults,
  cableFaults,
  unfittedFaults,
  deadCableFaults,
  switchFaults,
];

/** Every single fault of a design, in a fixed order; many change nothing that anybody would notice. */
export function faults(design: Design): readonly Fault[] {
  return FINDERS.flatMap((find) => find(design));
}

/** The fault with this id; undefined where the design has no such part or wire. */
export function faultOf(design: Design, id: string): Fault | undefined {
  return faults(design).find((fault) => fault.id === id);
}

/** What can be wrong at one part, its own plugs included. */
export function faultsAt(design: Design, part: PartId): readonly Fault[] {
  return faults(design).filter((fault) => fault.parts.includes(part));
}
