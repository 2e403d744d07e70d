import { plainName } from "../../sentences/explain/plainWords.ts";
import { list, partName } from "../../sentences/phrases.ts";
import { plural } from "../../words/plural.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** A supply that is shorted or asked for too much. */
export const supplyLine: SpokenRule = {
  id: "supply-overloaded",
  title: "A supply is shorted or overloaded",
  explain:
    "Receiver inputs and mains units deliver a limited current. Beyond it, or into a short, they switch off, and everything that they feed goes dark.",
  source: "Current limit of the supply",
  check: ({ record }) =>
    (record.power.supplies ?? []).flatMap((supply) => {
      const demand = record.demands[supply.port];
      if (!demand) return [];
      const common = {
        severity: "error" as const,
        wires: wireAt(record, supply.port),
        source: supplyLine.source,
      };
      if (demand.shortedBy)
        return [
          {
            ...common,
            parts: [demand.shortedBy, record.part.id],
            message: `${partName(demand.shortedBy)} shorts the supply of ${partName(record.part.id)} to earth: nothing on that line is fed.`,
            cure: "Put a direct-current block before it, or use a part that blocks direct current.",
          },
        ];
      if (demand.milliamps <= supply.limitMa) return [];
      const drawing = demand.draws.map((draw) => draw.part);
      const names = list(drawing.map(partName));
      const needed = Math.round(demand.milliamps);
      const delivers = `${partName(record.part.id)} delivers ${Math.round(supply.limitMa)} mA at most`;
      return [
        {
          ...common,
          port: supply.port,
          parts: [record.part.id, ...drawing],
          message: plural(drawing.length, {
            one: `${names} draws ${needed} mA; ${delivers}.`,
            other: `${names} draw ${needed} mA; ${delivers}.`,
          }),
          value: demand.milliamps,
          limit: supply.limitMa,
          unit: "mA",
          cure: "Feed the converter from a mains unit, or take loads off this line.",
        },
      ];
    }),
  explanation: {
    severities: ["error"],
    customer: (facts) =>
      facts.finding.value === undefined
        ? `Something in the line to ${plainName(facts, facts.finding.parts[1])} short-circuits its power, so everything that lives on it is dead.`
        : `The equipment that ${plainName(facts, facts.finding.parts[0])} has to power needs more than it can give, so it may switch off.`,
    trade: ({ finding }) =>
      finding.value === undefined
        ? `${partName(finding.parts[0] ?? "")} joins the inner conductor to the screen for direct current. The supply of ${partName(finding.parts[1] ?? "")} goes ` +
          "into protection, 0 V is left, and no converter or amplifier on that line works, whatever its own state."
        : `${plural(finding.parts.length - 1, {
            one: `${list(finding.parts.slice(1).map(partName))} draws ${Math.round(finding.value)} mA`,
            other: `${list(finding.parts.slice(1).map(partName))} together draw ${Math.round(finding.value)} mA`,
          })}; the limit of ${partName(finding.parts[0] ?? "")} is ` +
          `${Math.round(finding.limit ?? 0)} mA: ${Math.round(finding.value - (finding.limit ?? 0))} mA too much. Past its limit a supply lets its voltage fall or ` +
          "switches off and tries again; converters then work by fits and starts.",
    measure: ({ finding }) =>
      finding.value === undefined
        ? `Unplug the cable at ${partName(finding.parts[1] ?? "")} and measure with an ohmmeter from inner conductor to screen towards the roof: near 0 Ω ` +
          `proves a short. Unplug ${partName(finding.parts[0] ?? "")}: the reading must rise to kilohms.`
        : `Milliammeter in the line at ${partName(finding.parts[0] ?? "")}, or a meter that shows the current it feeds: about ${Math.round(finding.value)} mA prove it. ` +
          "Without one, a voltmeter on the plug: well under 12 V with the load, 13 or 18 V without.",
    neighbours: ["no-supply", "command-lost"],
    picture: () => null,
  },
};
