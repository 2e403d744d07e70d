import { pictureOf, spotOf } from "../../sentences/explain/picture.ts";
import { capital, plainName, roughly } from "../../sentences/explain/plainWords.ts";
import { list, partName, share } from "../../sentences/phrases.ts";
import { numeral, plural } from "../../words/plural.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** One polarisation does not arrive at all. */
export const polarisationMissing: SpokenRule = {
  id: "polarisation-missing",
  title: "One polarisation does not arrive",
  explain:
    "A wideband converter gives vertical and horizontal on two outputs. A receiver that has only one of the two cables, " +
    "or a converter that is not told to switch, gets half of the transponders.",
  source: "common practice, no source",
  check: ({ record, reception }) =>
    (reception?.services ?? []).flatMap(({ service, wanted, got, missing }) =>
      missing
        .filter((m) => m.polarisation !== undefined && m.count < wanted)
        .map((m) => ({
          severity: "error" as const,
          parts: [record.part.id],
          wires: record.ports.flatMap((p) => wireAt(record, p.id)),
          message: `${partName(record.part.id)} gets ${share(got, wanted, service)}: ${plural(m.count, m.clause)}.`,
          value: got,
          limit: wanted,
          unit: "transponders",
          source: polarisationMissing.source,
          service,
          cure: "Bring the other polarisation to the receiver as well, by a second cable or through a channel-stacking converter.",
        })),
    ),
  explanation: {
    severities: ["error"],
    customer: (facts) => {
      const { finding } = facts;
      return `${capital(plainName(facts, finding.parts[0]))} gets ${roughly(finding.value ?? 0, finding.limit ?? 0, finding.at.service)}, because the other half of the signal does not reach it.`;
    },
    trade: ({ finding, record }) => {
      const open = (record?.kind.reception?.(record.options).inputs ?? []).filter(
        (i) => !record?.joined[i.port],
      );
      const openNames = list(open.map((i) => i.port.toUpperCase()));
      const where = partName(finding.parts[0] ?? "");
      return (
        `${plural(finding.value ?? 0, {
          zero: `None of ${numeral(finding.limit ?? 0)} transponders comes to ${where}`,
          one: `1 of ${numeral(finding.limit ?? 0)} transponders comes to ${where}`,
          other: (n) => `${n} of ${numeral(finding.limit ?? 0)} transponders come to ${where}`,
        })}; those of the other polarisation are on no cable to it. A satellite sends about as many vertical as horizontal ones, ` +
        `and a wideband converter puts each polarisation on an output of its own. ${plural(open.length, {
          zero: "All its inputs are joined, so look at what feeds them.",
          one: `Not joined: input ${openNames}.`,
          other: `Not joined: inputs ${openNames}.`,
        })}`
      );
    },
    measure: ({ finding }) =>
      `Satellite meter on each cable to ${partName(finding.parts[0] ?? "")}: lock on a vertical and then on a horizontal transponder. If one of the two is found on no cable, the missing polarisation is proved; find it again at the converter's other output.`,
    neighbours: ["wrong-feed", "command-lost", "receiver-misses", "not-connected"],
    picture: (facts) => {
      const joined = facts.record?.ports.find((p) => facts.record?.joined[p.id] && p.side === "in");
      return joined ? pictureOf(facts, spotOf(facts, joined.id), []) : null;
    },
  },
};
