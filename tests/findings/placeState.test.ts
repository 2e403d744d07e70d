/** How a place stands as a whole: our own rule, as written at `placeState`. */
import { expect, test } from "vitest";
import type { Verdict } from "../../src/findings/finding.ts";
import { judgedAt, placeState } from "../../src/findings/placeState.ts";

const verdict = (part: string, state: Verdict["state"], idle?: Verdict["idle"]): Verdict => ({
  part,
  role: part.startsWith("plate") ? "outlet" : "receiver",
  state,
  services: [],
  tuners: [],
  ...(idle ? { idle } : {}),
});

const known = new Map(
  [
    verdict("tv", "works"),
    verdict("sat", "fails"),
    verdict("radio", "edge"),
    verdict("off", "works", "off"),
    verdict("loose", "fails", "nothing connected"),
    verdict("plate", "fails"),
  ].map((v) => [v.part, v] as const),
);
const of = (receivers: readonly string[], outlets: readonly string[] = []) =>
  placeState({ receivers, outlets }, (id) => known.get(id));

test("a place is as good as the worst of its receivers", () => {
  expect(of(["tv", "sat", "radio"])).toBe("fails");
  expect(of(["tv", "radio"])).toBe("edge");
  expect(of(["tv"])).toBe("works");
});

test("its outlets count only where no receiver is judged", () => {
  expect(of(["tv"], ["plate"])).toBe("works");
  expect(of([], ["plate"])).toBe("fails");
  expect(of(["off"], ["plate"])).toBe("fails");
});

test("where nothing is judged it is neither", () => {
  expect(of(["off", "loose"])).toBe("idle");
  expect(of([])).toBe("idle");
});

test("the worst comes first", () => {
  const place = { receivers: ["tv", "radio", "sat", "off"], outlets: [] };
  expect(judgedAt(place, (id) => known.get(id)).map((v) => v.part)).toEqual(["sat", "radio", "tv"]);
});
