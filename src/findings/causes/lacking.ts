/** What a finding really lacks: a receiver's losses know it better than their rule. */
import type { Finding } from "../finding.ts";
import type { Why } from "../missing.ts";
import { ALL_SIGNAL, type Good, mechanismOf } from "./mechanisms.ts";

export function lackedBy(finding: Finding): readonly Good[] {
  switch (finding.rule) {
    case "receiver-misses":
    case "plane-missing":
    case "wrong-feed":
      return LACKED[finding.facts.missing.why];
    default:
      return mechanismOf(finding).lacks;
  }
}

/** What is lacking where carriers are missing in each way. */
const LACKED: Readonly<Record<Why, readonly Good[]>> = {
  absent: [...ALL_SIGNAL, "command"],
  cut: ["band"],
  "out of range": ["band", "plane"],
  "wrong feed": ["plane", "command", "user band"],
  "not selectable": ["command", "plane", "user band", "signal"],
  disturbed: ["quality", "moderation"],
  noisy: ["level", "quality", "signal"],
};
