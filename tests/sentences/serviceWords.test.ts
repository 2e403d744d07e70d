/** Television is named by the way it comes: DVB-C is cable television, whatever brings it. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { profileOf } from "../../src/findings/limits.ts";
import { report } from "../../src/findings/report.ts";
import { checkRecordOf } from "../../src/sentences/check/record.ts";
import { symptomName } from "../../src/sentences/faults/reasonWords.ts";
import { limitedName, serviceNameIn } from "../../src/sentences/serviceWords.ts";
import { customerVerdict } from "../../src/sentences/verdict.ts";
import { draw, type Sketch } from "../draw.ts";

const named = (parts: Sketch) => serviceNameIn(evaluate(draw(parts, "")), "tv");

describe("television of a design is called", () => {
  test.each<{ name: string; parts: Sketch }>([
    { name: "Terrestrial TV", parts: { a: ["aerial-uhf"], tv: ["receiver-tv"] } },
    { name: "Terrestrial TV", parts: { m: ["modulator"] } },
    { name: "Cable TV", parts: { c: ["cable-entry"] } },
    { name: "Cable TV", parts: { c: ["cable-entry"], m: ["modulator", { mode: "dvbc-256qam" }] } },
    { name: "Terrestrial and cable TV", parts: { c: ["cable-entry"], a: ["aerial-uhf"] } },
    // Nobody sends any: a TV set then lacks what an aerial would bring.
    { name: "Terrestrial TV", parts: { tv: ["receiver-tv"] } },
  ])("$name with $parts", ({ name, parts }) => {
    expect(named(parts)).toBe(name);
  });

  test("and other services by their own names", () => {
    const evaluation = evaluate(draw({ c: ["cable-entry"] }, ""));
    expect(serviceNameIn(evaluation, "fm")).toBe("FM radio");
    expect(serviceNameIn(evaluation, "satellite")).toBe("Satellite");
  });

  test("in what is noticed of a fault, and in the record of a finding", () => {
    const evaluation = evaluate(
      draw({ c: ["cable-entry", { levelDbuv: 30 }], tv: ["receiver-tv"] }, "c.out > tv.in"),
    );
    expect(symptomName({ part: "tv", service: "tv" }, evaluation)).toBe("Cable TV");
    const services = checkRecordOf(evaluation, report(evaluation)).findings.map((f) => f.service);
    expect(services).toContain("Cable TV");
    expect(services).not.toContain("Terrestrial TV");
  });

  // EN 60728-1 has rows for DVB-T and for DVB-C (facts of the standard as quoted); a limit for both is for both.
  test("and a limit that holds for both by both", () => {
    expect(limitedName("tv", profileOf({}).rows)).toBe("Terrestrial and cable TV");
    expect(limitedName("tv", [{ service: "tv", mode: "dvbt-" }])).toBe("Terrestrial TV");
  });

  test("and by the cable network for whoever pays", () => {
    const said = (parts: Sketch, wires: string) =>
      report(evaluate(draw(parts, wires))).verdicts.map((verdict) => customerVerdict(verdict));
    expect(said({ c: ["cable-entry", { levelDbuv: 62 }], tv: ["receiver-tv"] }, "c.out > tv.in")).toEqual([
      "Gets all of the television channels from the cable network.",
    ]);
    expect(said({ a: ["aerial-uhf"], tv: ["receiver-tv"] }, "a.out > tv.in")).toEqual([
      "Gets all of the television channels from the aerial.",
    ]);
  });
});
