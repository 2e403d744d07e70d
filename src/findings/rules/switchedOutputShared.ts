import { type Rule, wireAt } from "../rule.ts";
import { list, partName } from "../words.ts";

/** Two receivers on one switched output. */
export const switchedOutputShared: Rule = {
  id: "switched-output-shared",
  title: "A switched output is shared by two receivers",
  explain:
    "A switched output delivers one of four quadrants at a time: the one that the highest voltage and any tone on the line ask for. " +
    "Two receivers on it fight, and each gets only what the other's request leaves: a quarter of the transponders.",
  source: "13/18 V and 22 kHz control after EN 61319-1; sharing: common practice, no source",
  check: ({ record }) =>
    Object.values(record.switches)
      .filter((s) => s.contested)
      .map((s) => {
        const speakers = [
          ...new Set(s.offers.filter((o) => !o.dormant && o.kind === "commands").map((o) => o.part)),
        ];
        const who = list(speakers.map(partName));
        return {
          severity: "error" as const,
          parts: [record.part.id, ...speakers],
          wires: wireAt(record, s.port),
          message:
            `${who} share the switched output ${portLabel(record.ports, s.port)} of ${partName(record.part.id)}: ` +
            `all of them see only what one asks for (${s.setting ?? "nothing"} now).`,
          value: speakers.length,
          limit: 1,
          unit: "receivers",
          source: switchedOutputShared.source,
          cure: "Give each receiver an output of its own, or use a channel-stacking converter.",
        };
      }),
};

function portLabel(ports: readonly { id: string; label: string }[], id: string): string {
  const label = ports.find((p) => p.id === id)?.label;
  return label ? `“${label}”` : "";
}
