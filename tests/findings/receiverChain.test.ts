/**
 * The way to one receiver. What lies on it is read off the drawings of the examples; where the signal is lost is what
 * each example is made to teach.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Design, wireId } from "../../src/design/design.ts";
import { exampleOf } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { type ChainStep, receiverChain } from "../../src/findings/receiverChain.ts";
import { report } from "../../src/findings/report.ts";
import type { Service } from "../../src/signal/carrier.ts";
import { anyDesign } from "../arbitraries.ts";
import { drawn } from "../design/house.ts";

function chainIn(design: Design, receiver: string, service?: Service): readonly ChainStep[] {
  const evaluation = evaluate(design);
  const { verdicts, causes } = report(evaluation);
  const verdict = verdicts.find((v) => v.part === receiver);
  if (!verdict) throw new Error(`no verdict on ${receiver}`);
  return receiverChain(evaluation, verdict, causes, service);
}

const chainOf = (example: string, receiver: string, service?: Service): readonly ChainStep[] => {
  const found = exampleOf(example);
  if (!found) throw new Error(`no example ${example}`);
  return chainIn(found.load(), receiver, service);
};

const ids = (chain: readonly ChainStep[]) => chain.map((step) => step.part);
const sidesOf = (chain: readonly ChainStep[], part: string) =>
  chain.find((step) => step.part === part)?.sides.map(({ from, port }) => `${from}.${port}`);

describe("the way to a receiver", () => {
  test("a television is reached from the aerial for television, whatever else comes in", () => {
    const chain = chainOf("house-universal", "tv1");
    expect(ids(chain)).toEqual(["uhf", "amp", "dip1", "drop1", "plate1", "tv1"]);
    expect(sidesOf(chain, "amp")).toEqual(["fm.out", "dab.out"]);
    expect(sidesOf(chain, "dip1")).toEqual(["lnb.out1"]);
    expect(chain.filter((step) => step.isCable).map((step) => step.part)).toEqual(["drop1"]);
  });

  test("to one outlet it is another way for each service that is asked for", () => {
    expect(ids(chainOf("house-universal", "plate1", "tv"))).toEqual([
      "uhf",
      "amp",
      "dip1",
      "drop1",
      "plate1",
    ]);
    expect(ids(chainOf("house-universal", "plate1", "satellite"))).toEqual([
      "dish",
      "lnb",
      "dip1",
      "drop1",
      "plate1",
    ]);
    expect(ids(chainOf("house-universal", "plate1", "fm"))[0]).toBe("fm");
  });

  test("a satellite receiver in the same room is reached from the dish", () => {
    expect(ids(chainOf("house-universal", "sat1"))).toEqual([
      "dish",
      "lnb",
      "dip1",
      "drop1",
      "plate1",
      "sat1",
    ]);
  });

  test("of four trunks into a multiswitch it goes by the one that the receiver asks for; the others come in beside", () => {
    // Flat 2 asks for vertical, low: the part list of the example.
    const chain = chainOf("block-multiswitch", "sat2");
    const ms = sidesOf(chain, "ms");
    expect(ids(chain).slice(0, 2)).toEqual(["dish", "lnb"]);
    expect(ms).toHaveLength(4);
    // Cables are no names: what comes in is called by the part and output that it comes from.
    expect(ms?.filter((side) => side.startsWith("lnb."))).toHaveLength(3);
  });

  test("each step is joined to the next by the wire that it names", () => {
    for (const receiver of ["tv1", "sat1", "radio1"]) {
      const found = exampleOf("house-universal")?.load();
      const wires = new Map(found?.wires.map((w) => [wireId(w), w] as const));
      const chain = chainOf("house-universal", receiver);
      chain.forEach((step, n) => {
        const wire = wires.get(step.wire ?? "");
        expect(wire && [wire.from[0], wire.to[0]]).toEqual(
          n < chain.length - 1 ? [step.part, chain[n + 1]?.part] : undefined,
        );
      });
    }
  });
});

describe("where it is lost", () => {
  const lost = (chain: readonly ChainStep[]) => chain.filter((step) => step.isLost).map((step) => step.part);
  const failing = (chain: readonly ChainStep[]) =>
    chain.filter((step) => step.fails).map((step) => step.part);

  test("a wideband feed drowns television where the two are brought together, and begins at the LNB", () => {
    const chain = chainOf("house-wideband-fails", "tv1");
    expect(lost(chain)).toEqual(["dip1"]);
    expect(failing(chain)).toEqual(["dip1", "drop1", "plate1", "tv1"]);
    const side = chain.find((step) => step.part === "dip1")?.sides[0];
    expect(side).toMatchObject({ from: "lnb", isCause: true });
  });

  test("a long steel cable is itself the culprit", () => {
    expect(failing(chainOf("long-steel-drop", "sat"))).toEqual(["drop", "plate", "sat"]);
  });

  test("two receivers on one switched output lose it at the splitter", () => {
    expect(lost(chainOf("split-switched-output", "sat1"))).toEqual(["split"]);
  });

  test("nothing is lost on the way to what works, or is not connected", () => {
    expect(failing(chainOf("house-wideband-fails", "tv3"))).toEqual([]);
    expect(chainIn(drawn(["receiver-tv"]), "tv1")).toEqual([
      { part: "tv1", isCable: false, sides: [], isLost: false, fails: false },
    ]);
  });
});

test("any drawing has a way to each of its receivers, without a part twice, and ends there", () => {
  fc.assert(
    fc.property(anyDesign({ maxParts: 20, loops: true }), (design) => {
      const evaluation = evaluate(design);
      const { verdicts, causes } = report(evaluation);
      for (const verdict of verdicts) {
        const chain = receiverChain(evaluation, verdict, causes);
        expect(new Set(ids(chain)).size).toBe(chain.length);
        expect(chain.at(-1)?.part).toBe(verdict.part);
        // Red from one part down to the receiver, never in between.
        const first = chain.findIndex((step) => step.fails);
        expect(chain.filter((step) => step.fails)).toHaveLength(first < 0 ? 0 : chain.length - first);
      }
    }),
    { numRuns: 60 },
  );
});
