/** How a part stands, in one word with a mark, for its card. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Finding, Severity } from "../../findings/finding.ts";
import { capital } from "../../sentences/explain/plainWords.ts";
import { stateName } from "../../sentences/verdict.ts";
import type { PlainVerdict } from "../../store/hooks.ts";

export type PartState = {
  readonly tone: "ok" | "danger" | "warn" | "note";
  readonly mark: "tick" | "edge" | "cross" | "idle" | "bolt" | "loop" | "alert";
  readonly word: string;
  /** The sentence behind it, for a tooltip. */
  readonly why: string;
};

/** The most important thing to say about a part; null when there is nothing to say. */
export function partState(
  record: PartRecord,
  verdict: PlainVerdict | undefined,
  worst: { readonly severity: Severity; readonly message: string } | undefined,
): PartState | null {
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
    const why = verdict.sentence;
    if (verdict.idle) return { tone: "note", mark: "idle", word: capital(stateName(verdict)), why };
    if (verdict.state === "fails") return { tone: "danger", mark: "cross", word: "Fails", why };
    if (verdict.state === "edge") return { tone: "warn", mark: "edge", word: "Knife’s edge", why };
    if (!worst) return { tone: "ok", mark: "tick", word: "Works", why };
  }
  if (!worst) return null;
  const error = worst.severity === "error";
  return {
    tone: error ? "danger" : "warn",
    mark: "alert",
    word: error ? "Problem" : "Check",
    why: worst.message,
  };
}

/** The gravest finding of which a part is the culprit, which a finding names first: a dish is no problem because its signal meets another. */
export function worstOwn(id: string, findings: readonly Finding[]): Finding | undefined {
  const own = findings.filter((f) => f.parts[0] === id);
  return own.find((f) => f.severity === "error") ?? own.find((f) => f.severity === "warning");
}
