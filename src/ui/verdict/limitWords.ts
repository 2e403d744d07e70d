import type { Finding } from "../../findings/finding.ts";
import { decimal } from "../format.ts";

/** "104.2 dBµV · limit 95 dBµV · EN 60728-3"; "1 of 6 carriers"; empty when a finding has none of these. */
export function limitWords(finding: Finding): string {
  return [figures(finding), finding.source ?? ""].filter((words) => words !== "").join(" · ");
}

/** Units that are measured; any other one names things that are counted. */
const MEASURED = /^(dB|mA|A|V|Ω|MHz|GHz|K|m|%)/;

function figures({ value, limit, unit = "" }: Finding): string {
  const figure = (x: number) => decimal(x, Number.isInteger(x) ? 0 : 1);
  const after = unit === "" ? "" : ` ${unit}`;
  if (value === undefined) return limit === undefined ? "" : `limit ${figure(limit)}${after}`;
  if (limit === undefined || (limit === 0 && !MEASURED.test(unit))) return `${figure(value)}${after}`;
  // What is counted and falls short is a part of a whole, not a value beside a limit.
  if (unit !== "" && !MEASURED.test(unit) && value <= limit)
    return `${figure(value)} of ${figure(limit)}${after}`;
  return `${figure(value)}${after} · limit ${figure(limit)}${after}`;
}
