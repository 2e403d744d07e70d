/** Readings in words, and when two of them are the same for whoever holds the meter. */
import { carriers, list } from "../../sentences/phrases.ts";
import type { Service } from "../../signal/carrier.ts";
import { type CarrierReading, QUANTITY_UNITS, type Reading } from "./reading.ts";

/** What cannot be told apart on site: meters and estimates differ by as much. From memory. */
const SAME = { level: 3, cn: 2, mer: 2, volts: 0.6 } as const;

type Summary = {
  readonly service: Service;
  readonly count: number;
  readonly least: number;
  readonly most: number;
};

/** "56 to 58 dBµV on 6 TV multiplexes", "nothing", "17.6 V", "no tone". */
export function readingWords(shown: Reading): string {
  if (shown.quantity === "volts") return `${shown.volts} V`;
  if (shown.quantity === "tone") return shown.tone ? "a 22 kHz tone" : "no tone";
  const unit = QUANTITY_UNITS[shown.quantity];
  const phrases = summaries(shown.carriers).map(({ service, count, least, most }) => {
    const range = least === most ? `${least} ${unit}` : `${least} to ${most} ${unit}`;
    return `${range} on ${carriers(count, service)}`;
  });
  return phrases.length > 0 ? list(phrases) : "nothing";
}

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
export function summaries(readings: readonly CarrierReading[]): readonly Summary[] {
  const found = new Map<Service, Summary>();
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
