/** When two readings are the same for whoever holds the meter. */
import type { Service } from "../../signal/carrier.ts";
import type { CarrierReading, Reading } from "./reading.ts";

/** What cannot be told apart on site: meters and estimates differ by as much. From memory. */
const SAME = { level: 3, cn: 2, mer: 2, volts: 0.6 } as const;

export type ServiceSummary = {
  readonly service: Service;
  readonly count: number;
  readonly least: number;
  readonly most: number;
};

/** True when nobody could tell the two readings apart. */
export function alike(a: Reading, b: Reading): boolean {
  if (a.quantity === "volts") return b.quantity === "volts" && Math.abs(a.volts - b.volts) <= SAME.volts;
  if (a.quantity === "tone") return b.quantity === "tone" && a.tone === b.tone;
  if (b.quantity !== a.quantity) return false;
  const other = new Map(summaries(b.carriers).map((s) => [s.service, s]));
  const own = summaries(a.carriers);
  const same = SAME[a.quantity];
  return (
    own.length === other.size &&
    own.every((s) => {
      const o = other.get(s.service);
      return (
        o !== undefined &&
        o.count === s.count &&
        Math.abs(o.least - s.least) <= same &&
        Math.abs(o.most - s.most) <= same
      );
    })
  );
}

/** Count and range for each service, in the order of frequency. */
export function summaries(readings: readonly CarrierReading[]): readonly ServiceSummary[] {
  const found = new Map<Service, ServiceSummary>();
  for (const { service, value } of readings) {
    const s = found.get(service) ?? { service, count: 0, least: value, most: value };
    found.set(service, {
      service,
      count: s.count + 1,
      least: Math.min(s.least, value),
      most: Math.max(s.most, value),
    });
  }
  return [...found.values()];
}
