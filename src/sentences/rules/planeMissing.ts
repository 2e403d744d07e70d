import { pictureOf, spotOf } from "../explain/picture.ts";
import type { RuleWords } from "../ruleWords.ts";
import { lossCureOf, lossForCustomer, lossForTrade, lossMeasure, lossMessage } from "./receiverLoss.ts";

export const planeMissing: RuleWords<"plane-missing"> = {
  title: "A quarter of a satellite does not arrive",
  explain:
    "A satellite comes in four quarters: vertical and horizontal, low and high; in C band and Ka band in two halves. Each needs its own trunk, or a switch that can be told to give it. " +
    "An open input, a wrong lead, or a part that stops 18 V or tone takes one or two away for all behind it.",
  source: "EN 61319-1 for the four quarters, as quoted",
  severities: ["error"],
  message: lossMessage,
  cure: lossCureOf,
  customer: (told) => lossForCustomer(told, ", because a part of the signal does not reach it"),
  trade: (told) =>
    lossForTrade(
      told,
      told.finding.facts.missing.planes.some((plane) => plane.isUndivided)
        ? "Each polarisation holds about half of the transponders: 13 V or 18 V selects it. C band and Ka band have no halves."
        : "Each quarter holds about a quarter of the transponders: 13 V or 18 V selects the polarisation, and the 22 kHz tone the high band.",
    ),
  measure: lossMeasure,
  neighbours: ["wrong-feed", "command-lost", "receiver-misses", "not-connected"],
  picture: (told) => {
    const joined = told.record?.ports.find((p) => told.record?.joined[p.id] && p.side === "in");
    return joined ? pictureOf(told, spotOf(told, joined.id), []) : null;
  },
};
