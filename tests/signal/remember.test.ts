import { expect, test, vi } from "vitest";
import { remembered } from "../../src/signal/remember.ts";

test("a value is made on first use and the same one given back from then on, key by key", () => {
  const store = new Map<string, object>();
  const make = vi.fn(() => ({}));
  const first = remembered(store, "a", make);
  expect(remembered(store, "a", make)).toBe(first);
  expect(make).toHaveBeenCalledTimes(1);
  expect(remembered(store, "b", make)).not.toBe(first);
  expect(make).toHaveBeenCalledTimes(2);
});

test.each([0, "", null, false])("what is empty but there is remembered too: %j", (value) => {
  const store = new Map<string, unknown>([["a", value]]);
  expect(remembered(store, "a", () => "made anew")).toBe(value);
});
