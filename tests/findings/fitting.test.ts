/**
 * What a port offers. Which part usually hangs on which is common practice of the trade, as the request for this list
 * states it; what fits an input at all follows from port rules, which `design/edits/join.ts` holds on its own.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { PortRef } from "../../src/design/design.ts";
import { type Attachment, attach } from "../../src/design/edits/attach.ts";
import { portsOf, wireAt } from "../../src/design/lookup.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { carriedAt } from "../../src/findings/carried.ts";
import { fitsAt } from "../../src/findings/fitting/fits.ts";
import { CATALOGUE } from "../../src/parts/catalogue.ts";
import { anyDesign } from "../arbitraries.ts";
import { draw } from "../draw.ts";

const HOUSE = evaluate(
  draw(
    {
      dish: ["dish"],
      lnb: ["lnb-universal", { outputs: "4" }],
      quattro: ["lnb-quattro"],
      dish2: ["dish"],
      switch: ["multiswitch"],
      uhf: ["aerial-uhf"],
      amp: ["amp-distribution", { outputs: 4 }],
      dip: ["diplexer-combine"],
      drop: ["cable", { lengthM: 16 }],
      plate: ["outlet-diplexed"],
      tv: ["receiver-tv"],
      sat: ["receiver-sat"],
      bare: ["dish"],
    },
    `dish.sky > lnb.sky, dish2.sky > quattro.sky, quattro.vl > switch.vl, uhf.out > amp.in,
     amp.out > dip.tv, lnb.out1 > dip.sat, dip.out > drop.in, drop.out > plate.in`,
  ),
);

/** Kinds of the first parts that a port offers, each once, in their order. */
function offered(part: string, port: string): readonly string[] {
  return [...new Set(fitsAt(HOUSE, [part, port]).map(({ kind }) => kind))];
}

const named = ({ kind, behind }: Attachment): string =>
  behind.length === 0 ? kind : `${kind}(${behind.map(({ attachment }) => named(attachment)).join(" ")})`;

describe("A line carries", () => {
  test("what leads to it, though nobody asks for it yet", () => {
    // The universal LNB has no supply here, so that nothing is on the wire; the line is there for satellites all the same.
    expect(HOUSE.spectrum({ from: ["lnb", "out1"], to: ["dip", "sat"] }).bands).toEqual([]);
    expect(carriedAt(HOUSE, ["lnb", "out2"])).toEqual({ services: new Set(["satellite"]), feed: "switched" });
    expect(carriedAt(HOUSE, ["quattro", "hl"])).toMatchObject({ feed: "planes" });
    expect(carriedAt(HOUSE, ["switch", "out1"])).toMatchObject({ feed: "switched" });
  });

  test("TV and satellite behind a diplexer, and at each socket its own", () => {
    expect(carriedAt(HOUSE, ["drop", "out"]).services).toEqual(new Set(["tv", "satellite"]));
    expect(carriedAt(HOUSE, ["plate", "tv"]).services).toEqual(new Set(["tv"]));
    expect(carriedAt(HOUSE, ["plate", "sat"]).services).toEqual(new Set(["satellite"]));
    expect(carriedAt(HOUSE, ["bare", "sky"]).services).toEqual(new Set(["satellite"]));
    expect(carriedAt(HOUSE, ["tv", "in"]).services).toEqual(new Set());
  });

  test("nothing of its own on a loop", () => {
    const loop = draw({ a: ["cable"], b: ["cable"] }, "a.out > b.in, b.out > a.in");
    expect(carriedAt(evaluate(loop), ["a", "out"]).services).toEqual(new Set());
  });
});

