import { pictureOf, spotOf } from "../../sentences/explain/picture.ts";
import { plainName } from "../../sentences/explain/plainWords.ts";
import { list, partName } from "../../sentences/phrases.ts";
import { plural } from "../../words/plural.ts";
import type { SpokenRule } from "../rule.ts";

/** Open ends that reflect. */
export const unterminated: SpokenRule = {
  id: "open-end",
  title: "An open end that should be terminated",
  explain:
    "An open output reflects what reaches it. On a riser or trunk the reflection travels back past every tap and makes ripple; " +
    "a splitter's open leg spoils its isolation. A 75 Ω load ends it. The ripple itself is not worked out here.",
  source: "common practice, no source",
  check: ({ record }) => {
    if (record.ports.every((p) => p.side === "out" || !record.joined[p.id])) return [];
    const open = record.ports.filter((p) => !record.joined[p.id]);
    const trunk = open.filter((p) => p.role === "trunk");
    const legs = open.filter((p) => p.role === "leg" || p.role === "tap");
    const all = record.ports.filter((p) => p.side === "out");
    const common = { parts: [record.part.id], wires: [], source: unterminated.source };
    const name = partName(record.part.id);
    if (trunk.length > 0)
      return [
        {
          ...common,
          severity: "warning" as const,
          message: `${name} ends open: nothing terminates ${list(trunk.map((p) => p.label))}.`,
          cure: "Put a 75 Ω load (without a path for direct current where the line is powered) on the end.",
        },
      ];
    if (legs.length === 0 || legs.length === all.length) return [];
    return [
      {
        ...common,
        severity: "note" as const,
        message: plural(legs.length, {
          one: `${name} has an open leg: ${list(legs.map((p) => p.label))}.`,
          other: `${name} has open legs: ${list(legs.map((p) => p.label))}.`,
        }),
        cure: plural(legs.length, {
          one: "Put a 75 Ω load on the leg if it stays unused.",
          other: "Put a 75 Ω load on each leg that stays unused.",
        }),
      },
    ];
  },
  explanation: {
    severities: ["warning", "note"],
    customer: (facts) =>
      `A cable end at ${plainName(facts, facts.finding.parts[0])} is open and throws signal back, which can disturb other sockets until a small cap closes it.`,
    trade: ({ finding }) =>
      `An open end reflects all that reaches it: return loss 0 dB, where a 75 Ω load gives 20 dB and more. On a trunk or riser the reflection comes past every tap again; two waves ${finding.severity === "warning" ? "with only the tap's loss between them" : "across a splitter's isolation"} ` +
      "make ripple, 6 dB from crest to trough where the reflection is 10 dB down. On a powered line the load must have a block for direct current, or it loads the supply with 75 Ω.",
    measure: ({ finding }) =>
      `Spectrum meter at the socket next to ${partName(finding.parts[0] ?? "")}: look for waves in a channel that should be flat. Screw a 75 Ω load onto the open end: if they go, it was the reflection. The distance between crests, 125/d MHz for foam cable, tells how many metres away the end is.`,
    neighbours: ["not-connected", "same-signal-twice", "dwelling-isolation"],
    picture: (facts) => {
      const { record } = facts;
      const open = record?.ports.find((p) => p.side === "out" && !record.joined[p.id]);
      return open ? pictureOf(facts, spotOf(facts, open.id), []) : null;
    },
  },
};
