import { blameLoss, lossDrafts } from "../receiverLossRules.ts";
import type { RuleOf } from "../rule.ts";

/** A receiver that is given a kind of feed it cannot use. */
export const wrongFeed: RuleOf<"wrong-feed"> = {
  id: "wrong-feed",
  check: (view) => lossDrafts(view, "wrong-feed"),
  blame: blameLoss,
};
