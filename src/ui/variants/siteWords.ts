import type { Site } from "../../remedies/site.ts";
import { counted } from "../format.ts";

/** "3 of 4 receivers work · 2 errors": a design in one line. */
export function siteWords({ design, report }: Site): string {
  const receivers = report.verdicts.filter((v) => v.role === "receiver");
  const working = receivers.filter((v) => v.works).length;
  const errors = report.findings.filter((f) => f.severity === "error").length;
  return [
    counted(design.parts.length, "part"),
    ...(receivers.length > 0
      ? [
          `${working} of ${counted(receivers.length, "receiver")} ${working === 1 && receivers.length === 1 ? "works" : "work"}`,
        ]
      : []),
    errors === 0 ? "no error" : counted(errors, "error"),
  ].join(" · ");
}
