import { blameLoss, lossDrafts } from "../receiverLossRules.ts";
import type { RuleOf } from "../rule.ts";

/** A whole plane does not arrive at a receiver, or at one of its tuners. */
export const planeMissing: RuleOf<"plane-missing"> = {
  id: "plane-missing",
  check: (view) => lossDrafts(view, "plane-missing"),
  blame: blameLoss,
};
