/** A report on a very long line costs as much per part as one on a short line. */
import { expect, test } from "vitest";
import type { Design, Part, Wire } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { reportInSteps } from "../../src/findings/report.ts";
import { kindOf } from "../../src/parts/catalogue.ts";

function part(id: string, kindKey: string, options: Record<string, unknown> = {}): Part {
  const kind = kindOf(kindKey);
  if (!kind) throw new Error(`no kind ${kindKey}`);
  return { id, kind: kindKey, label: id, options: kind.options.parse(options), at: [0, 0] };
}

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

const TITLE =
  "a line of 2 400 taps with a flat each costs as much per tap as a short one, and is not too deep";

test(TITLE, { timeout: 300_000 }, () => {
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
    expect(step.value.findings.length).toBeGreaterThan(0);
    return work / taps;
  };
  expect(cost(2400)).toBeLessThan(cost(100) * 1.5);
});
