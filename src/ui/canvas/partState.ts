/** How a part stands, in one word with a mark, for its card. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Finding, Severity, Verdict } from "../../findings/finding.ts";

export type PartState = {
  readonly tone: "ok" | "danger" | "warn" | "note";
  readonly mark: "tick" | "cross" | "bolt" | "loop" | "alert";
  readonly word: string;
  /** Something else is wrong because of this part, or it itself is: it stands out before what suffers from it. */
  readonly isCulprit: boolean;
  /** The sentence behind it, for a tooltip. */
  readonly why: string;
};

type Judged = {
  readonly verdict: Pick<Verdict, "works" | "sentence"> | undefined;
  /** The gravest finding about it. */
  readonly worst: { readonly severity: Severity; readonly message: string } | undefined;
  /** The gravest cause of which it is the culprit. */
  readonly culpritOf: Severity | undefined;
};

/** The most important thing to say about a part; null when there is nothing to say. */
export function partState(record: PartRecord, judged: Judged): PartState | null {
  const isCulprit = judged.culpritOf === "error" || judged.culpritOf === "warning";
  const state = plainState(record, judged);
  return state && { ...state, isCulprit };
}

function plainState(
  record: PartRecord,
  { verdict, worst, culpritOf }: Judged,
): Omit<PartState, "isCulprit"> | null {
  if (record.looped) {
    return {
      tone: "danger",
      mark: "loop",
      word: "Loop",
      why: "The signal runs in a circle through this part.",
    };
  }
  if (!record.powered) {
    return { tone: "danger", mark: "bolt", word: "No supply", why: "No supply reaches this part." };
  }
  if (verdict) {
    if (!verdict.works) return { tone: "danger", mark: "cross", word: "Fails", why: verdict.sentence };
    if (!worst) return { tone: "ok", mark: "tick", word: "Works", why: verdict.sentence };
  }
  if (!worst) return null;
  const error = (culpritOf ?? worst.severity) === "error";
  return {
    tone: error ? "danger" : "warn",
    mark: "alert",
    word: error ? (culpritOf ? "Cause" : "Suffers") : "Check",
    why: worst.message,
  };
}

/** The gravest finding made at a part or laid at its door: a dish is no problem because its signal meets another. */
export function worstOwn(id: string, findings: readonly Finding[]): Finding | undefined {
  const own = findings.filter((f) => f.parts[0] === id || f.at.part === id);
  return own.find((f) => f.severity === "error") ?? own.find((f) => f.severity === "warning");
}
