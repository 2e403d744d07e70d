/** Channel stacking: many tuners on one cable, each with a user band of its own. */
import type { PartKind } from "./contract.ts";
import { LNB_STACKED } from "./lnbStacked.ts";
import { STACKING_CONVERTER } from "./stackingConverter.ts";

export const STACKERS: readonly PartKind[] = [LNB_STACKED, STACKING_CONVERTER];
