import { expect, test } from "vitest";
import { gainBetween, kindNamed, optionsOf, signalOf } from "./walk.ts";

test("a meter leaves the wire as it is: no loss, and supply and tone pass", () => {
  for (const f of [5, 98, 474, 1550, 2350]) expect(gainBetween(signalOf("meter"), "in", "out", f)).toBe(0);
  expect(kindNamed("meter").power(optionsOf("meter"))).toEqual({
    paths: [{ from: "out", to: "in", tone: true }],
  });
});

test.each([
  // 13 V vertical, 18 V horizontal, tone for the high band: EN 61319-1, as a meter's manual gives it.
  { supply: "13", tone: false, asks: { polarisation: "V", half: "low" } },
  { supply: "18", tone: false, asks: { polarisation: "H", half: "low" } },
  { supply: "13", tone: true, asks: { polarisation: "V", half: "high" } },
  { supply: "18", tone: true, asks: { polarisation: "H", half: "high" } },
])("a meter that feeds $supply V, tone $tone, asks for $asks", ({ supply, tone, asks }) => {
  const { supplies } = kindNamed("meter").power(optionsOf("meter", { supply, tone }));
  expect(supplies?.[0]?.request).toEqual(asks);
});
