import type { Proof } from "../../../remedies/proof.ts";
import { plural } from "../../../words/plural.ts";
import { counted } from "../../kit/format.ts";

export type ProofMark = { readonly tone: "ok" | "warning" | "note"; readonly words: string };

/** What a proposal is worth, in a few short marks: the best of it first, then what comes with it. */
export function proofMarks(proof: Proof): readonly ProofMark[] {
  const { cured, caused, causesCured, errorsLeft, warningsLeft, onEdge } = proof;
  const errors = cured.filter((f) => f.severity === "error").length;
  const marks: ProofMark[] = [];
  if (errorsLeft > 0) marks.push({ tone: "note", words: `leaves ${counted(errorsLeft, "error")}` });
  else if (errors > 0)
    marks.push({ tone: "ok", words: warningsLeft === 0 ? "nothing wrong is left" : "no error is left" });
  if (causesCured.length > 0)
    marks.push({ tone: "ok", words: `cures ${counted(causesCured.length, "cause")}` });
  if (onEdge.length > 0)
    marks.push({
      tone: "warning",
      words: plural(onEdge.length, {
        one: (n) => `${n} receiver on a knife’s edge`,
        other: (n) => `${n} receivers on a knife’s edge`,
      }),
    });
  for (const severity of ["warning", "note"] as const) {
    const count = caused.filter((f) => f.severity === severity).length;
    if (count > 0) marks.push({ tone: severity, words: plural(count, GRAVER[severity]) });
  }
  return marks;
}

const GRAVER = {
  warning: {
    one: (n: string) => `${n} new or graver warning`,
    other: (n: string) => `${n} new or graver warnings`,
  },
  note: { one: (n: string) => `${n} new or graver note`, other: (n: string) => `${n} new or graver notes` },
};
