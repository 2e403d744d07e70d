import type { Cost } from "../../../remedies/cost.ts";
import { counted, decimal } from "../format.ts";

/** "2 new cables · about 90 minutes · parts 120 EUR": from the user's own list, so rounded as such. */
export function costWords(cost: Cost, currency: string): string {
  const { newCables, workMinutes, partsPrice } = cost;
  return [
    counted(newCables, "new cable"),
    workTimeWords(workMinutes),
    partsPrice > 0 ? `parts ${money(partsPrice, currency)}` : "no parts to buy",
  ].join(" · ");
}

export function workTimeWords(minutes: number): string {
  if (minutes <= 0) return "no work on site";
  const rounded = minutes < 10 ? Math.max(1, Math.round(minutes)) : Math.round(minutes / 5) * 5;
  if (rounded < 120) return `about ${counted(rounded, "minute")}`;
  const hours = Math.round(rounded / 30) / 2;
  return `about ${counted(hours, "hour")}`;
}

/** An amount in whole units from ten upwards; the currency is whatever the user wrote. */
export function money(amount: number, currency: string): string {
  const digits = Number.isInteger(amount) || amount >= 10 ? 0 : 2;
  const text = decimal(amount, digits);
  const name = currency.trim();
  return name === "" ? text : `${text} ${name}`;
}
