/** Which setting of a part would help: what a kind does with supply in which setting is declared at the kind. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { settingFor } from "../../../src/findings/walk/settings.ts";
import type { PowerTreatment } from "../../../src/parts/contract.ts";
import { draw, type Sketch } from "../../draw.ts";
import { recordOf } from "../byHand.ts";

function found(part: Sketch[string], isWished: (power: PowerTreatment) => boolean) {
  const setting = settingFor(recordOf(evaluate(draw({ part }, "")), "part"), isWished);
  return setting && { option: setting.option, value: setting.value };
}

const passes =
  (from: string, to: string) =>
  ({ paths = [] }: PowerTreatment) =>
    paths.some((path) => path.from === from && path.to === to);

describe("a setting is found", () => {
  test("among the choices, leaving out the one that it has", () => {
    expect(found(["meter"], () => true)).toEqual({ option: "supply", value: "13" });
    expect(found(["meter", { supply: "13" }], () => true)).toEqual({ option: "supply", value: "none" });
  });

  test("by turning a switch on, and off", () => {
    const feeds = ({ supplies = [] }: PowerTreatment) => supplies.length > 0;
    const silent = ({ supplies = [] }: PowerTreatment) => supplies.length === 0;
    expect(found(["power-inserter", { switchedOn: false }], feeds)).toEqual({
      option: "switchedOn",
      value: true,
    });
    expect(found(["power-inserter"], silent)).toEqual({ option: "switchedOn", value: false });
  });

  test("where the part lives on supply before and after", () => {
    const unit = ["multiswitch", { supply: "trunk", cascade: true }] as const;
    expect(found(unit, passes("out1", "vl"))).toEqual({ option: "supply", value: "receivers" });
  });

  test("with what the part then does", () => {
    const record = recordOf(evaluate(draw({ part: ["splitter", { dc: "none" }] }, "")), "part");
    expect(settingFor(record, passes("out2", "in"))?.power.paths).toEqual([
      { from: "out1", to: "in", tone: true, dropVolts: 0.5 },
      { from: "out2", to: "in", tone: true, dropVolts: 0.5 },
    ]);
  });
});

// A masthead amplifier may live on what the other leg passes.
test("a setting is preferred that stops no supply which passes now", () => {
  expect(found(["diplexer-combine", { dc: "tv" }], passes("out", "sat"))).toEqual({
    option: "dc",
    value: "both",
  });
  expect(found(["diplexer-combine", { dc: "none" }], passes("out", "sat"))).toEqual({
    option: "dc",
    value: "sat",
  });
});

describe("it is another type of part and no setting", () => {
  test("where it would live on supply and has mains of its own now", () => {
    expect(found(["multiswitch"], passes("out1", "vl"))).toBeUndefined();
  });

  test("where it would have more ports", () => {
    expect(found(["tap", { dc: "all" }], passes("tap2", "in"))).toBeUndefined();
  });

  test("where it would have fewer", () => {
    // The through line and one branch: a tap with one branch.
    const two = ({ paths = [] }: PowerTreatment) => paths.length === 2;
    expect(found(["tap", { dc: "all", taps: "2" }], two)).toBeUndefined();
  });

  test("where it would have as many, but others", () => {
    const shorts = ({ shorts: ports = [] }: PowerTreatment) => ports.includes("out");
    expect(found(["load", { place: "output", dcBlocked: false }], shorts)).toBeUndefined();
  });
});

test("a part without settings has none that helps", () => {
  expect(found(["dc-block"], () => true)).toBeUndefined();
});
