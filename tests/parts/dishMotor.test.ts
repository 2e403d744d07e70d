import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { draw } from "../draw.ts";

const design = (motor: Record<string, unknown>, receiver: Record<string, unknown>) =>
  draw(
    { dish: ["dish"], lnb: ["lnb-universal"], motor: ["dish-motor", motor], rx: ["receiver-sat", receiver] },
    "dish.sky > lnb.sky, lnb.out > motor.in, motor.out > rx.sat",
  );
const found = (motor: Record<string, unknown>, receiver: Record<string, unknown>) =>
  report(evaluate(design(motor, receiver)))
    .findings.filter((f) => f.rule === "motor-line")
    .map(({ facts, value, limit }) => ({ kind: facts.kind, value, limit }));

describe("a dish motor", () => {
  // By hand: 40 mA at rest and an LNB of 95 mA (60 + 35) are 135; turning 250 + 95 = 345 mA (typical currents, from memory).
  test.each([
    { state: "resting", milliamps: 135 },
    { state: "turning", milliamps: 345 },
  ])("$state draws with its LNB $milliamps mA from its receiver", ({ state, milliamps }) => {
    const record = evaluate(design({ state }, { motor: true })).record("rx");
    expect(record?.demands.sat?.milliamps).toBe(milliamps);
  });

  test("is in order with one receiver that commands it and can feed it while it turns", () => {
    expect(found({}, { motor: true, limitMa: 400 })).toEqual([]);
  });

  test("is not turned by a receiver that sends no commands for it", () => {
    expect(found({}, {})).toEqual([{ kind: "no commands", value: undefined, limit: undefined }]);
  });

  test("says already at rest that its supply will not turn it", () => {
    expect(found({}, { motor: true, limitMa: 300 })).toEqual([
      { kind: "too much current", value: 345, limit: 300 },
    ]);
  });
});
