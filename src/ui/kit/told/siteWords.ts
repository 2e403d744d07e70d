import type { Site } from "../../../remedies/site.ts";
import { causesOfSeverity } from "../../../sentences/cause.ts";
import { plural } from "../../../words/plural.ts";
import { counted } from "../format.ts";

/** "12 parts · 3 of 4 receivers work · 2 errors": a design in one line. */
export function siteWords({ design, report }: Site): string {
  const receivers = report.verdicts.filter((v) => v.role === "receiver");
  const working = receivers.filter((v) => v.state !== "fails").length;
  const errors = causesOfSeverity(report, "error");
  return [
    counted(design.parts.length, "part"),
    ...(receivers.length > 0 ? [workingWords(working, receivers.length)] : []),
    counted(errors, "error"),
  ].join(" · ");
}

/** How many receivers work, as a clause; `of` is at least 1. */
export function workingWords(working: number, of: number): string {
  if (of === 1) return working === 1 ? "the receiver works" : "the receiver does not work";
  if (working === of) return of === 2 ? "both receivers work" : `all ${of} receivers work`;
  return plural(working, {
    zero: `none of ${of} receivers works`,
    one: (n) => `${n} of ${of} receivers works`,
    other: (n) => `${n} of ${of} receivers work`,
  });
}
