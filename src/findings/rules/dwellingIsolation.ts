import type { Evaluation } from "../../evaluate/evaluation.ts";
import { pictureOf, spotOf } from "../../sentences/explain/picture.ts";
import { capital, plainNames } from "../../sentences/explain/plainWords.ts";
import { partName, round1 } from "../../sentences/phrases.ts";
import type { Finding } from "../finding.ts";
import { type IsolationPair, worstIsolation } from "../isolation.ts";
import type { Profile } from "../limits.ts";
import type { SpokenDesignRule, SpokenDraft } from "../rule.ts";

/** Too little isolation between two dwellings. */
export const dwellingIsolation: SpokenDesignRule = {
  id: "dwelling-isolation",
  title: "Too little isolation between dwellings",
  explain:
    "A receiver sends a little of its own oscillator and of its supply's noise back up the cable. Between two dwellings enough loss must " +
    "lie for neither to disturb the other: the loss of both legs and the decoupling of the part where they meet.",
  source:
    "Spanish Royal Decree 346/2011, Annex I 4.3: 38 dB (47 to 300 MHz), 30 dB (300 to 862 MHz), 20 dB (950 to 2150 MHz)",
  *checkDesign(evaluation, profile) {
    if (!hasDwellings(evaluation)) return [];
    const found: SpokenDraft[] = [];
    for (const limit of profile.isolation) {
      const pairs = yield* worstIsolation(evaluation, limit.fromMHz);
      found.push(...belowLimit(pairs, limit));
    }
    return found;
  },
  explanation: {
    severities: ["warning"],
    customer: (facts) =>
      `${capital(plainNames(facts, facts.finding.parts.slice(1)))} belong to different homes and are too little separated, so a set in one can disturb the other.`,
    trade: ({ finding, profile }) => {
      const range = rangeOf(finding, profile);
      return (
        `From ${partName(finding.parts[1] ?? "")} up to ${partName(finding.parts[0] ?? "")} and down to ${partName(finding.parts[2] ?? "")} lie ${round1(finding.value ?? 0)} dB: the losses of both legs and the decoupling between the outputs. ` +
        `${finding.limit ?? 0} dB are asked for${range ? ` from ${range.fromMHz} to ${range.toMHz} MHz` : ""}. Looked at where cable loses least, at the lower end; each dB of outlet loss counts twice.`
      );
    },
    measure: ({ finding, profile }) => {
      const range = rangeOf(finding, profile);
      return (
        `Feed a signal generator or noise source of known level into ${partName(finding.parts[1] ?? "")}${range ? ` at ${range.fromMHz} MHz` : ""} and read the level meter at ${partName(finding.parts[2] ?? "")}: ` +
        `if it reads only ${round1(finding.value ?? 0)} dB less, it is proved; ${finding.limit ?? 0} dB less would be in order.`
      );
    },
    neighbours: ["open-end", "level-limits"],
    picture: (facts) => {
      const range = rangeOf(facts.finding, facts.profile);
      const outlet = facts.evaluation.record(facts.finding.parts[1] ?? "");
      const input = outlet?.ports.find((p) => p.side === "in");
      const spot = outlet && input ? spotOf({ ...facts, record: outlet }, input.id) : null;
      return pictureOf(
        facts,
        spot,
        range
          ? [
              {
                kind: "stretch",
                fromMHz: range.fromMHz,
                toMHz: range.toMHz,
                label: `${range.db} dB asked for`,
              },
            ]
          : [],
      );
    },
  },
};

function hasDwellings(evaluation: Evaluation): boolean {
  return evaluation.records.some(
    (r) => typeof r.options.dwelling === "string" && r.options.dwelling.trim() !== "",
  );
}

/** Looked at where cable loses least: at the lower end of each range. */
function belowLimit(pairs: readonly IsolationPair[], limit: Profile["isolation"][number]): SpokenDraft[] {
  return pairs
    .filter((pair) => pair.isolationDb < limit.db)
    .map((pair) => ({
      severity: "warning",
      parts: [pair.at, ...pair.outlets],
      wires: [],
      message:
        `Between ${partName(pair.outlets[0])} (${pair.dwellings[0]}) and ${partName(pair.outlets[1])} (${pair.dwellings[1]}) there are only ` +
        `${round1(pair.isolationDb)} dB at ${limit.fromMHz} MHz; ${limit.db} dB are asked for.`,
      value: pair.isolationDb,
      limit: limit.db,
      unit: "dB",
      source: dwellingIsolation.source,
      cure: `A better decoupled part in place of ${partName(pair.at)}, or outlets with more loss to the sockets.`,
    }));
}

/** The stretch whose limit a finding quotes. */
function rangeOf(finding: Finding, profile: Profile): Profile["isolation"][number] | undefined {
  return profile.isolation.find((limit) => limit.db === finding.limit);
}
