import { isAsleep } from "../../../findings/verdict.ts";
import type { Site } from "../../../remedies/site.ts";
import { causesOfSeverity } from "../../../sentences/cause.ts";
import { workingWords } from "../../../sentences/receivers.ts";
import { counted } from "../format.ts";

/** "12 parts · 3 of 4 receivers work · 2 errors": a design in one line. */
export function siteWords({ design, report }: Site): string {
  const receivers = report.verdicts.filter((v) => v.role === "receiver" && !isAsleep(v.idle));
  const working = receivers.filter((v) => v.state !== "fails").length;
  const errors = causesOfSeverity(report, "error");
  return [
    counted(design.parts.length, "part"),
    ...(receivers.length > 0 ? [workingWords(working, receivers.length)] : []),
    counted(errors, "error"),
  ].join(" · ");
}
