/** Which revisions make room. The dates are laid out by hand; the rule reads: hours densely, then days. */
import { expect, test } from "vitest";
import type { RevisionHead } from "../../../src/store/documents/documentStorage.ts";
import { surplusRevisions } from "../../../src/store/documents/revisions.ts";

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** Noon of a day, so that the hours before it lie in the same day. */
const NOW = 20_000 * DAY + 12 * HOUR;

const revision = (agoMs: number, more: Partial<RevisionHead> = {}): RevisionHead => ({
  id: `${agoMs}`,
  document: "a",
  when: NOW - agoMs,
  by: "itself",
  parts: 1,
  ...more,
});

const surplus = (list: readonly RevisionHead[]) => surplusRevisions(list, NOW).map(Number);

test("all of the last three hours stay", () => {
  const list = Array.from({ length: 18 }, (_, i) => revision(i * 600_000));
  expect(surplus(list)).toEqual([]);
});

test("of the day before, the latest of each hour stays", () => {
  const list = [4.25, 4.5, 4.75, 5.5].map((hours) => revision(hours * HOUR));
  expect(surplus(list)).toEqual([4.5 * HOUR, 4.75 * HOUR]);
});

test("of the month before, the latest of each day stays", () => {
  const list = [2 * DAY, 2 * DAY + HOUR, 2 * DAY + 2 * HOUR, 3 * DAY].map((ago) => revision(ago));
  expect(surplus(list)).toEqual([2 * DAY + HOUR, 2 * DAY + 2 * HOUR]);
});

test("what the user named or took stays, however old", () => {
  const list = [
    revision(2 * DAY),
    revision(2 * DAY + 1, { name: "Offer" }),
    revision(2 * DAY + 2, { by: "user" }),
    revision(400 * DAY, { name: "As sold" }),
  ];
  expect(surplus(list)).toEqual([]);
});

test("ten years of daily work leave fewer than two hundred", () => {
  const list = Array.from({ length: 3650 }, (_, i) => revision(i * DAY));
  expect(list.length - surplus(list).length).toBeLessThan(200);
});
