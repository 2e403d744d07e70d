import { numeral } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { plainName, plainNames } from "../explain/plainWords.ts";
import { list, partName } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";

export const supplyOverloaded: RuleWords<"supply-overloaded"> = {
  title: "A supply is shorted or overloaded",
  explain:
    "Receiver inputs and mains units deliver a limited current. Beyond it, or into a short, they switch off, and everything that they feed goes dark. A terminator that does not block DC is such a load.",
  source: "Current limit of the supply",
  severities: ["error", "warning"],
  message: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    if (facts.kind === "short")
      return `${partName(at.part)} shorts the supply of ${list(facts.supplies.map(partName))} to earth: nothing on that line is fed.`;
    if (facts.kind === "resistor")
      return `${partName(at.part)} does not block DC: its ${numeral(facts.ohms, 0)} Ω draw ${numeral(value, 0)} mA from the line and get hot.`;
    const who = list(facts.draws.map((draw) => partName(draw.part)));
    const delivers = `${partName(at.part)} delivers ${numeral(limit, 0)} mA at most${facts.inputs > 1 ? " in all" : ""}`;
    if (facts.jammed)
      return `${partName(facts.jammed.part)} draws ${numeral(facts.jammed.milliamps, 0)} mA, far more than a motor that turns freely. ${delivers}, and all together draw ${numeral(value, 0)} mA.`;
    return plural(facts.draws.length, {
      one: `${who} draws ${numeral(value, 0)} mA; ${delivers}.`,
      other: `${who} together draw ${numeral(value, 0)} mA; ${delivers}.`,
    });
  },
  cure: ({ finding: { at, facts } }) => {
    if (facts.kind === "short")
      return `Repair ${partName(at.part)}, or replace it with a part that blocks DC.`;
    if (facts.kind === "resistor") return `Replace ${partName(at.part)} with a terminator that blocks DC.`;
    if (facts.jammed) return `Free ${partName(facts.jammed.part)}, or replace it.`;
    const [most] = facts.draws;
    return `Replace ${partName(at.part)} with one of stronger supply, or feed ${partName(most?.part ?? at.part)} from a mains unit.`;
  },
  customer: (told) => {
    const { at, facts } = told.finding;
    if (facts.kind === "resistor")
      return "A small part at the end of a cable draws power for nothing and gets hot, so other equipment may get too little.";
    return facts.kind === "short"
      ? `Something in the line to ${plainNames(told, facts.supplies)} short-circuits its supply, so everything it feeds is dead.`
      : `The equipment that ${plainName(told, at.part)} has to power needs more than it can give, so it may switch off.`;
  },
  trade: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    if (facts.kind === "short")
      return (
        `${partName(at.part)} connects the inner conductor to the screen for DC. The supply of ${list(facts.supplies.map(partName))} goes ` +
        "into protection, 0 V is left, and no LNB or amplifier on that line works, whatever its own state."
      );
    if (facts.kind === "resistor")
      return (
        `A terminator without a capacitor is a resistor of ${numeral(facts.ohms, 0)} Ω for DC: ${numeral(value, 0)} mA, ` +
        `${numeral(facts.watts)} W. Small types stand a quarter of a watt (common practice, no source), and whatever feeds the line gives that much less to its LNB.`
      );
    const each = facts.draws.map((draw) => `${partName(draw.part)} ${numeral(draw.milliamps, 0)} mA`);
    return (
      `Drawn are ${numeral(value, 0)} mA: ${list(each)}. The limit of ${partName(at.part)} is ` +
      `${numeral(limit, 0)} mA: ${numeral(value - limit, 0)} mA too much. Past its limit a supply lets its voltage fall or ` +
      "switches off and tries again; LNBs then work on and off."
    );
  },
  measure: ({ finding: { at, facts, value = 0 } }) =>
    facts.kind === "short"
      ? `Unplug the cable at ${partName(facts.supplies[0] ?? at.part)} and measure with an ohmmeter from inner conductor to screen towards the roof: near 0 Ω ` +
        `proves a short. Unplug ${partName(at.part)}: the reading must rise to kilohms.`
      : facts.kind === "resistor"
        ? `Unplug ${partName(at.part)} and measure it with an ohmmeter, inner conductor to screen: ${numeral(facts.ohms, 0)} Ω prove that it does not block DC.`
        : `Milliammeter in the line at ${partName(at.part)}, or a meter that shows the current it feeds: about ${numeral(value, 0)} mA prove it. ` +
          "Without one, a voltmeter on the plug: well under 12 V with the load, 13 or 18 V without.",
  neighbours: ["no-supply", "command-lost"],
  picture: (_told: Told<"supply-overloaded">) => null,
};
