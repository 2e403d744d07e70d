import { plainName, programmes } from "../explain/plainWords.ts";
import { pictureOfInputs } from "../explain/receiverPicture.ts";
import type { RuleWords } from "../ruleWords.ts";
import { lossCureOf, lossForCustomer, lossForTrade, lossMeasure, lossMessage } from "./receiverLoss.ts";

export const receiverMisses: RuleWords<"receiver-misses"> = {
  title: "A receiver misses carriers",
  explain:
    "Every carrier of the aerials and dishes that a receiver is connected to should arrive with enough level and C/N. " +
    "Carriers may be stopped by a filter, drowned by another signal, too weak, or need a switch that somebody else holds.",
  source:
    "Needed C/N by modulation (ETSI EN 300 421, EN 302 307, EN 300 744, EN 302 755 as quoted). Noise figure of the tuner: as set at the receiver",
  severities: ["error", "warning"],
  message: lossMessage,
  cure: lossCureOf,
  customer: (told) =>
    told.finding.facts.wanted === 0
      ? `There is no aerial or dish that brings ${programmes(told.finding.facts.service, told.evaluation)} to ${plainName(told, told.finding.at.part)}.`
      : lossForCustomer(told, ""),
  trade: (told) =>
    lossForTrade(
      told,
      "A carrier counts as received when its way is open and its switches can be set from here. With the noise of its tuner, C/(N+I) must also reach what its modulation needs.",
    ),
  measure: lossMeasure,
  neighbours: [
    "band-cut",
    "shared-frequencies",
    "no-supply",
    "switched-output-shared",
    "low-carrier-to-noise",
  ],
  picture: (told) =>
    pictureOfInputs(told, { kind: "lost", label: "not got" }, (lost) => lost.why !== "wrong feed"),
};
