/** What a search is after: the findings to be cured, what is left of them on the way, and where their causes lie. */
import { partsBeyond } from "../design/lookup.ts";
import type { Finding } from "../findings/finding.ts";
import type { Site } from "./site.ts";

/** Findings that candidates are sought for; a thousand of one kind call for no more ideas than a few. */
const MOST_FINDINGS = 40;

/** The finding asked about; else all errors, or all warnings where there is no error. */
export function targetsOf(site: Site, target: Finding | undefined): readonly Finding[] {
  if (target) return [target];
  const errors = site.report.findings.filter((f) => f.severity === "error");
  return errors.length > 0 ? errors : site.report.findings.filter((f) => f.severity === "warning");
}

/** What is still to be cured in a state: targets that stand, and errors that came with the steps so far. */
export function openFindings(start: Site, site: Site, targets: readonly Finding[]): readonly Finding[] {
  const wanted = new Set(targets.map((f) => f.id));
  const known = new Set(start.report.findings.map((f) => f.id));
  return site.report.findings
    .filter((f) => wanted.has(f.id) || (f.severity === "error" && !known.has(f.id)))
    .slice(0, MOST_FINDINGS);
}

/** Findings at parts upstream of what is to be cured: more often than not the cause lies there. */
export function withCauses(site: Site, findings: readonly Finding[]): readonly Finding[] {
  const upstream = partsBeyond(
    site.design.wires,
    findings.map((f) => f.at.part),
    "upstream",
  );
  const causes = site.report.findings.filter(
    (f) => f.severity === "error" && !findings.includes(f) && upstream.has(f.at.part),
  );
  return [...findings, ...causes].slice(0, MOST_FINDINGS);
}
