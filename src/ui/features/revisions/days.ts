/** Revisions by day, and when they were kept in words: by the user's own calendar, clock and language. */
import type { RevisionHead } from "../../../store/documents/documentStorage.ts";

export type Day = { readonly words: string; readonly revisions: readonly RevisionHead[] };

/** `locale`: as the browser has it, unless told. */
type Locale = Intl.LocalesArgument;

/** Days in the order in which the revisions come. */
export function byDay(revisions: readonly RevisionHead[], now: number, locale?: Locale): readonly Day[] {
  const days = new Map<string, RevisionHead[]>();
  for (const revision of revisions) {
    const words = dayWords(revision.when, now, locale);
    const own = days.get(words);
    if (own) own.push(revision);
    else days.set(words, [revision]);
  }
  return [...days].map(([words, own]) => ({ words, revisions: own }));
}

/** "Today", "Yesterday", or the date. */
export function dayWords(when: number, now: number, locale?: Locale): string {
  const yesterday = new Date(now);
  // By the calendar: a day in which the clocks change has not 24 hours.
  yesterday.setDate(yesterday.getDate() - 1);
  const day = new Date(when).toDateString();
  if (day === new Date(now).toDateString()) return "Today";
  if (day === yesterday.toDateString()) return "Yesterday";
  return new Intl.DateTimeFormat(locale, { dateStyle: "full" }).format(when);
}

export function clockWords(when: number, locale?: Locale): string {
  return new Intl.DateTimeFormat(locale, { timeStyle: "short" }).format(when);
}

export function revisionName({ name }: RevisionHead): string {
  return name ?? "Kept by itself";
}

/** A revision where it stands alone, away from its day. */
export function revisionWords({ name, when }: RevisionHead, locale?: Locale): string {
  const date = new Intl.DateTimeFormat(locale, { dateStyle: "medium", timeStyle: "short" }).format(when);
  return name === undefined ? date : `${name} (${date})`;
}
