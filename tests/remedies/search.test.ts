/** CS: the search for cures keeps its promises, whatever is wrong with a design. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { wireId } from "../../src/design/design.ts";
import { removeParts } from "../../src/design/edits/remove.ts";
import { EXAMPLES, exampleOf } from "../../src/design/examples.ts";
import { readDesign, writeDesign } from "../../src/design/file.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { WEIGHT } from "../../src/findings/causes/fold.ts";
import type { Finding, Report, Verdict } from "../../src/findings/finding.ts";
import { report } from "../../src/findings/report.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import { kindOf } from "../../src/parts/catalogue.ts";
import type { Proposal } from "../../src/remedies/proposal.ts";
import { type SearchProgress, search } from "../../src/remedies/search.ts";
import { anyOptions } from "../arbitraries.ts";
import { draw } from "../draw.ts";

const prices = PLACEHOLDER_PRICES;

function example(key: string): Design {
  const found = exampleOf(key);
  if (!found) throw new Error(`no example ${key}`);
  return found.load();
}

function found(design: Design, options: { target?: Finding; maxTrials?: number } = {}): readonly Proposal[] {
  let last: readonly Proposal[] = [];
  for (const { proposals } of search(design, { prices, ...options })) last = proposals;
  return last;
}

/** Judged from scratch: no object of the design has been seen before, so nothing is remembered of it. */
function judged(design: Design): Report {
  return report(evaluate(structuredClone(design)));
}

function errorsOf(of: Report): readonly Finding[] {
  return of.findings.filter((f) => f.severity === "error");
}

/** What a cure promises: a cause less or a receiver that gets more, no new error, and nobody who receives less than before. */
function expectKept(before: Report, proposal: Proposal): void {
  const after = judged(proposal.design);
  const standing = new Set(
    after.causes.filter((c) => c.severity !== "note").flatMap((c) => c.findings.map((f) => f.id)),
  );
  const isGone = before.causes.some((c) => c.severity === "error" && !standing.has(c.id));
  const receivedIn = ({ verdicts }: Report) =>
    verdicts.filter((v) => v.role === "receiver").reduce((sum, v) => sum + receivedBy(v), 0);
  const errorCauses = ({ causes }: Report) => causes.filter((c) => c.severity === "error").length;
  const isLess = isGone || errorCauses(after) < errorCauses(before);
  expect(isLess || receivedIn(after) > receivedIn(before)).toBe(true);
  const known = new Set(errorsOf(before).map((f) => f.id));
  expect(errorsOf(after).filter((f) => !known.has(f.id))).toEqual([]);
  for (const was of before.verdicts.filter((v) => v.role === "receiver")) {
    const is = after.verdicts.find((v) => v.part === was.part);
    if (was.state !== "fails") expect(is?.state).not.toBe("fails");
    for (const service of was.services)
      expect(is?.services.find((s) => s.service === service.service)?.got ?? 0).toBeGreaterThanOrEqual(
        service.got,
      );
  }
  const weightBefore = new Map(before.findings.map((f) => [f.id, WEIGHT[f.severity]]));
  const came = after.findings.filter((f) => WEIGHT[f.severity] < (weightBefore.get(f.id) ?? Infinity));
  expect(new Set(proposal.proof.caused.map((f) => f.id))).toEqual(new Set(came.map((f) => f.id)));
}

/** Carriers, tuners, and how the receiver stands: the surer it gets as many, the more. */
function receivedBy({ services, tuners, state }: Verdict): number {
  const carriers = services.reduce((sum, s) => sum + s.got, 0) + tuners.reduce((sum, t) => sum + t.got, 0);
  return carriers + { fails: 0, edge: 1, works: 2 }[state];
}

describe("From a failing example to one that works, by proposals alone", () => {
  test.each(["house-wideband-fails", "split-switched-output", "long-steel-drop"])("CS1: %s", (key) => {
    const [best] = found(example(key));
    if (!best) throw new Error("no proposal");
    const after = judged(best.design);
    expect(errorsOf(after)).toEqual([]);
    expect(after.verdicts.filter((v) => v.role === "receiver").every((v) => v.state !== "fails")).toBe(true);
  });

  test("CS2: the house with a wideband LNB works with a stacking converter under the roof, and nothing else", () => {
    const one = found(example("house-wideband-fails")).find((p) => p.steps[0]?.idea === "stack-under-roof");
    expect(one?.steps).toHaveLength(1);
    expect(one?.cost.newCables).toBe(0);
    expect(one?.givesUp).toEqual([]);
    const receivers = one?.design.parts.filter((p) => p.kind === "receiver-stacked") ?? [];
    expect(receivers.map((p) => p.id)).toEqual(["sat1", "sat2"]);
  });

  test("CS3: what gives tuners up says so, and stands behind what does not", () => {
    // A receiver of 8 tuners for wideband feeds on a quattro LNB: a universal one feeds but two tuners.
    const wideband = draw(
      { hub: ["receiver-hybrid"], lnb: ["lnb-quattro"], dish: ["dish", { diameterM: 0.8 }] },
      "dish.sky > lnb.sky, lnb.vl > hub.v, lnb.hl > hub.h",
    );
    const proposals = found(wideband);
    const giving = proposals.findIndex((p) => p.givesUp.length > 0);
    expect(proposals[giving]?.givesUp[0]?.before).toBe(8);
    expect(proposals.slice(0, giving).every((p) => p.givesUp.length === 0)).toBe(true);
  });

  test("CS4: proposals for one finding stand in the order of work, price and 30 for each new cable together, where none has drawbacks", () => {
    const design = example("split-switched-output");
    const target = judged(design).findings.find((f) => f.rule === "switched-output-shared");
    if (!target) throw new Error("the rule is silent");
    const trouble = found(design, { target })
      .filter((p) => p.givesUp.length === 0)
      .map((p) => p.cost.workMinutes + p.cost.partsPrice + 30 * p.cost.newCables);
    expect(trouble.length).toBeGreaterThan(1);
    expect(trouble).toEqual([...trouble].sort((a, b) => a - b));
  });
});

