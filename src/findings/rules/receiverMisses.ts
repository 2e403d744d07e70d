import { type Rule, wireAt } from "../rule.ts";
import { count, list, partName, share } from "../words.ts";

/** Whatever else keeps a receiver from what it wants. */
export const receiverMisses: Rule = {
  id: "receiver-misses",
  title: "A receiver misses carriers",
  explain:
    "Every carrier of the aerials and dishes that a receiver is connected to should arrive with enough level and C/N. " +
    "Carriers may be stopped by a filter, drowned by another signal, too weak, or need a switch that somebody else holds.",
  source:
    "Needed C/N by modulation (ETSI EN 300 421, EN 302 307, EN 300 744, EN 302 755 as quoted), tuner noise figure 8 dB typical, from memory",
  check: ({ record, reception }) =>
    (reception?.services ?? []).flatMap(({ service, wanted, got, missing }) => {
      const rest = missing.filter(
        (m) => m.why !== "wrong feed" && !/^are (horizontal|vertical) and/.test(m.text),
      );
      const isWhole =
        rest.length === 0 && !(got === 0 && missing.length > 0 && missing.every((m) => m.why === "absent"));
      if (wanted === 0 || isWhole) return [];
      const why = (rest.length > 0 ? rest : missing).slice(0, 3);
      return [
        {
          severity: "error" as const,
          parts: [record.part.id, ...why.flatMap((m) => (m.part ? [m.part] : []))],
          wires: record.ports.flatMap((p) => wireAt(record, p.id)),
          message: `${partName(record.part.id)} gets ${share(got, wanted, service)}: ${list(why.map((m) => count(m.count, m.text)))}.`,
          value: got,
          limit: wanted,
          unit: "carriers",
          source: receiverMisses.source,
        },
      ];
    }),
};
