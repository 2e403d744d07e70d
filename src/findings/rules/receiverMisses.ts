import { capital, plainName, roughly } from "../../sentences/explain/plainWords.ts";
import { pictureOfInputs } from "../../sentences/explain/receiverPicture.ts";
import { list, missingWords, partName, share } from "../../sentences/phrases.ts";
import { numeral, plural } from "../../words/plural.ts";
import type { Finding } from "../finding.ts";
import { receive } from "../reception.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** Whatever else keeps a receiver from what it wants. */
export const receiverMisses: SpokenRule = {
  id: "receiver-misses",
  title: "A receiver misses carriers",
  explain:
    "Every carrier of the aerials and dishes that a receiver is connected to should arrive with enough level and C/N. " +
    "Carriers may be stopped by a filter, drowned by another signal, too weak, or need a switch that somebody else holds.",
  source:
    "Needed C/N by modulation (ETSI EN 300 421, EN 302 307, EN 300 744, EN 302 755 as quoted), tuner noise figure 8 dB typical, from memory",
  check: ({ record, reception }) =>
    (reception?.services ?? []).flatMap(({ service, wanted, got, missing }) => {
      const rest = missing.filter((m) => m.why !== "wrong feed" && m.polarisation === undefined);
      const isWhole =
        rest.length === 0 && !(got === 0 && missing.length > 0 && missing.every((m) => m.why === "absent"));
      if (wanted === 0 || isWhole) return [];
      const why = (rest.length > 0 ? rest : missing).slice(0, 3);
      return [
        {
          severity: "error" as const,
          parts: [record.part.id, ...why.flatMap((m) => (m.part ? [m.part] : []))],
          wires: record.ports.flatMap((p) => wireAt(record, p.id)),
          message: `${partName(record.part.id)} gets ${share(got, wanted, service)}: ${list(why.map((m) => missingWords(m.count, wanted, m.clause)))}.`,
          value: got,
          limit: wanted,
          unit: "carriers",
          source: receiverMisses.source,
          service,
          ...(why.some((m) => m.why === "noisy") ? { side: "too little" as const } : {}),
        },
      ];
    }),
  explanation: {
    severities: ["error"],
    customer: (facts) => {
      const { finding } = facts;
      return `${capital(plainName(facts, finding.parts[0]))} gets ${roughly(finding.value ?? 0, finding.limit ?? 0, finding.at.service)}.`;
    },
    trade: (facts) => {
      const { finding, record } = facts;
      const sources = facts.evaluation.records.filter((r) => r.kind.family === "receive");
      const missing =
        (record ? receive(record, sources) : undefined)?.services.find(
          (s) => s.service === finding.at.service,
        )?.missing ?? [];
      return (
        `${wantedWords(finding)} Missing: ${list(missing.map((m) => missingWords(m.count, finding.limit ?? 0, m.clause)))}. ` +
        "A carrier counts as got when its way is open, its switches can be set from here, and C/(N+I) behind a tuner of 8 dB noise figure reaches what its modulation needs."
      );
    },
    measure: ({ finding }) => {
      const suspect = finding.parts[1];
      const where = suspect ? `before and behind ${partName(suspect)}` : "from here upwards, part by part";
      return (
        `Meter at the input of ${partName(finding.parts[0] ?? "")}: level and MER of a missing carrier. No lock, or a MER below what its modulation needs, confirms the loss. Then measure the same carrier ${where}: ` +
        "the part behind which it is gone is the one that takes it."
      );
    },
    neighbours: [
      "band-cut",
      "shared-frequencies",
      "no-supply",
      "switched-output-shared",
      "low-carrier-to-noise",
    ],
    picture: (facts) =>
      pictureOfInputs(facts, { kind: "lost", label: "not got" }, (lost) => lost.why !== "wrong feed"),
  },
};

/** How many of those wanted come through. */
function wantedWords({ parts, value = 0, limit = 0 }: Finding): string {
  const where = partName(parts[0] ?? "");
  if (limit === 1) return `The only carrier wanted does not arrive usable at ${where}.`;
  return plural(value, {
    zero: `Of ${numeral(limit)} carriers wanted none arrives usable at ${where}.`,
    one: `Of ${numeral(limit)} carriers wanted 1 arrives usable at ${where}.`,
    other: (n) => `Of ${numeral(limit)} carriers wanted ${n} arrive usable at ${where}.`,
  });
}
