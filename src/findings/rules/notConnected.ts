import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Port } from "../../parts/contract.ts";
import { plainName } from "../../sentences/explain/plainWords.ts";
import { list, partName } from "../../sentences/phrases.ts";
import { plural } from "../../words/plural.ts";
import type { SpokenRule } from "../rule.ts";

/** Open inputs, and parts that lead nowhere. */
export const notConnected: SpokenRule = {
  id: "not-connected",
  title: "Nothing is connected",
  explain:
    "A part whose input is open has nothing to work on; one whose outputs are all open does nothing for anybody.",
  source: "common practice, no source",
  check: ({ record }) => {
    const { ports, joined } = record;
    const inputs = ports.filter((p) => p.side === "in");
    const outputs = ports.filter((p) => p.side === "out");
    const open = inputs.filter((p) => !joined[p.id]);
    const name = partName(record.part.id);
    const common = { parts: [record.part.id], wires: [], source: notConnected.source };
    if (inputs.length > 0 && open.length === inputs.length)
      return [
        {
          ...common,
          severity: "warning" as const,
          message: plural(inputs.length, {
            one: `Nothing is connected to the input of ${name}.`,
            other: `Nothing is connected to the inputs of ${name}.`,
          }),
          cure: "Join it to an output, or take it away.",
        },
      ];
    const found = [];
    const labels = list(open.map((p) => p.label));
    if (open.length > 0)
      found.push({
        ...common,
        severity: "note" as const,
        message: plural(open.length, {
          one: `${name} has an open input: ${labels}.`,
          other: `${name} has open inputs: ${labels}.`,
        }),
      });
    // An outlet without a receiver is a socket waiting for its owner, and a meter may end a wire: no faults.
    const mayEnd = record.kind.delivery !== undefined || record.kind.family === "use";
    if (outputs.length > 0 && !mayEnd && outputs.every((p) => !joined[p.id]))
      found.push({
        ...common,
        severity: "note" as const,
        message: plural(outputs.length, {
          one: `${name} leads nowhere: its output is not connected.`,
          other: `${name} leads nowhere: none of its outputs is connected.`,
        }),
      });
    return found;
  },
  explanation: {
    severities: ["warning", "note"],
    customer: (facts) =>
      facts.finding.severity === "warning"
        ? `Nothing is plugged into ${plainName(facts, facts.finding.parts[0])}, so it has nothing to work with.`
        : plural(openPorts(facts.record).length, {
            one: `One connection of ${plainName(facts, facts.finding.parts[0])} is still free, which is fine if it is meant to be.`,
            other: `Some connections of ${plainName(facts, facts.finding.parts[0])} are still free, which is fine if they are meant to be.`,
          }),
    trade: ({ finding, record }) => {
      const open = openPorts(record);
      return (
        `Open on ${partName(finding.parts[0] ?? "")}, which has ${plural(record?.ports.length ?? 0, { one: "one connection", other: (n) => `${n} connections` })} in all: ${list(open.map((p) => `${p.label} (${p.side === "in" ? "input" : "output"})`))}. A part without input delivers nothing; ` +
        "one that leads nowhere only loads the line before it. A free port on purpose is no fault."
      );
    },
    measure: ({ finding }) =>
      `Look first: is the cable of ${partName(finding.parts[0] ?? "")} plugged in and labelled? If it is, this drawing lacks a wire. A level meter on the loose cable end shows whether signal is waiting there.`,
    neighbours: ["open-end", "receiver-misses"],
    picture: () => null,
  },
};

function openPorts(record: PartRecord | undefined): readonly Port[] {
  return (record?.ports ?? []).filter((p) => !record?.joined[p.id]);
}
