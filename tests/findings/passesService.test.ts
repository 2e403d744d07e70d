/** What an input is made for: as parts of each sort are built and sold (common practice). */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { passesService } from "../../src/findings/passesService.ts";
import type { Service } from "../../src/signal/carrier.ts";
import { draw } from "../draw.ts";
import { recordOf } from "./byHand.ts";

const SERVICES: readonly Service[] = ["fm", "dab", "tv", "satellite"];

/** Services that an input of a part takes in. */
function taken(kind: string, input: string, options: Record<string, unknown> = {}): readonly Service[] {
  const record = recordOf(evaluate(draw({ x: [kind, options] }, "")), "x");
  return SERVICES.filter((service) => passesService(record, input, service));
}

describe("an input takes in", () => {
  test("what its filter lets pass: a diplexer on either side, a triplexer on each of three", () => {
    expect(taken("diplexer-combine", "tv")).toEqual(["fm", "dab", "tv"]);
    expect(taken("diplexer-combine", "sat")).toEqual(["satellite"]);
    expect(taken("triplexer-combine", "fm")).toEqual(["fm"]);
    expect(taken("triplexer-combine", "dab")).toEqual(["dab"]);
    expect(taken("triplexer-combine", "uhf")).toEqual(["tv"]);
    expect(taken("filter", "in", { mode: "pass", fromMHz: 470, toMHz: 694 })).toEqual(["tv"]);
  });

  test("all of a line that has no filter", () => {
    expect(taken("splitter", "in", { range: "sat" })).toEqual(["fm", "dab", "tv", "satellite"]);
    expect(taken("cable", "in")).toEqual(["fm", "dab", "tv", "satellite"]);
  });

  test("satellites alone, from the sky and at a trunk of a multiswitch", () => {
    expect(taken("lnb-universal", "sky")).toEqual(["satellite"]);
    expect(taken("multiswitch", "hl")).toEqual(["satellite"]);
    expect(taken("amp-if", "in")).toEqual(["satellite"]);
  });

  test("terrestrial signals at the aerial's input of a multiswitch", () => {
    expect(taken("multiswitch", "ter")).toEqual(["fm", "dab", "tv"]);
  });

  // What it does with it now is no matter.
  test("the same where the part is switched off", () => {
    expect(taken("multiswitch", "hl", { mainsOn: false })).toEqual(["satellite"]);
  });

  test("what its filters leave, however much it loses or amplifies", () => {
    expect(taken("attenuator", "in", { lossDb: 20 })).toEqual(["fm", "dab", "tv", "satellite"]);
    expect(taken("bad-joint", "in", { fault: "open" })).toEqual(["fm", "dab", "tv", "satellite"]);
    expect(taken("cable", "in", { lengthM: 200 })).toEqual(["fm", "dab", "tv", "satellite"]);
    expect(taken("amp-masthead", "in", { takes: "uhf", gainDb: 30 })).toEqual(["tv"]);
  });

  test("nothing where there is no such input", () => {
    expect(taken("splitter", "out1")).toEqual([]);
    expect(taken("splitter", "in9")).toEqual([]);
    expect(taken("receiver-tv", "in")).toEqual([]);
  });
});
