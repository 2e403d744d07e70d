/** Angles and shares of a year in plain words. */

import { RAIN_SHARES } from "../../../../parts/rainMargin.ts";
import { numeralAsSet } from "../../../../words/numbers.ts";
import { counted, decimal } from "../../../kit/format.ts";

/** Turn of the converter: "20.7° anticlockwise"; "none" when the satellite stands due south or north. */
export function tiltWords(skewDeg: number): string {
  const size = decimal(Math.abs(skewDeg));
  if (size === decimal(0)) return "none";
  return `${size}° ${skewDeg > 0 ? "anticlockwise" : "clockwise"}`;
}

/** Mean length of a year in the Gregorian calendar: 365.2425 days [min]. */
const MINUTES_PER_YEAR = 525_949.2;

/** A share of the year as time: "53 minutes", "8.8 hours", "3.7 days". */
export function durationWords(percent: number): string {
  const minutes = (MINUTES_PER_YEAR * percent) / 100;
  if (minutes < 90) return counted(Math.round(minutes), "minute");
  const hours = minutes / 60;
  return hours < 48 ? counted(hours, "hour") : counted(hours / 24, "day");
}

/** For how much of an average year rain breaks the reception: between two of the shares looked at. */
export function outageWords(outage: number | null): string {
  const least = Math.min(...RAIN_SHARES);
  if (outage === null)
    return `for less than ${numeralAsSet(least)} % of an average year (${durationWords(least)})`;
  const next = RAIN_SHARES.filter((share) => share > outage).at(-1);
  const from = `${numeralAsSet(outage)} % (${durationWords(outage)})`;
  if (next === undefined) return `for more than ${from} of an average year`;
  return `for between ${from} and ${numeralAsSet(next)} % (${durationWords(next)}) of an average year`;
}
