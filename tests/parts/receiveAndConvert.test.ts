/** What holds for every kind of the families "receive" and "convert", whatever its options. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { AnyOptions, PartKind } from "../../src/parts/contract.ts";
import { LNBS } from "../../src/parts/convertLnb.ts";
import { STACKERS } from "../../src/parts/convertStack.ts";
import { fieldMeta } from "../../src/parts/fields.ts";
import { MULTISWITCHES } from "../../src/parts/multiswitch.ts";
import { POSITION_SWITCHES } from "../../src/parts/positionSwitch.ts";
import { RECEIVE } from "../../src/parts/receive.ts";
import { anyOptions } from "./anyOptions.ts";
import { runPart, speaker } from "./workbench.ts";

const KINDS = [...RECEIVE, ...LNBS, ...STACKERS, ...MULTISWITCHES, ...POSITION_SWITCHES].map((kind) => ({
  name: kind.kind,
  kind,
}));
const RUNS = { numRuns: 60 };

const idsOf = (kind: PartKind, o: AnyOptions, side: "in" | "out") =>
  new Set(
    kind
      .ports(o)
      .filter((p) => p.side === side)
      .map((p) => p.id),
  );

describe.each(KINDS)("$name", ({ kind }) => {
  test("has complete defaults that say where they come from", () => {
    const defaults = kind.options.parse({});
    for (const [key, field] of Object.entries(kind.options.shape)) {
      const meta = fieldMeta(field);
      expect([key, meta?.label.length]).not.toEqual([key, 0]);
      expect([key, defaults[key]]).not.toEqual([key, undefined]);
      // A number that is not simply "nothing" must name its source.
      if (meta?.control === "number" && defaults[key] !== 0 && meta.unit && meta.unit !== "m")
        expect([key, meta.source?.length ?? 0]).not.toEqual([key, 0]);
    }
    // Options survive the file: parsing once more changes nothing.
    expect(kind.options.parse(JSON.parse(JSON.stringify(defaults)))).toEqual(defaults);
  });

  test("refers only to ports it has, each id once, and reaches every output", () => {
    fc.assert(
      fc.property(anyOptions(kind), (o) => {
        const inputs = idsOf(kind, o, "in");
        const outputs = idsOf(kind, o, "out");
        expect(inputs.size + outputs.size).toBe(kind.ports(o).length);
        const power = kind.power(o);
        const t = kind.signal(o, { id: "part", powered: true });
        const switches = new Map((power.switches ?? []).map((s) => [s.port, s]));
        const reached = new Set((t.emits ?? []).map((e) => e.port).filter((port) => !port.startsWith("#")));
        for (const path of t.paths ?? []) {
          if (!path.from.startsWith("#")) expect(inputs).toContain(path.from);
          if (!path.to.startsWith("#")) reached.add(path.to);
          if (path.condition) expect(switches.has(path.condition.port)).toBe(true);
        }
        for (const stack of t.stacks ?? []) {
          reached.add(stack.to);
          expect(switches.get(stack.to)?.by).toBe("stack");
        }
        expect(reached).toEqual(outputs);

        for (const path of power.paths ?? []) {
          expect(outputs).toContain(path.from);
          expect(inputs).toContain(path.to);
        }
        for (const supply of power.supplies ?? [])
          expect(supply.down ? outputs : inputs).toContain(supply.port);
        // By outputs, or by inputs where the head end feeds it; never by both.
        const sides = new Set((power.load?.ports ?? []).map((port) => inputs.has(port)));
        expect(sides.size).toBeLessThan(2);
        for (const port of power.load?.ports ?? []) expect([...inputs, ...outputs]).toContain(port);
        for (const port of switches.keys()) expect(outputs).toContain(port);
      }),
      RUNS,
    );
  });

  test("has a path for every setting that its switches can take, and for no other", () => {
    fc.assert(
      fc.property(anyOptions(kind), (o) => {
        const paths = kind.signal(o, { id: "part", powered: true }).paths ?? [];
        for (const s of kind.power(o).switches ?? []) {
          const used = new Set(
            paths.filter((p) => p.condition?.port === s.port).map((p) => p.condition?.setting),
          );
          const positions = Array.from({ length: s.positions }, (_, i) => String(i + 1));
          const quadrants = ["VL", "VH", "HL", "HH"];
          const expected = {
            quadrant: quadrants,
            polarisation: ["V", "H"],
            position: positions,
            both: positions.flatMap((n) => quadrants.map((q) => `${n}:${q}`)),
            stack: [],
          }[s.by];
          expect([...used].sort()).toEqual([...expected].sort());
        }
      }),
      RUNS,
    );
  });

  test("never yields a level or a noise that is not a number, with or without supply", () => {
    const [dish] = RECEIVE;
    const sky = dish ? runPart({ kind: dish }).bands("sky") : [];
    fc.assert(
      fc.property(anyOptions(kind), fc.boolean(), (o, fed) => {
        const inputs = Object.fromEntries([...idsOf(kind, o, "in")].map((id) => [id, sky]));
        const outputs = [...idsOf(kind, o, "out")];
        const feed = speaker({ polarisation: "H", half: "high" });
        const speakers = fed ? Object.fromEntries(outputs.map((id) => [id, feed])) : {};
        const bench = runPart({ kind, options: o, inputs, speakers });
        for (const band of outputs.flatMap((id) => [...bench.bands(id)])) {
          expect(band.level.every(Number.isFinite)).toBe(true);
          expect(band.noise.every((x) => Number.isFinite(x) && x >= 0)).toBe(true);
          expect(band.grid.centre.every((f) => f > 0)).toBe(true);
        }
        expect(kind.caption(o).length).toBeGreaterThan(0);
        expect(kind.caption(o)).not.toMatch(/NaN|undefined|Infinity/);
      }),
      { numRuns: 25 },
    );
  });
});
