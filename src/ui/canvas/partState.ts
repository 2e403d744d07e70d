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
  /** Something else is wrong because of this part, or it itself is: it stands out before what suffers from it. */
  readonly isCulprit: boolean;
  /** What comes after it shows the same more clearly: it is read aloud, but has no mark of its own. */
  readonly isQuiet: boolean;
  /** What a receiver's tile says: "1 of 6 TV". */
  readonly result: string;
  /** The sentence behind it, for a tooltip. */
  readonly why: string;
};

type Judged = {
  readonly verdict: PlainVerdict | undefined;
  /** The gravest finding about it. */
  readonly worst: { readonly severity: Severity; readonly message: string } | undefined;
  /** The gravest cause of which it is the culprit. */
  readonly culpritOf: Severity | undefined;
};

/** The most important thing to say about a part; null when there is nothing to say. */
export function partState(record: PartRecord, judged: Judged): PartState | null {
  const isCulprit = judged.culpritOf === "error" || judged.culpritOf === "warning";
  const state = plainState(record, judged);
  if (!state) return null;
  const isFed = record.ports.some((p) => p.side === "out" && record.joined[p.id] !== undefined);
  const suffers = state.mark === "alert" && state.tone === "danger";
  const isQuiet = !isCulprit && isFed && (suffers || judged.verdict !== undefined);
  return { ...state, isCulprit, isQuiet, result: judged.verdict?.result ?? state.word };
}

function plainState(
  record: PartRecord,
  { verdict, worst, culpritOf }: Judged,
): Omit<PartState, "isCulprit" | "isQuiet" | "result"> | null {
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
  const error = (culpritOf ?? worst.severity) === "error";
  return {
    tone: error ? "danger" : "warn",
    mark: error && culpritOf ? "cross" : "alert",
    word: error ? (culpritOf ? "Cause" : "Suffers") : "Check",
    why: worst.message,
  };
}

/** The gravest finding made at a part or laid at its door: a dish is no problem because its signal meets another. */
export function worstOwn(id: string, findings: readonly Finding[]): Finding | undefined {
  const own = findings.filter((f) => f.parts[0] === id || f.at.part === id);
  return own.find((f) => f.severity === "error") ?? own.find((f) => f.severity === "warning");
}
