/** The evaluator's notes on one part, and the record that they become. */
import { describe, expect, test } from "vitest";
import type { Part } from "../../src/design/design.ts";
import { newCell, recordOf, traitsOf } from "../../src/evaluate/cell.ts";
import type { Drive, Meeting } from "../../src/evaluate/evaluation.ts";
import type { PortResult } from "../../src/evaluate/signals.ts";
import { defaultOptions, kindOf } from "../../src/parts/catalogue.ts";
import type { Band } from "../../src/signal/band.ts";
import { bandOf, switchAt } from "../signal/bands.ts";

function partOf(kind: string): Part {
  const known = kindOf(kind);
  return { id: "p", kind, label: "p", options: known ? defaultOptions(known) : {}, at: [0, 0] };
}

describe("what follows from kind and options", () => {
  test("ports by their side, and what the kind declares", () => {
    const part = partOf("splitter");
    const traits = traitsOf(part);
    expect(traits.kind.kind).toBe("splitter");
    expect(traits.inputs).toEqual(["in"]);
    expect(traits.outputs).toEqual(["out1", "out2"]);
    expect(traits.ports.map((p) => p.id)).toEqual(["in", "out1", "out2"]);
    expect(traits.options).toBe(part.options);
    expect(traits.power.paths).toHaveLength(2);
  });

  test("is worked out once for the same options of the same kind", () => {
    const part = partOf("splitter");
    const traits = traitsOf(part);
    expect(traitsOf({ ...part, id: "other", label: "x" })).toBe(traits);
    expect(traitsOf({ ...part, options: { ...part.options } })).not.toBe(traits);
    // The same options could be another kind's.
    expect(traitsOf({ ...part, kind: "combiner" }).kind.kind).toBe("combiner");
  });

  test("of a kind that is not known: nothing", () => {
    const traits = traitsOf(partOf("of-another-version"));
    expect(traits).toMatchObject({ ports: [], inputs: [], outputs: [], power: {} });
    expect(traits.kind.signal({}, { id: "p", powered: true })).toEqual({});
    expect(traits.kind.reception).toBeUndefined();
  });
});

const result = (o: Partial<PortResult> = {}): PortResult => ({
  spectrum: { bands: [] },
  meetings: [],
  drives: [],
  omitted: undefined,
  work: 0,
  gate: undefined,
  ...o,
});

function recorded(o: Partial<ReturnType<typeof newCell>> = {}) {
  const part = partOf("splitter");
  return recordOf({ ...newCell(part, traitsOf(part), { looped: false, joined: {} }), ...o });
}

describe("a record", () => {
  test("of a part about which nothing is known yet is empty, and powered", () => {
    const part = partOf("splitter");
    const joined = { in: ["a", "out"] } as const;
    const record = recordOf(newCell(part, traitsOf(part), { looped: true, joined }));
    expect(record).toEqual({
      part,
      kind: traitsOf(part).kind,
      deadEnds: {},
      options: part.options,
      ports: traitsOf(part).ports,
      power: traitsOf(part).power,
      treatment: {},
      looped: true,
      powered: true,
      joined,
      inputs: {},
      outputs: {},
      feeds: {},
      offers: {},
      demands: {},
      switches: {},
      drawsMa: 0,
      shutDown: [],
      shorts: [],
      meetings: [],
      drives: [],
      work: 0,
      sources: [],
    });
  });

  test("holds the spectrum of every output, what met and was driven there, and the work of all", () => {
    const spectrum = { bands: [bandOf()] };
    const drive = (port: string): Drive => ({
      from: "in",
      port,
      rule: "beats",
      carriers: 2,
      levelDbuv: 100,
      totalDbuv: 103,
      allowedDbuv: 104,
      ratioDb: 60,
    });
    const record = recorded({
      results: {
        out1: result({ spectrum, drives: [drive("out1")], work: 17 }),
        out2: result({ drives: [drive("out2")], work: 3 }),
      },
    });
    expect(record.outputs.out1).toBe(spectrum);
    expect(Object.keys(record.outputs)).toEqual(["out1", "out2"]);
    expect(record.drives.map((d) => d.port)).toEqual(["out1", "out2"]);
    expect(record.work).toBe(20);
    expect(record).not.toHaveProperty("omitted");
  });

  test("says all that was left out, by supplies and by switches", () => {
    expect(recorded({ suppliesLeft: 3 }).omitted).toEqual({ supplies: 3 });
    expect(recorded({ suppliesLeft: 0 })).not.toHaveProperty("omitted");
    const results = {
      out1: result({ omitted: { alternatives: 5 } }),
      out2: result({ omitted: { behindSwitches: 12 } }),
    };
    expect(recorded({ results }).omitted).toEqual({ alternatives: 5, behindSwitches: 12 });
    expect(recorded({ results, suppliesLeft: 1 }).omitted).toEqual({
      supplies: 1,
      alternatives: 5,
      behindSwitches: 12,
    });
  });
});

describe("meetings that several outputs report", () => {
  const meeting = (victim: Band, other: Band, port = "#node"): Meeting => ({
    victim,
    other,
    port,
    echo: false,
    carriers: [0],
    ciDb: [10],
    fromMHz: 470,
    toMHz: 478,
  });
  const [a, b, c] = [bandOf({ from: "a" }), bandOf({ from: "b" }), bandOf({ from: "c" })];
  const kept = (...meetings: Meeting[]) =>
    recorded({
      results: {
        out1: result({ meetings: meetings.slice(0, 1) }),
        out2: result({ meetings: meetings.slice(1) }),
      },
    }).meetings;

  test("are in the record once", () => {
    const first = meeting(a, b);
    expect(kept(first, meeting(a, b), meeting({ ...a }, { ...b }))).toEqual([first]);
    expect(kept(first)[0]).toBe(first);
  });

  const at = switchAt("s", "1");
  test.each([
    { name: "another port", other: meeting(a, b, "out2") },
    { name: "another victim", other: meeting(c, b) },
    { name: "another disturber", other: meeting(a, c) },
    { name: "the other way round", other: meeting(b, a) },
    { name: "another half of the victim", other: meeting({ ...a, half: "low" }, b) },
    { name: "another setting of a switch", other: meeting(a, { ...b, conditions: [{ at, setting: "1" }] }) },
  ])("are two where they differ: $name", ({ other }) => {
    expect(kept(meeting(a, b), other)).toHaveLength(2);
  });
});
