/** What an output of a converter or switch unit gives: it may have some of another sort beside those it is made for. */
import type { PartKind, PowerTreatment } from "./contract.ts";
import type { FeedKind } from "./trade.ts";

/** Feed at an output; undefined for a part that gives none of its own. */
export function outputFeed(kind: PartKind, power: PowerTreatment, port: string): FeedKind | undefined {
  const { gives } = kind.trade;
  if (gives === undefined) return undefined;
  const declared = power.switches?.find((s) => s.port === port);
  if (declared) return declared.by === "stack" ? "stacked" : "switched";
  return gives;
}
