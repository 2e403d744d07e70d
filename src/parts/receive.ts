/** The family "receive": where signals come onto the wires. */
import { AERIALS } from "./aerials.ts";
import type { PartKind } from "./contract.ts";
import { DISH } from "./dish.ts";
import { PICK_UP } from "./pickUp.ts";

export const RECEIVE: readonly PartKind[] = [DISH, ...AERIALS, PICK_UP];
