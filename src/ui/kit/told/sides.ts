import type { Verdict } from "../../../findings/finding.ts";
import type { Comparison } from "../../../remedies/compare.ts";
import type { Site } from "../../../remedies/site.ts";

/** A comparison with what it compares and what both are called. */
export type Compared = {
  readonly comparison: Comparison;
  readonly before: Site;
  readonly after: Site;
  readonly names: readonly [before: string, after: string];
};

export function verdictIn(site: Site, part: string): Verdict | undefined {
  return site.report.verdicts.find((v) => v.part === part);
}

/** Receivers first: they are what somebody looks at. */
export function inOrder<T extends { readonly role: Verdict["role"] }>(places: readonly T[]): readonly T[] {
  return [...places.filter((p) => p.role === "receiver"), ...places.filter((p) => p.role === "outlet")];
}
