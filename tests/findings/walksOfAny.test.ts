/** Walks of any design, however odd: no gap on a way or in its words, and what they say agrees with the verdicts. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Evaluation } from "../../src/evaluate/evaluation.ts";
import { handedOn } from "../../src/findings/handedOn.ts";
import { receive } from "../../src/findings/reception.ts";
import { tellCommand } from "../../src/sentences/walk/command.ts";
import { type ToldWay, tellSignal } from "../../src/sentences/walk/signal.ts";
import { tellSupply } from "../../src/sentences/walk/supply.ts";
import { WANTED_SERVICES } from "../../src/signal/carrier.ts";
import { anyDesign } from "../arbitraries.ts";
import { everyWay } from "./everyWay.ts";
import { variedExample } from "./varied.ts";

function checkWay(evaluation: Evaluation, way: ToldWay): void {
  const { steps, end, loss } = way;
  const gains = steps.slice(1).reduce((sum, s) => sum + (s.gainDb ?? Number.NaN), 0);
  const last = steps.at(-1);
  if (last) expect((steps[0]?.levelDbuv ?? 0) + gains).toBeCloseTo(last.levelDbuv, 6);
  steps.forEach((step, n) => {
    const before = steps[n - 1];
    if (before) {
      const fed = evaluation.record(step.part)?.joined[step.from ?? ""];
      expect(fed).toEqual([before.part, before.to]);
    }
    for (const figure of [step.levelDbuv, step.cnDb, step.cniDb, step.marginDb, step.centreMHz])
      expect(figure).not.toBeNaN();
  });
  if (end && last) expect(end.levelDbuv).toBeCloseTo(last.levelDbuv, 9);
  // Whatever is not got has a reason; what is got can only be outside its limits.
  if (!way.got) expect(loss).toBeDefined();
  else expect([undefined, "too weak", "too strong"]).toContain(loss?.why);
  if (loss) {
    expect(loss.step).toBeGreaterThanOrEqual(0);
    expect(loss.step).toBeLessThanOrEqual(steps.length);
    if (loss.step < steps.length) expect(steps[loss.step]?.part).toBe(loss.part);
  }
  for (const line of way.lines) {
    expect(line).toMatch(/\.$/);
    expect(line).not.toMatch(/[⟦⟧]|undefined|null|NaN|Infinity/);
  }
}

function checkAll(design: Design): void {
  const evaluation = evaluate(design);
  const sources = evaluation.records.filter((r) => r.kind.family === "receive");
  for (const record of evaluation.records)
    for (const service of WANTED_SERVICES) {
      const ways = everyWay(evaluation, { part: record.part.id, service });
      const sockets = record.kind.delivery?.(record.options).sockets ?? [];
      if (!record.kind.reception && sockets.length === 0) continue;
      for (const way of ways) checkWay(evaluation, way);
      const tally = receive(record, sources)?.services.find((s) => s.service === service);
      const got = ways.filter((w) => w.got).length;
      if (tally) expect(got).toBe(tally.got);
      // The outlet's verdict judges a user band by the worst carrier, the walk by the carrier itself.
      else if (sockets.length > 0 && ways.every((w) => w.userBand === undefined)) {
        const counted = handedOn(record, sockets, service).map(
          ({ band, i }) => `${band.origin.key}#${band.grid.index[i]}`,
        );
        expect(got).toBe(new Set(counted).size);
      }
    }
}

describe("walks of any design", () => {
  test.each(EXAMPLES)("in $key every carrier's steps add up and agree with the verdicts", ({ load }) => {
    checkAll(load());
  });

  test("so they do in any design, however odd", () => {
    fc.assert(
      fc.property(anyDesign({ maxParts: 14, loops: true }), (odd) => {
        checkAll({ ...odd, parts: odd.parts.map((part) => ({ ...part, label: part.id })) });
      }),
      { numRuns: 60 },
    );
  });

  test("and in whole installations with some parts set to anything", () => {
    fc.assert(
      fc.property(variedExample(), (varied) => {
        const evaluation = evaluate(varied);
        for (const { part, kind } of evaluation.records)
          for (const service of kind.reception || kind.delivery ? WANTED_SERVICES : [])
            for (const way of tellSignal(evaluation, { part: part.id, service }).ways)
              checkWay(evaluation, way);
      }),
      { numRuns: 60 },
    );
  });

  test("supplies and commands of any design, however odd, are walked to their ends without a gap in the words", () => {
    fc.assert(
      fc.property(anyDesign({ maxParts: 14, loops: true }), (odd) => {
        const evaluation = evaluate({
          ...odd,
          parts: odd.parts.map((part) => ({ ...part, label: part.id })),
        });
        for (const { part, ports } of evaluation.records)
          for (const port of ports.filter((p) => p.side === "in")) {
            const at = { part: part.id, port: port.id };
            const { steps, lines } = tellSupply(evaluation, at);
            for (const [n, step] of steps.entries()) {
              const isFollowed = steps.some((s) => s.before === n);
              expect(step.end === undefined).toBe(isFollowed);
              expect(step.volts).not.toBeNaN();
            }
            for (const line of [...lines, ...tellCommand(evaluation, at).lines]) {
              expect(line).toMatch(/\.$/);
              expect(line).not.toMatch(/[⟦⟧]|undefined|null|NaN|Infinity/);
            }
          }
      }),
      { numRuns: 60 },
    );
  });
});
