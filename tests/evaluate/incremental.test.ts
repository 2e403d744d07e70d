/** EV: whatever a design holds, it evaluates; and an incremental evaluation equals one from scratch. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Evaluation } from "../../src/evaluate/evaluation.ts";
import { report } from "../../src/findings/report.ts";
import { CATALOGUE } from "../../src/parts/catalogue.ts";
import { anyDesign, anyOptions } from "../arbitraries.ts";
import { withOptions } from "../draw.ts";

/** Everything a record says, as plain values: identities of shared objects aside, results must be the same. */
function plain(evaluation: Evaluation): unknown {
  return evaluation.records.map((r) => ({ ...r, kind: r.kind.kind }));
}

/** Every number anywhere in a value. */
function* numbersIn(value: unknown, seen = new Set<unknown>()): Generator<number> {
  if (typeof value === "number") yield value;
  if (typeof value !== "object" || value === null || seen.has(value)) return;
  seen.add(value);
  if (ArrayBuffer.isView(value)) yield* value as Float64Array;
  else for (const inner of Object.values(value)) yield* numbersIn(inner, seen);
}

describe("any design evaluates", () => {
  test("EV1: never a throw, never NaN, whatever is drawn, loops included", () => {
    let carriers = 0;
    fc.assert(
      fc.property(anyDesign({ maxParts: 16, loops: true }), (design) => {
        const evaluation = evaluate(design);
        const said = report(evaluation);
        expect(evaluation.records).toHaveLength(design.parts.length);
        for (const record of evaluation.records)
          for (const n of numbersIn({ ...record, kind: null, part: null })) expect(n).not.toBeNaN();
        for (const n of numbersIn(said)) expect(n).not.toBeNaN();
        for (const { inputs } of evaluation.records)
          for (const { bands } of Object.values(inputs)) carriers += bands[0]?.level.length ?? 0;
      }),
      { numRuns: 150 },
    );
    // Among them were designs with something on their wires.
    expect(carriers).toBeGreaterThan(0);
  });

  test("EV2: parts off a loop compute although others lie on it", () => {
    const { parts, wires } = EXAMPLES[0]?.load() ?? { parts: [], wires: [] };
    const loop = [1, 2].map((n) => ({
      id: `l${n}`,
      kind: "attenuator",
      label: `l${n}`,
      options: { lossDb: 6, dcPass: false },
      at: [0, 0] as const,
    }));
    const design: Design = {
      title: "with a loop",
      parts: [...parts, ...loop],
      wires: [...wires, { from: ["l1", "out"], to: ["l2", "in"] }, { from: ["l2", "out"], to: ["l1", "in"] }],
    };
    const said = report(evaluate(design));
    expect(said.findings.filter((f) => f.rule === "loop").map((f) => f.parts[0])).toEqual(["l1", "l2"]);
    expect(said.verdicts.every((v) => v.state !== "fails")).toBe(true);
    expect(said.verdicts.length).toBeGreaterThan(5);
  });
});

describe("incremental evaluation", () => {
  type Edit = {
    readonly what: "option" | "drop wire" | "add wire" | "drop part" | "move";
    readonly a: number;
    readonly b: number;
  };
  const anyEdit: fc.Arbitrary<Edit> = fc.record({
    what: fc.constantFrom("option", "drop wire", "add wire", "drop part", "move"),
    a: fc.nat(1000),
    b: fc.nat(1000),
  });

  function edited(design: Design, edit: Edit): Design {
    const { parts, wires } = design;
    const part = parts[edit.a % Math.max(1, parts.length)];
    if (!part) return design;
    switch (edit.what) {
      case "option": {
        const kind = CATALOGUE.find((k) => k.kind === part.kind);
        if (!kind) return design;
        const [options] = fc.sample(anyOptions(kind), { numRuns: 1, seed: edit.b });
        return withOptions(design, part.id, options ?? {});
      }
      case "move":
        return { ...design, parts: parts.map((p) => (p === part ? { ...p, at: [edit.b, edit.b] } : p)) };
      case "drop wire":
        return { ...design, wires: wires.filter((_, i) => i !== edit.b % Math.max(1, wires.length)) };
      case "drop part":
        return {
          ...design,
          parts: parts.filter((p) => p !== part),
          wires: wires.filter((w) => w.from[0] !== part.id && w.to[0] !== part.id),
        };
      case "add wire": {
        // Whether legal or not: evaluation must cope, and agree with itself. Loops come about here.
        const other = parts[edit.b % parts.length] ?? part;
        const kindOfPart = CATALOGUE.find((k) => k.kind === part.kind);
        const kindOfOther = CATALOGUE.find((k) => k.kind === other.kind);
        const out = kindOfPart
          ?.ports(part.options)
          .find((p) => p.side === "out" && !wires.some((w) => w.from[0] === part.id && w.from[1] === p.id));
        const into = kindOfOther
          ?.ports(other.options)
          .find((p) => p.side === "in" && !wires.some((w) => w.to[0] === other.id && w.to[1] === p.id));
        if (!out || !into) return design;
        return { ...design, wires: [...wires, { from: [part.id, out.id], to: [other.id, into.id] }] };
      }
    }
  }

  test("EV3: after any edits it equals an evaluation from scratch", () => {
    fc.assert(
      fc.property(
        anyDesign({ maxParts: 14, loops: true }),
        fc.array(anyEdit, { maxLength: 8 }),
        (start, edits) => {
          let design = start;
          let evaluation = evaluate(design);
          for (const edit of edits) {
            design = edited(design, edit);
            evaluation = evaluate(design, evaluation);
            expect(plain(evaluation)).toEqual(plain(evaluate(design)));
          }
        },
      ),
      { numRuns: 120 },
    );
  });

  test("EV4: what an edit cannot touch stays the same object", () => {
    const design = EXAMPLES.find((e) => e.key === "house-universal")?.load();
    if (!design) throw new Error("no example");
    const before = evaluate(design);
    const after = evaluate(withOptions(design, "drop3", { lengthM: 30 }), before);
    const touched = after.records.filter((r, i) => r !== before.records[i]).map((r) => r.part.id);
    expect(touched.sort()).toEqual(["drop3", "plate3", "tv3"]);
    const wire = design.wires.find((w) => w.to[0] === "plate1");
    if (!wire) throw new Error("no wire");
    expect(after.spectrum(wire)).toBe(before.spectrum(wire));
  });

  test("EV5: an edit without effect gives back every record", () => {
    const design = EXAMPLES[0]?.load();
    if (!design) throw new Error("no example");
    const before = evaluate(design);
    const after = evaluate({ ...design, title: "renamed" }, before);
    after.records.forEach((record, i) => {
      expect(record).toBe(before.records[i]);
    });
    expect(after.recomputed).toBe(0);
  });

  test("EV6: a receiver that asks for something else changes its own output only", () => {
    const design = EXAMPLES.find((e) => e.key === "block-multiswitch")?.load();
    if (!design) throw new Error("no example");
    const before = evaluate(design);
    const after = evaluate(withOptions(design, "sat2", { polarisation: "H", half: "high" }), before);
    const outputs = (e: Evaluation) => e.record("ms")?.outputs ?? {};
    for (const n of [1, 3, 4, 5, 6]) expect(outputs(after)[`out${n}`]).toBe(outputs(before)[`out${n}`]);
    expect(outputs(after).out2).not.toBe(outputs(before).out2);
  });
});