describe("A port offers", () => {
  test("an LNB at the beam of a dish, the universal one first", () => {
    expect(fitsAt(HOUSE, ["bare", "sky"])[0]).toMatchObject({ kind: "lnb-universal", port: "sky" });
    expect(offered("bare", "sky").every((kind) => kind.startsWith("lnb-"))).toBe(true);
    // As it is sold: single, twin, quad, octo.
    const universal = fitsAt(HOUSE, ["bare", "sky"]).filter(({ kind }) => kind === "lnb-universal");
    expect(universal.map(({ options }) => options.outputs)).toEqual([undefined, "2", "4", "8"]);
  });

  test.each([
    { at: ["lnb", "out2"], first: ["cable", "diplexer-combine"], among: "multiswitch" },
    { at: ["quattro", "vh"], first: ["multiswitch"], among: "cable" },
    { at: ["switch", "out1"], first: ["cable", "outlet-sat"], among: "receiver-sat" },
    { at: ["amp", "out2"], first: ["cable", "diplexer-combine"], among: "outlet-tv" },
    { at: ["plate", "tv"], first: ["receiver-tv"], among: "splitter" },
    { at: ["plate", "sat"], first: ["receiver-sat", "receiver-sat-twin"], among: "cable" },
    { at: ["sat", "sat"], first: ["outlet-sat"], among: "multiswitch" },
    { at: ["tv", "in"], first: ["outlet-tv"], among: "cable" },
  ] as const)("at $at what is usual there", ({ at: [part, port], first, among }) => {
    const kinds = offered(part, port);
    expect(kinds.slice(0, first.length)).toEqual(first);
    expect(kinds).toContain(among);
  });

  test("at a socket no receiver of the other service", () => {
    expect(offered("plate", "tv")).not.toContain("receiver-sat");
    expect(offered("plate", "sat")).not.toContain("receiver-tv");
    // An aerial without satellites needs no LNB, and a dish gives no terrestrial TV.
    expect(offered("tv", "in")).not.toContain("lnb-universal");
    expect(offered("sat", "sat")).not.toContain("aerial-uhf");
  });

  test("a room in one go: cable, the outlet for what comes, a receiver at each socket", () => {
    const open = evaluate({
      ...HOUSE.design,
      wires: HOUSE.design.wires.filter(({ from }) => from[0] !== "dip"),
    });
    const [cable, withOutlet, room] = fitsAt(open, ["dip", "out"]);
    expect([cable, withOutlet, room].map((each) => each && named(each))).toEqual([
      "cable",
      "cable(outlet-diplexed)",
      "cable(outlet-diplexed(receiver-tv receiver-sat))",
    ]);
    // As long as the last one that was put in, or as asked.
    expect(cable?.options).toEqual({ lengthM: 16 });
    expect(fitsAt(open, ["dip", "out"], 7.5)[0]?.options).toEqual({ lengthM: 7.5 });
    // 500 m is the longest that a cable can be: beyond it the usual length stands.
    expect(fitsAt(open, ["dip", "out"], 9000)[0]?.options).toEqual({});
  });

  test("nothing where a wire is already, or where there is no such port", () => {
    expect(fitsAt(HOUSE, ["lnb", "out1"])).toEqual([]);
    expect(fitsAt(HOUSE, ["lnb", "out9"])).toEqual([]);
    expect(fitsAt(HOUSE, ["gone", "out"])).toEqual([]);
  });

  test("in any design only what the port rules allow, and every kind that has a port for it is known", () => {
    const kinds = new Set(CATALOGUE.map(({ kind }) => kind));
    fc.assert(
      fc.property(anyDesign({ maxParts: 6 }), fc.nat(), (design, pick) => {
        const free = design.parts.flatMap((part) =>
          portsOf(part)
            .map((port): PortRef => [part.id, port.id])
            .filter((ref) => !wireAt(design, ref)),
        );
        const ref = free[pick % Math.max(1, free.length)];
        if (!ref) return;
        for (const fit of fitsAt(evaluate(design), ref).slice(0, 20)) {
          expect(kinds.has(fit.kind)).toBe(true);
          const edit = attach(design, ref, fit);
          // Refused only because of size, which six parts never reach: `join.ts` is the judge of what may be joined.
          expect(edit.ok).toBe(true);
          if (edit.ok) expect(edit.design.wires.length - design.wires.length).toBe(edit.added.length);
        }
      }),
      { numRuns: 8 },
    );
  });
});
