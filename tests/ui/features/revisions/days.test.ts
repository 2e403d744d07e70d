/** Days and dates of revisions, by the calendar of whoever looks. Expected dates: a calendar; forms of dates: CLDR. */
import { afterEach, describe, expect, test, vi } from "vitest";
import type { RevisionHead } from "../../../../src/store/documents/documentStorage.ts";
import {
  byDay,
  clockWords,
  dayWords,
  revisionName,
  revisionWords,
} from "../../../../src/ui/features/revisions/days.ts";

/** In the time zone of the test, as the words are. */
const at = (text: string) => new Date(text).getTime();
const now = at("2026-03-30T00:10");

afterEach(() => vi.unstubAllEnvs());

describe("the day of a revision", () => {
  test.each([
    { when: "2026-03-30T00:00", words: "Today" },
    { when: "2026-03-29T23:59", words: "Yesterday" },
    // More than 24 hours before.
    { when: "2026-03-29T00:00", words: "Yesterday" },
    { when: "2026-03-28T23:59", words: "Saturday, March 28, 2026" },
    { when: "2025-03-30T00:10", words: "Sunday, March 30, 2025" },
    // A clock that was set back.
    { when: "2026-03-31T12:00", words: "Tuesday, March 31, 2026" },
  ])("$when is $words", ({ when, words }) => {
    expect(dayWords(at(when), now, "en-US")).toBe(words);
  });

  test("is written as in the user's country", () => {
    expect(dayWords(at("2026-03-12T08:00"), now, "en-GB")).toMatch(/^Thursday,? 12 March 2026$/);
    expect(dayWords(at("2026-03-12T08:00"), now, "de")).toBe("Donnerstag, 12. März 2026");
  });

  test("goes by the calendar where a day has 25 hours", () => {
    vi.stubEnv("TZ", "CET");
    // Clocks go back on the last Sunday of October (Directive 2000/84/EC): 24 hours before is the same day.
    const late = at("2026-10-25T23:59");
    expect(new Date(late - 24 * 3_600_000).getDate()).toBe(25);
    expect(dayWords(at("2026-10-24T00:00"), late, "en-US")).toBe("Yesterday");
  });
});

const head = (id: string, when: string, name?: string): RevisionHead => ({
  id,
  document: "a",
  when: at(when),
  by: name === undefined ? "itself" : "user",
  parts: 3,
  ...(name === undefined ? {} : { name }),
});

test("revisions stand under their days in the order in which they come", () => {
  const list = [
    head("4", "2026-03-30T00:05"),
    head("3", "2026-03-29T18:00", "Offer"),
    head("2", "2026-03-29T09:00"),
    head("1", "2026-02-01T09:00"),
  ];
  expect(
    byDay(list, now, "en-US").map(({ words, revisions }) => [words, revisions.map(({ id }) => id)]),
  ).toEqual([
    ["Today", ["4"]],
    ["Yesterday", ["3", "2"]],
    ["Sunday, February 1, 2026", ["1"]],
  ]);
  expect(byDay([], now)).toEqual([]);
});

test("a revision is called by its name, else by how it was kept", () => {
  expect(revisionName(head("1", "2026-03-29T18:00", "Offer"))).toBe("Offer");
  expect(revisionName(head("1", "2026-03-29T18:00"))).toBe("Kept by itself");
});

test("away from its day, a revision is told by name and date", () => {
  expect(clockWords(at("2026-03-29T18:05"), "en-GB")).toBe("18:05");
  expect(revisionWords(head("1", "2026-03-29T18:05", "Offer"), "en-GB")).toBe("Offer (29 Mar 2026, 18:05)");
  expect(revisionWords(head("1", "2026-03-29T18:05"), "en-GB")).toBe("29 Mar 2026, 18:05");
});
