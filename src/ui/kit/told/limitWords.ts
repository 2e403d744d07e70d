import type { Finding } from "../../../findings/finding.ts";
import { decimal } from "../format.ts";

/** "104.2 dBµV · limit 95 dBµV · EN 60728-3"; "3 receivers · limit 1"; empty where the sentence says it all. */
export function limitWords(finding: Finding): string {
  return [figures(finding), finding.source ?? ""].filter((words) => words !== "").join(" · ");
}

/** Units that are measured; any other one names things that are counted. */
const MEASURED = /^(dB|mA|A|V|Ω|MHz|GHz|K|m|%)/;

function figures({ value, limit, unit = "" }: Finding): string {
  const figure = (x: number) => decimal(x, Number.isInteger(x) ? 0 : 1);
  const after = unit === "" ? "" : ` ${unit}`;
  if (value === undefined) return limit === undefined ? "" : `limit ${figure(limit)}${after}`;
  const isCounted = unit !== "" && !MEASURED.test(unit);
  // Of what is counted, and where none is allowed, the sentence names the number already.
  if (isCounted && !limit) return "";
  if (limit === undefined) return `${figure(value)}${after}`;
  // What is counted and falls short is a part of a whole, not a value beside a limit.
  if (isCounted)
    return value <= limit
      ? `${figure(value)} of ${figure(limit)}${after}`
      : `${figure(value)}${after} · limit ${figure(limit)}`;
  return `${figure(value)}${after} · limit ${figure(limit)}${after}`;
}
