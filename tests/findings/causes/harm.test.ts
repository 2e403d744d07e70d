/** Who suffers from a cause, and which cause comes first: findings and verdicts made by hand. Common practice, no source. */
import { describe, expect, test } from "vitest";
import { type Group, inHarmOrder } from "../../../src/findings/causes/harm.ts";
import type { Passed, Ways } from "../../../src/findings/causes/ways.ts";
import type { Finding, ServiceVerdict, Severity, Verdict } from "../../../src/findings/finding.ts";
import type { Missing } from "../../../src/findings/missing.ts";

/** A part that goes round in a circle: whatever lies behind it gets nothing. */
function finding(part: string, more: { severity?: Severity; parts?: readonly string[] } = {}): Finding {
  const { severity = "error", parts = [] } = more;
  return {
    id: `loop ${part} ${severity} ${parts.join()}`,
    rule: "loop",
    severity,
    at: { part },
    parts: [part, ...parts],
    wires: [],
    facts: {},
  };
}

const alone = (root: Finding, ...others: readonly Finding[]): Group => ({
  root,
  findings: [root, ...others],
});

function lacking(
  o: { readonly culprit?: string; readonly service?: "tv" | "satellite" } = {},
): ServiceVerdict {
  const missing: Missing = {
    why: "absent",
    count: 3,
    reason: { kind: "does not arrive" },
    planes: [],
    ...(o.culprit ? { culprit: { part: o.culprit } } : {}),
  };
  return { service: o.service ?? "tv", wanted: 3, got: 0, missing: [missing] };
}

function receiver(part: string, state: Verdict["state"], ...services: readonly ServiceVerdict[]): Verdict {
  return { part, role: "receiver", state, services, tuners: [] };
}

const outlet = (part: string): Verdict => ({ ...receiver(part, "fails"), role: "outlet" });

/** Places in the order named here; what lies before each part, nearest first. */
function setting(verdicts: readonly Verdict[], above: Readonly<Record<string, readonly string[]>> = {}) {
  const order = new Map([..."abcdefghijklmnopqrstuvwxyz"].map((part, n) => [part, n]));
  const passed = (part: string): readonly Passed[] =>
    (above[part] ?? []).map((each, n) => ({ part: each, port: "out", distance: n + 1 }));
  const ways: Ways = { signalTo: passed, supplyTo: () => [] };
  return { verdicts, order, ways };
}

describe("who suffers", () => {
  const [a, b] = [alone(finding("a")), alone(finding("b"))];

  test("a receiver at which something is found", () => {
    const at = alone(finding("a"), finding("r"));
    expect(inHarmOrder([at], setting([receiver("r", "fails")]))[0]?.receivers).toEqual(["r"]);
  });

  test("not one at which there is only a note", () => {
    const noted = alone(finding("a", { severity: "note" }), finding("r", { severity: "note" }));
    expect(inHarmOrder([noted], setting([receiver("r", "edge")]))[0]?.receivers).toEqual([]);
  });

  test("not one that works, whatever is found at it", () => {
    expect(inHarmOrder([alone(finding("r"))], setting([receiver("r", "works")]))[0]?.receivers).toEqual([]);
  });

  test("one that is on a knife's edge", () => {
    expect(inHarmOrder([alone(finding("r"))], setting([receiver("r", "edge")]))[0]?.receivers).toEqual(["r"]);
  });

  test("a receiver whose carriers are lost at the culprit", () => {
    const causes = inHarmOrder([a, b], setting([receiver("r", "fails", lacking({ culprit: "b" }))]));
    expect(causes.map((c) => [c.root.at.part, ...c.receivers])).toEqual([["b", "r"], ["a"]]);
  });

  test("of one service only, where the cause takes only that", () => {
    const root: Finding = { ...finding("b"), at: { part: "b", service: "tv" } };
    const of = (service: "tv" | "satellite") =>
      inHarmOrder([alone(root)], setting([receiver("r", "edge", lacking({ culprit: "b", service }))]))[0]
        ?.receivers;
    expect(of("tv")).toEqual(["r"]);
    expect(of("satellite")).toEqual([]);
  });

  test("where nothing else is known, from the nearest that lies before it", () => {
    const causes = inHarmOrder([a, b], setting([receiver("r", "fails")], { r: ["c", "b", "a"] }));
    expect(causes.map((c) => [c.root.at.part, ...c.receivers])).toEqual([["b", "r"], ["a"]]);
  });

  test("only where it fails: an edge is not blamed on whatever lies before it", () => {
    expect(inHarmOrder([a], setting([receiver("r", "edge")], { r: ["a"] }))[0]?.receivers).toEqual([]);
  });

  test("and at last from what only mentions it", () => {
    const mentions = alone(finding("a", { parts: ["r"] }));
    const causes = inHarmOrder([mentions, b], setting([receiver("r", "fails")]));
    expect(causes.map((c) => [c.root.at.part, ...c.receivers])).toEqual([["a", "r"], ["b"]]);
  });

  test("at one place from each cause that is found there", () => {
    const [first, second] = [
      alone(finding("a"), finding("r")),
      alone(finding("b"), finding("r", { parts: ["b"] })),
    ];
    const causes = inHarmOrder([first, second], setting([receiver("r", "fails")]));
    expect(causes.map((c) => c.receivers)).toEqual([["r"], ["r"]]);
  });

  test("from nothing before it, nor from what mentions it, where a cause is known", () => {
    const [own, before] = [alone(finding("c"), finding("r")), alone(finding("a", { parts: ["r"] }))];
    const causes = inHarmOrder([own, before], setting([receiver("r", "fails")], { r: ["a"] }));
    expect(causes.map((c) => [c.root.at.part, ...c.receivers])).toEqual([["c", "r"], ["a"]]);
  });

  // A channel that nobody transmits on any more takes nothing from anybody.
  test("not from what takes nothing, however near it lies", () => {
    const { facts: _, ...common } = finding("b");
    const harmless: Finding = {
      ...common,
      rule: "above-band-edge",
      facts: { channels: [], edgeMHz: 694, nowhere: [] },
    };
    const causes = inHarmOrder([alone(harmless), a], setting([receiver("r", "fails")], { r: ["b", "a"] }));
    expect(causes.map((c) => [c.root.at.part, ...c.receivers])).toEqual([["a", "r"], ["b"]]);
  });

  // Whatever is found at an outlet concerns whoever is plugged in there one day, though all is handed on.
  test("an outlet that hands on all, where something is found at it", () => {
    const [cause] = inHarmOrder([alone(finding("s"))], setting([{ ...outlet("s"), state: "works" }]));
    expect(cause?.outlets).toEqual(["s"]);
  });

  test("receivers and outlets apart, in the order of the signal, each once", () => {
    const many = alone(
      finding("a"),
      finding("t"),
      finding("r"),
      finding("s"),
      finding("r", { parts: ["x"] }),
    );
    const verdicts = [receiver("t", "fails"), outlet("s"), receiver("r", "fails")];
    const [cause] = inHarmOrder([many], setting(verdicts));
    expect([cause?.receivers, cause?.outlets]).toEqual([["r", "t"], ["s"]]);
  });
});

