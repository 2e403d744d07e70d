/** Causes in words: how many there are, and what follows from each. */
import type { Cause, Report, Severity } from "../findings/finding.ts";
import { plural } from "../words/plural.ts";

/** "2 causes, 24 findings"; "No findings" where there are none. */
export function countsOf({ causes, findings }: Pick<Report, "causes" | "findings">): string {
  if (findings.length === 0) return "No findings";
  return `${causesCounted(causes.length)}, ${findingsCounted(findings.length)}`;
}

export function causesCounted(n: number): string {
  return plural(n, { one: (count) => `${count} cause`, other: (count) => `${count} causes` });
}

function findingsCounted(n: number): string {
  return plural(n, { one: (count) => `${count} finding`, other: (count) => `${count} findings` });
}

/** "Because of this: 8 receivers, 24 findings."; nothing where nobody suffers and nothing follows. */
export function followsLine({ receivers, outlets, findings }: Cause): readonly string[] {
  const more = findings.length - 1;
  const said = [
    ...(receivers.length > 0
      ? [plural(receivers.length, { one: (n) => `${n} receiver`, other: (n) => `${n} receivers` })]
      : []),
    ...(outlets.length > 0
      ? [plural(outlets.length, { one: (n) => `${n} outlet`, other: (n) => `${n} outlets` })]
      : []),
    ...(more > 0
      ? [plural(more, { one: (n) => `${n} more finding`, other: (n) => `${n} more findings` })]
      : []),
  ];
  return said.length > 0 ? [`Because of this: ${said.join(", ")}.`] : [];
}

/** How many causes are so grave. */
export function causesOfSeverity({ causes }: Pick<Report, "causes">, severity: Severity): number {
  return causes.filter((cause) => cause.severity === severity).length;
}
