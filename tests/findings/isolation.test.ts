/** Isolation between flats: the worst pair against all pairs, and structures that are large. */
import { describe, expect, test } from "vitest";
import type { Design, Part, Wire } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { finished } from "../../src/evaluate/steps.ts";
import { worstIsolation } from "../../src/findings/isolation.ts";
import { reportInSteps } from "../../src/findings/report.ts";
import { kindOf } from "../../src/parts/catalogue.ts";
import { gainDbAt } from "../../src/signal/gain.ts";

function part(id: string, kindKey: string, options: Record<string, unknown> = {}): Part {
  const kind = kindOf(kindKey);
  if (!kind) throw new Error(`no kind ${kindKey}`);
  return { id, kind: kindKey, label: id, options: kind.options.parse(options), at: [0, 0] };
}

/** One splitter; on each of its outputs a cable of so many metres and the outlet of a flat. */
function star(flats: readonly { readonly dwelling: string; readonly lengthM: number }[]): Design {
  const parts = [part("aerial", "aerial-uhf"), part("split", "splitter", { ways: flats.length })];
  const wires: Wire[] = [{ from: ["aerial", "out"], to: ["split", "in"] }];
  flats.forEach(({ dwelling, lengthM }, n) => {
    parts.push(part(`cable${n}`, "cable", { lengthM }), part(`outlet${n}`, "outlet-tv", { dwelling }));
    wires.push({ from: ["split", `out${n + 1}`], to: [`cable${n}`, "in"] });
    wires.push({ from: [`cable${n}`, "out"], to: [`outlet${n}`, "in"] });
  });
  return { title: "Star", parts, wires };
}

function pairsOf(design: Design) {
  const search = worstIsolation(evaluate(design), 47);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

describe("the worst pair", () => {
  test.each([
    {
      name: "the two shortest ways where they lead to different flats",
      flats: [
        { dwelling: "a", lengthM: 30 },
        { dwelling: "b", lengthM: 10 },
        { dwelling: "c", lengthM: 20 },
      ],
      worst: ["outlet1", "outlet2"],
    },
    {
      name: "the shortest way to another flat where the two shortest lead to one",
      flats: [
        { dwelling: "a", lengthM: 5 },
        { dwelling: "a", lengthM: 6 },
        { dwelling: "b", lengthM: 40 },
        { dwelling: "c", lengthM: 30 },
      ],
      worst: ["outlet0", "outlet3"],
    },
  ])("is $name", ({ flats, worst }) => {
    const [pair, ...more] = pairsOf(star(flats));
    expect(more).toEqual([]);
    expect([...(pair?.outlets ?? [])].sort()).toEqual(worst);
  });

  test("comes to the loss of both legs and the decoupling of the splitter", () => {
    const design = star([
      { dwelling: "a", lengthM: 10 },
      { dwelling: "b", lengthM: 20 },
    ]);
    const evaluation = evaluate(design);
    // The sum by hand: each leg is its cable and its outlet at 47 MHz, both as the parts declare them.
    const loss = (id: string) => {
      const path = evaluation.record(id)?.treatment.paths?.[0];
      return path ? -gainDbAt(path.response, 47) : Number.NaN;
    };
    const legs = ["cable0", "outlet0", "cable1", "outlet1"].reduce((sum, id) => sum + loss(id), 0);
    expect(pairsOf(design)[0]?.isolationDb).toBeCloseTo(legs + 22, 6);
  });
});

/** A line of taps, on each the outlet of a flat of its own, as long as a file may be. */
function tapLine(taps: number): Design {
  const parts = [part("aerial", "aerial-uhf")];
  const wires: Wire[] = [];
  let above: Wire["from"] = ["aerial", "out"];
  for (let n = 0; n < taps; n++) {
    parts.push(part(`tap${n}`, "tap"), part(`outlet${n}`, "outlet-tv", { dwelling: `flat ${n}` }));
    wires.push(
      { from: above, to: [`tap${n}`, "in"] },
      { from: [`tap${n}`, "tap1"], to: [`outlet${n}`, "in"] },
    );
    above = [`tap${n}`, "out"];
  }
  return { title: "Line of taps", parts, wires };
}

test("a line of 2 400 taps with a flat each costs as much per tap as a short one, and is not too deep", () => {
  const cost = (taps: number) => {
    const design = tapLine(taps);
    const known = new Set(design.wires.map((w) => w.from.join()));
    expect(known.size).toBe(design.wires.length);
    const evaluation = evaluate(design);
    expect(evaluation.records.at(-1)?.joined.in).toBeDefined();
    const steps = reportInSteps(evaluation);
    let work = 0;
    let step = steps.next();
    for (; !step.done; step = steps.next()) work = step.value.work;
    expect(finished(reportInSteps(evaluation)).findings.length).toBeGreaterThan(0);
    return work / taps;
  };
  expect(cost(2400)).toBeLessThan(cost(100) * 1.5);
});
