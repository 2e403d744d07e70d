import { plural } from "../../words/plural.ts";
import { pictureOf, spotOf } from "../explain/picture.ts";
import { plainName } from "../explain/plainWords.ts";
import { list, partName } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";
import { portsWords } from "../supplyWords.ts";

export const openEnd: RuleWords<"open-end"> = {
  title: "An open end that should be terminated",
  explain:
    "An open output reflects what reaches it. On a riser or trunk the reflection travels back past every tap and makes ripple; " +
    "a splitter’s open leg spoils its isolation. A 75 Ω terminator ends it. The level diagram and the margins count the ripple.",
  source: "common practice, no source",
  severities: ["warning", "note"],
  message: (told) => {
    const { at, facts } = told.finding;
    const name = partName(at.part);
    if (facts.of === "trunk")
      return `${name} ends open: no terminator on ${portsWords(told.record, facts.ports)}.`;
    const labels = list(labelsOf(told));
    return plural(facts.ports.length, {
      one: `${name} has an open leg: ${labels}.`,
      other: `${name} has open legs: ${labels}.`,
    });
  },
  cure: ({ finding: { facts } }) =>
    facts.of === "trunk"
      ? "Put a 75 Ω terminator on the end, with a DC block where the line is powered."
      : plural(facts.ports.length, {
          one: "Put a 75 Ω terminator on the leg if it stays unused.",
          other: "Put a 75 Ω terminator on each leg that stays unused.",
        }),
  customer: (told) =>
    `A cable end at ${plainName(told, told.finding.at.part)} is open and disturbs other outlets until a small cap closes it.`,
  trade: ({ finding: { facts } }) =>
    `An open end reflects all that reaches it: return loss 0 dB, where a 75 Ω terminator gives 20 dB and more. On a trunk or riser the reflection comes past every tap again. Two waves ${facts.of === "trunk" ? "with only the tap’s loss between them" : "across a splitter’s isolation"} ` +
    "make ripple, 6 dB from crest to trough where the reflection is 10 dB down. On a powered line the terminator must have a DC block, or it loads the supply with 75 Ω.",
  measure: ({ finding: { at } }) =>
    `Spectrum meter at the socket next to ${partName(at.part)}: look for waves in a channel that should be flat. Screw a 75 Ω terminator onto the open end: if they go, it was the reflection. The distance between crests, 125/d MHz for foam cable, tells how many metres away the end is.`,
  neighbours: ["not-connected", "same-signal-twice", "dwelling-isolation"],
  picture: (told) => pictureOf(told, spotOf(told, told.finding.facts.ports[0]), []),
};

function labelsOf({ finding, record }: Told<"open-end">): readonly string[] {
  return finding.facts.ports.map((port) => record?.ports.find((p) => p.id === port)?.label ?? port);
}
