/** Measuring by ratios: what every benchmark here needs. */

export type Ratio = { readonly name: string; readonly value: number; readonly atMost: number };

export function milliseconds(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Of an even number, the upper of the two in the middle; NaN of none, which no limit lets pass. */
export function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

/**
 * A quarter of the values lie below this one; NaN of none. For work that makes garbage it says more than the median:
 * whatever else runs on the machine slows the collection of garbage far more than plain arithmetic.
 */
export function lowerQuartile(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 4)] ?? Number.NaN;
}

/** Prints one line per ratio with its limit; yields whether all keep it. */
export function printRatios(ratios: readonly Ratio[]): boolean {
  const width = Math.max(...ratios.map((r) => r.name.length));
  for (const { name, value, atMost } of ratios) {
    const verdict = value <= atMost ? "pass" : "OVER";
    process.stdout.write(
      `  ${verdict}  ${name.padEnd(width)}  ${value.toPrecision(3).padStart(8)}  limit ${atMost}\n`,
    );
  }
  return ratios.every(({ value, atMost }) => value <= atMost);
}