describe("Combinations", () => {
  // A receiver behind a DC block and a broken joint: neither cure alone feeds the LNB. Common practice, no source.
  const twoFaults = draw(
    {
      dish: ["dish"],
      lnb: ["lnb-universal"],
      bad: ["bad-joint", { fault: "open" }],
      block: ["dc-block"],
      r: ["receiver-sat"],
    },
    "dish.sky > lnb.sky, lnb.out > bad.in, bad.out > block.in, block.out > r.sat",
  );

  test("CS5: two faults in one line are cured by two steps", () => {
    const [best] = found(twoFaults);
    expect(best?.steps.map((s) => s.idea).sort()).toEqual(["block-away", "sound-joint"]);
    expect(best && errorsOf(judged(best.design))).toEqual([]);
  });

  test("CS6: no proposal holds a step without which it cures as much", () => {
    const singles = new Set(
      EXAMPLES.flatMap((e) => found(e.load(), { maxTrials: 60 })).flatMap((p) =>
        p.steps.length === 1 ? [p.id] : [],
      ),
    );
    for (const e of EXAMPLES)
      for (const p of found(e.load(), { maxTrials: 60 }))
        if (p.steps.length > 1) for (const id of p.id.split(" + ")) expect(singles.has(id)).toBe(false);
  });
});

describe("The search", () => {
  test("CS7: tries no more than it may, and can be stopped at any trial", () => {
    const design = example("house-wideband-fails");
    let last: SearchProgress | undefined;
    for (const progress of search(design, { prices, maxTrials: 7 })) last = progress;
    expect(last?.tried).toBeLessThanOrEqual(7 + 3);
    const steps = search(design, { prices });
    expect(steps.next().done).toBe(false);
    steps.return({ tried: 0, proposals: [] });
    expect(steps.next().done).toBe(true);
  });

  test("CS8: has nothing to propose where nothing is wrong", () => {
    expect(found(example("house-universal"))).toEqual([]);
    expect(found({ title: "Empty", parts: [], wires: [] })).toEqual([]);
  });

  test("CS9: leaves the design itself as it is", () => {
    const design = example("house-wideband-fails");
    const text = writeDesign(design);
    found(design, { maxTrials: 30 });
    expect(writeDesign(design)).toBe(text);
  });

  test("CS10: puts new parts where no other part stands", () => {
    for (const { design } of found(example("house-wideband-fails"))) {
      const places = design.parts.map((p) => p.at.join());
      expect(new Set(places).size).toBe(places.length);
    }
  });
});

/** An example with one or two faults: a wire off, or a part with any other options. */
const broken: fc.Arbitrary<Design> = fc
  .constantFrom(...EXAMPLES.filter((e) => !e.key.startsWith("block")).map((e) => e.load()))
  .chain((design) => {
    const wireOff = fc.constantFrom(...design.wires).map((wire) => (d: Design): Design => {
      const edit = removeParts(d, new Set(), new Set([wireId(wire)]));
      return edit.ok ? edit.design : d;
    });
    const misfit = fc.constantFrom(...design.parts).chain((part) => {
      const kind = kindOf(part.kind);
      if (!kind) throw new Error(`no kind ${part.kind}`);
      return anyOptions(kind).map((options) => (d: Design): Design => {
        const ports = new Set(kind.ports(options).map((p) => p.id));
        const fits = (end: readonly [string, string]) => end[0] !== part.id || ports.has(end[1]);
        return {
          ...d,
          parts: d.parts.map((p) => (p.id === part.id ? { ...p, options } : p)),
          wires: d.wires.filter((w) => fits(w.from) && fits(w.to)),
        };
      });
    });
    return fc
      .array(fc.oneof(wireOff, misfit), { minLength: 1, maxLength: 2 })
      .map((faults) => faults.reduce((d, fault) => fault(d), design));
  });

test("CS11: no cure is ever proposed unproved, whatever the fault", { timeout: 120_000 }, () => {
  let proposed = 0;
  fc.assert(
    fc.property(broken, (design) => {
      const before = judged(design);
      if (errorsOf(before).length === 0) return;
      for (const proposal of found(design, { maxTrials: 25 })) {
        proposed++;
        expectKept(before, proposal);
        expect(readDesign(writeDesign(proposal.design))).toEqual({
          ok: true,
          design: proposal.design,
          notes: [],
        });
      }
    }),
    { numRuns: 60 },
  );
  // A search that never finds anything would keep every promise.
  expect(proposed).toBeGreaterThan(20);
});
