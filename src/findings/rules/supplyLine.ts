import { type Rule, wireAt } from "../rule.ts";
import { list, partName } from "../words.ts";

/** A supply that is shorted or asked for too much. */
export const supplyLine: Rule = {
  id: "supply-overloaded",
  title: "A supply is shorted or overloaded",
  explain:
    "Receiver inputs and mains units deliver a limited current. Beyond it, or into a short, they switch off, and everything that they feed goes dark.",
  source: "Current limit of the supply",
  check: ({ record }) =>
    (record.kind.power(record.options).supplies ?? []).flatMap((supply) => {
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
      return [
        {
          ...common,
          parts: [record.part.id, ...demand.parts],
          message:
            `${list(demand.parts.map(partName))} ${demand.parts.length === 1 ? "draws" : "draw"} ${Math.round(demand.milliamps)} mA; ` +
            `${partName(record.part.id)} delivers ${Math.round(supply.limitMa)} mA at most.`,
          value: demand.milliamps,
          limit: supply.limitMa,
          unit: "mA",
          cure: "Feed the converter from a mains unit, or take loads off this line.",
        },
      ];
    }),
};
