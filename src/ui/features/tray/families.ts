import type { Family } from "../../../parts/contract.ts";

/** Along the way of the signal. */
export const FAMILIES: readonly Family[] = ["receive", "convert", "join", "lift", "run", "deliver", "use"];
