import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Finding } from "../finding.ts";
import { worstIsolation } from "../isolation.ts";
import type { Profile } from "../limits.ts";
import type { DesignRule } from "../rule.ts";
import { partName, round1 } from "../words.ts";

/** Too little isolation between two dwellings. */
export const dwellingIsolation: DesignRule = {
  id: "dwelling-isolation",
  title: "Too little isolation between dwellings",
  explain:
    "A receiver sends a little of its own oscillator and of its supply's noise back up the cable. Between two dwellings enough loss must " +
    "lie for neither to disturb the other: the loss of both legs and the decoupling of the part where they meet.",
  source:
    "Spanish Royal Decree 346/2011, Annex I 4.3: 38 dB (47 to 300 MHz), 30 dB (300 to 862 MHz), 20 dB (950 to 2150 MHz)",
  checkDesign: (evaluation, profile) =>
    hasDwellings(evaluation) ? profile.isolation.flatMap((limit) => belowLimit(evaluation, limit)) : [],
};

function hasDwellings(evaluation: Evaluation): boolean {
  return evaluation.records.some(
    (r) => typeof r.options.dwelling === "string" && r.options.dwelling.trim() !== "",
  );
}

/** Looked at where cable loses least: at the lower end of each range. */
function belowLimit(evaluation: Evaluation, limit: Profile["isolation"][number]): Omit<Finding, "rule">[] {
  return worstIsolation(evaluation, limit.fromMHz)
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
