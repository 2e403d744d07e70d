/** What a finding at a receiver really lacks, from the verdict on that receiver. */
import type { PartId } from "../../design/design.ts";
import type { Finding, Verdict } from "../finding.ts";
import type { Why } from "../missing.ts";
import { type Good, RECEPTION } from "./mechanisms.ts";

export type Lacking = {
  /** Culprits of what is missing, those of most carriers first. */
  readonly traced?: readonly PartId[];
  /** Absent where no more is known than what its rule could lack. */
  readonly lacks?: readonly Good[];
};

const NOTHING_KNOWN: Lacking = {};

/** `verdict`: of the part that a finding is made at, where it is a receiver or an outlet. */
export function lackingAt(finding: Finding, verdict: Verdict | undefined): Lacking {
  if (finding.rule !== "receiver-misses" || verdict?.role !== "receiver") return NOTHING_KNOWN;
  const { service, tuner } = finding.at;
  const missing =
    tuner === undefined
      ? verdict.services
          .filter((s) => service === undefined || s.service === service)
          .flatMap((s) => s.missing)
      : verdict.tuners.filter((t) => t.number === tuner).flatMap((t) => t.missing);
  if (missing.length === 0) return NOTHING_KNOWN;
  return {
    traced: missing.flatMap(({ culprit }) => (culprit ? [culprit.part] : [])),
    lacks: [...new Set(missing.flatMap(({ why }) => LACKED[why]))],
  };
}

/** What is lacking where carriers are missing in each way. */
const LACKED: Readonly<Record<Why, readonly Good[]>> = {
  absent: RECEPTION,
  cut: ["band"],
  "out of range": ["band", "plane"],
  "wrong feed": ["plane", "command"],
  "not selectable": ["command", "plane", "user band", "signal"],
  disturbed: ["quality", "moderation"],
  noisy: ["level", "quality", "signal"],
};
