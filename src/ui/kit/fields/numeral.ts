/** Numbers as people type them. */
import { numeral } from "../../../words/numbers.ts";

/** Reads "12.5", "12,5" and "−3"; null for anything that is not one plain number. */
export function readNumeral(text: string): number | null {
  const plain = text
    .trim()
    .replace(/[\u2212\u2013]/g, "-")
    .replace(",", ".")
    .replace(/[\s\u202f]/g, "");
  if (!/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(plain)) return null;
  const value = Number(plain);
  return Number.isFinite(value) ? value : null;
}

/** A number as the field shows it: all its digits, no thousands marks, so that it can be edited. */
export function writeNumeral(value: number): string {
  return numeral(value, 6).replace(/\u202f/g, "");
}

/** How far one press of + or − goes where a field doesn't say: about a hundredth of the range, as 1, 0.1 or 0.01. */
export function stepOf(meta: {
  readonly min?: number;
  readonly max?: number;
  readonly step?: number;
}): number {
  if (meta.step !== undefined) return meta.step;
  const span = (meta.max ?? 100) - (meta.min ?? 0);
  if (span <= 2) return 0.01;
  return span <= 20 ? 0.1 : 1;
}

/** The next value up or down, held inside the range and free of the crumbs of binary fractions. */
export function stepped(options: {
  value: number;
  step: number;
  times: number;
  min: number | undefined;
  max: number | undefined;
}): number {
  const { value, step, times, min, max } = options;
  const next = Math.round((value + step * times) * 1e6) / 1e6;
  return Math.min(max ?? Number.POSITIVE_INFINITY, Math.max(min ?? Number.NEGATIVE_INFINITY, next));
}
