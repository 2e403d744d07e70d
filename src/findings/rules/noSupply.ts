import { type Rule, wireAt } from "../rule.ts";
import { partName, round1 } from "../words.ts";

/** A converter or amplifier that nobody supplies. */
export const noSupply: Rule = {
  id: "no-supply",
  title: "No supply at a converter or amplifier",
  explain:
    "Converters and amplifiers on the roof are fed through the cable by a receiver or a mains unit. Without " +
    "supply a converter converts nothing and an amplifier is a loss. Look for a part on the way that blocks direct current.",
  source: "Least supply voltage of the part",
  check: ({ record }) => {
    const load = record.kind.power(record.options).load;
    if (!load || record.powered || record.looped) return [];
    const arriving = load.ports.flatMap((port) => record.feeds[port] ?? []);
    const best = arriving.reduce((m, o) => Math.max(m, o.volts), 0);
    const joined = record.ports.some((p) => p.side === "out" && record.joined[p.id]);
    return [
      {
        severity: joined ? "error" : "warning",
        parts: [record.part.id],
        wires: load.ports.flatMap((port) => wireAt(record, port)),
        message:
          best > 0
            ? `${partName(record.part.id)} gets only ${round1(best)} V; it needs ${round1(load.minVolts)} V.`
            : `${partName(record.part.id)} gets no supply: nothing downstream feeds it.`,
        value: best,
        limit: load.minVolts,
        unit: "V",
        source: noSupply.source,
        cure: "Connect a receiver or a supply, and let direct current pass all the way up to this part.",
      },
    ];
  },
};