describe("which cause comes first", () => {
  const parts = (groups: readonly Group[], s: ReturnType<typeof setting>) =>
    inHarmOrder(groups, s).map((c) => c.root.parts[0]);

  test("an error before a warning before a note, by the gravest finding of each", () => {
    const graver = alone(finding("e"), finding("f", { severity: "note" }));
    expect(inHarmOrder([graver], setting([])).map((c) => c.severity)).toEqual(["error"]);
    const note = alone(finding("a", { severity: "note" }));
    const warning = alone(finding("b", { severity: "warning" }));
    const error = alone(finding("c", { severity: "note" }), finding("d"));
    expect(parts([note, warning, error], setting([]))).toEqual(["c", "b", "a"]);
    expect(inHarmOrder([error, note, warning], setting([])).map((c) => c.severity)).toEqual([
      "error",
      "warning",
      "note",
    ]);
  });

  test("then the one from which more receivers suffer", () => {
    const [one, two] = [alone(finding("a"), finding("r")), alone(finding("b"), finding("s"), finding("t"))];
    const verdicts = ["r", "s", "t"].map((part) => receiver(part, "fails"));
    expect(parts([one, two], setting(verdicts))).toEqual(["b", "a"]);
  });

  // One household each: the one that lost TV and satellite has lost more than the one that lost TV.
  test("then the one that takes more services", () => {
    const [one, two] = [alone(finding("a"), finding("r")), alone(finding("b"), finding("s"))];
    const whole: ServiceVerdict = { service: "tv", wanted: 3, got: 3, missing: [] };
    const verdicts = [
      receiver("r", "fails", lacking(), { ...whole, service: "satellite" }),
      receiver("s", "fails", lacking(), lacking({ service: "satellite" })),
    ];
    expect(parts([one, two], setting(verdicts))).toEqual(["b", "a"]);
  });

  test("then the one from which more outlets suffer, and those count for no service", () => {
    const [one, two] = [alone(finding("a"), finding("r")), alone(finding("b"), finding("s"), finding("t"))];
    const verdicts = [{ ...outlet("r"), services: [lacking()] }, outlet("s"), outlet("t")];
    expect(parts([one, two], setting(verdicts))).toEqual(["b", "a"]);
  });

  test("then the one with more errors and warnings; notes do not count", () => {
    const note = { severity: "note" } as const;
    const few = alone(finding("a"), finding("c", note), finding("d", note), finding("e", note));
    const more = alone(finding("b"), finding("f", { severity: "warning" }));
    expect(parts([few, more], setting([]))).toEqual(["b", "a"]);
    const errors = alone(finding("g"), finding("h"), finding("i"));
    expect(parts([more, errors], setting([]))).toEqual(["g", "b"]);
  });

  test("then the one whose culprit is nearer to the source, and of one culprit what is seen first", () => {
    expect(parts([alone(finding("c")), alone(finding("a")), alone(finding("b"))], setting([]))).toEqual([
      "a",
      "b",
      "c",
    ]);
    const seen = (part: string): Group => alone({ ...finding("a"), at: { part } });
    const places = inHarmOrder([seen("f"), seen("d"), seen("e")], setting([])).map((c) => c.root.at.part);
    expect(places).toEqual(["d", "e", "f"]);
  });
});

test("a cause is the same object while nothing about it changes", () => {
  const group = alone(finding("a"), finding("r"));
  const before = inHarmOrder([group], setting([receiver("r", "fails")]))[0];
  expect(inHarmOrder([{ ...group }], setting([receiver("r", "fails")]))[0]).toBe(before);
  const after = inHarmOrder([group], setting([receiver("r", "works")]))[0];
  expect(after).not.toBe(before);
  expect(after?.receivers).toEqual([]);
  expect(inHarmOrder([alone(group.root)], setting([]))[0]?.findings).toEqual([group.root]);
  const [here, there] = [finding("x"), finding("y")];
  expect(inHarmOrder([alone(group.root, here)], setting([]))[0]?.findings[1]).toBe(here);
  expect(inHarmOrder([alone(group.root, there)], setting([]))[0]?.findings[1]).toBe(there);
});
