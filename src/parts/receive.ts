/** The family "receive": where signals come onto the wires. */
import { AERIAL_ACTIVE } from "./aerialActive.ts";
import { AERIALS } from "./aerials.ts";
import { AERIAL_VHF } from "./aerialVhf.ts";
import { CABLE_ENTRY } from "./cableEntry.ts";
import type { PartKind } from "./contract.ts";
import { DISHES } from "./dish.ts";
import { MODULATOR } from "./modulator.ts";
import { PICK_UP } from "./pickUp.ts";

export const RECEIVE: readonly PartKind[] = [
  ...DISHES,
  ...AERIALS,
  AERIAL_VHF,
  AERIAL_ACTIVE,
  CABLE_ENTRY,
  MODULATOR,
  PICK_UP,
];
