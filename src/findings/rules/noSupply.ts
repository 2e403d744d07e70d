import { pictureOf, spotOf } from "../../sentences/explain/picture.ts";
import { plainName } from "../../sentences/explain/plainWords.ts";
import { list, partName, round1 } from "../../sentences/phrases.ts";
import { type SpokenRule, wireAt } from "../rule.ts";
import { supplyBarriers } from "../walk/barriers.ts";

/** A converter or amplifier that nobody supplies. */
export const noSupply: SpokenRule = {
  id: "no-supply",
  title: "No supply at a converter or amplifier",
  explain:
    "Converters and amplifiers on the roof are fed through the cable by a receiver or a mains unit. Without " +
    "supply a converter converts nothing and an amplifier is a loss. Look for a part on the way that blocks direct current.",
  source: "Least supply voltage of the part",
  check: ({ record }) => {
    const load = record.power.load;
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
  explanation: {
    severities: ["error", "warning"],
    customer: (facts) =>
      facts.finding.value
        ? `Too little power reaches ${plainName(facts, facts.finding.parts[0])}, so it does not work.`
        : `No power reaches ${plainName(facts, facts.finding.parts[0])}, so nothing comes out of it.`,
    trade: (facts) => {
      const { finding, evaluation } = facts;
      const blocking = supplyBarriers(evaluation, finding.parts[0] ?? "").filter((b) => b.why === "blocks");
      const where =
        blocking.length > 0
          ? `Direct current gets no further up than ${list(blocking.map((b) => partName(b.part)))}.`
          : "No part below gives a supply: a receiver that is off, or made without one, feeds nothing.";
      return (
        `${partName(finding.parts[0] ?? "")} needs at least ${round1(finding.limit ?? 0)} V and gets ${round1(finding.value ?? 0)} V. ${where} ` +
        "Without supply a converter gives no output at all, and an amplifier is a loss instead of a gain."
      );
    },
    measure: ({ finding, evaluation }) => {
      const barrier = supplyBarriers(evaluation, finding.parts[0] ?? "")[0];
      const at = `Voltmeter from inner conductor to screen on the cable at ${partName(finding.parts[0] ?? "")}: ${round1(finding.value ?? 0)} V, where ${round1(finding.limit ?? 0)} V or more belong.`;
      if (barrier?.why === "blocks")
        return `${at} Then on both sides of ${partName(barrier.part)}: volts below it and none above prove that it blocks.`;
      return `${at} Then part by part downwards, until volts appear: the part before that is the one that blocks, or nothing feeds.`;
    },
    neighbours: ["supply-overloaded", "command-lost", "receiver-misses"],
    picture: (facts) => {
      const input = facts.record?.ports.find((p) => p.side === "in" && facts.record?.joined[p.id]);
      return input ? pictureOf(facts, spotOf(facts, input.id), []) : null;
    },
  },
};
