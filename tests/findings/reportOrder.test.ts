/** The order in which findings are shown: made by hand, at parts whose places are known. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { signalOrderOf } from "../../src/findings/causes/signalOrder.ts";
import type { Finding, Severity, Where } from "../../src/findings/finding.ts";
import { inReportOrder } from "../../src/findings/reportOrder.ts";
import { draw } from "../draw.ts";

const evaluation = evaluate(
  draw(
    { z: ["receiver-tv"], s: ["splitter", { ways: 3 }], a: ["aerial-uhf"] },
    "a.out > s.in, s.out1 > z.in",
  ),
);
const setting = {
  evaluation,
  order: signalOrderOf(evaluation),
  rules: ["above-band-edge", "loop"],
} as const;

type Sketched = {
  readonly at?: Partial<Where>;
  readonly severity?: Severity;
  readonly rule?: "loop" | "above-band-edge";
  readonly parts?: readonly string[];
};

function finding({ at, severity = "error", rule = "loop", parts = [] }: Sketched): Finding {
  const where: Where = { part: "s", ...at };
  const common = { id: "", severity, at: where, parts: [where.part, ...parts], wires: [] } as const;
  return rule === "loop"
    ? { ...common, rule: "loop", facts: {} }
    : { ...common, rule: "above-band-edge", facts: { channels: [], edgeMHz: 694, nowhere: [] } };
}

/** Whether these are shown as they stand here, in whatever order they come. */
function expectOrder(...sketches: readonly Sketched[]): void {
  const findings = sketches.map(finding);
  expect(inReportOrder(findings, setting)).toEqual(findings);
  expect(inReportOrder(findings.toReversed(), setting)).toEqual(findings);
}

describe("findings are shown", () => {
  test("errors first, then warnings, then notes, wherever they are", () => {
    expectOrder(
      { at: { part: "z" } },
      { at: { part: "s" }, severity: "warning" },
      { at: { part: "a" }, severity: "note" },
    );
  });

  test("along the signal, whatever the rule", () => {
    expectOrder({ at: { part: "a" } }, { at: { part: "s" } }, { at: { part: "z" }, rule: "above-band-edge" });
  });

  test("at one part in the order of the rules, whatever the port", () => {
    expectOrder({ at: { port: "out3" }, rule: "above-band-edge" }, { at: { port: "in" } });
  });

  test("of one rule in the order of the ports, the part as a whole first", () => {
    expectOrder({}, { at: { port: "in" } }, { at: { port: "out1" } }, { at: { port: "out2" } });
    expectOrder({ at: { port: "out1", service: "tv" } }, { at: { port: "out3", service: "dab" } });
  });

  test("at one port by service, then by side, then by tuner", () => {
    const tv = { port: "in", service: "tv" } as const;
    expectOrder(
      { at: { port: "in", service: "dab", side: "too much" } },
      { at: { ...tv, side: "too little" } },
    );
    expectOrder(
      { at: { ...tv, side: "too little", tuner: 2 } },
      { at: { ...tv, side: "too much", tuner: 1 } },
    );
    expectOrder({ at: { ...tv, tuner: 2 }, parts: ["z"] }, { at: { ...tv, tuner: 10 }, parts: ["a"] });
    expectOrder({ at: tv }, { at: { ...tv, tuner: 1 } });
  });

  test("then by the places of the parts that they name, fewer first, and at last by band", () => {
    expectOrder({ parts: ["a", "z"] }, { parts: ["z", "a"] });
    expectOrder({ parts: ["a"] }, { parts: ["a", "z"] });
    expectOrder({ parts: ["a"], at: { band: "2" } }, { parts: ["z"], at: { band: "1" } });
    expectOrder({ at: { band: "1" } }, { at: { band: "2" } });
  });
});
