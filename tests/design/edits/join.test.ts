import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { joinTargets, planJoin, whyNotJoin } from "../../../src/design/edits/join.ts";
import { portsOf } from "../../../src/design/lookup.ts";
import { anyDesign } from "../../arbitraries.ts";
import { drawn, must, ref, wiring } from "../house.ts";

const design = drawn(
  [
    "dish",
    ["lnb-universal", { outputs: "2" }],
    "cable",
    "cable",
    "outlet-tv",
    "receiver-tv",
    ["splitter", { ways: 3 }],
    "receiver-tv",
    "dish",
  ],
  ["dish1/sky > lnb1/sky", "lnb1/out1 > cable1/in", "plate1/tv > tv1/in", "cable2/out > split1/in"],
);

describe("A join", () => {
  test.each([
    {
      name: "a free output to a free input",
      from: "lnb1/out2",
      to: "cable2/in",
      added: "lnb1/out2 > cable2/in",
    },
    { name: "the same, drawn backwards", from: "cable2/in", to: "lnb1/out2", added: "lnb1/out2 > cable2/in" },
    {
      name: "parts of different branches",
      from: "cable1/out",
      to: "cable2/in",
      added: "cable1/out > cable2/in",
    },
  ])("is made for $name", ({ from, to, added }) => {
    expect(whyNotJoin(design, ref(from), ref(to))).toBeNull();
    expect(wiring(must(planJoin(design, ref(from), ref(to))))).toEqual([...wiring(design), added]);
  });

  test.each([
    {
      name: "taken output",
      from: "lnb1/out1",
      to: "cable2/in",
      reason: "“Universal LNB 1” has no free out 1 output. It is connected to “Cable 1” already.",
    },
    {
      name: "taken input",
      from: "cable1/out",
      to: "tv1/in",
      reason: "“TV set 1” has no free input. It is connected to “Outlet, TV 1” already.",
    },
    {
      name: "two outputs",
      from: "lnb1/out2",
      to: "cable1/out",
      reason:
        "“Universal LNB 1” (out 2) and “Cable 1” are both outputs; a wire leads from an output to an input.",
    },
    {
      name: "two inputs",
      from: "plate1/in",
      to: "tv2/in",
      reason: "“Outlet, TV 1” and “TV set 2” are both inputs; a wire leads from an output to an input.",
    },
    {
      name: "a beam into a cable",
      from: "dish2/sky",
      to: "cable2/in",
      reason: "“Dish 2” is the beam of a dish and needs an LNB; “Cable 2” takes a coaxial cable.",
    },
    {
      name: "itself",
      from: "cable1/out",
      to: "cable1/in",
      reason: "“Cable 1” cannot be connected to itself.",
    },
    {
      name: "the same port",
      from: "cable1/out",
      to: "cable1/out",
      reason: "A wire needs two different ports.",
    },
    {
      name: "a circle",
      from: "split1/out2",
      to: "cable2/in",
      reason: "“Cable 2” already feeds “Splitter 1”: the signal would run in a circle.",
    },
    {
      name: "a part that is gone",
      from: "amp7/out",
      to: "cable2/in",
      reason: "One of the two ports is no longer in the design.",
    },
    {
      name: "a port that is gone",
      from: "split1/out4",
      to: "tv2/in",
      reason: "One of the two ports is no longer in the design.",
    },
  ])("is refused for $name", ({ from, to, reason }) => {
    expect(whyNotJoin(design, ref(from), ref(to))).toBe(reason);
    expect(planJoin(design, ref(from), ref(to))).toEqual({ ok: false, reason });
  });

  test("a converter without dish tells what it needs", () => {
    const lone = drawn(["lnb-universal", "cable"]);
    expect(whyNotJoin(lone, ref("cable1/out"), ref("lnb1/sky"))).toBe(
      "“Universal LNB 1” needs a dish before it; “Cable 1” leads into a coaxial cable.",
    );
  });

  test("the lit targets are exactly the ports that can be joined, for any design", () => {
    fc.assert(
      fc.property(anyDesign({ maxParts: 10 }), (any) => {
        const all = any.parts.flatMap((part) => portsOf(part).map((port) => ref(`${part.id}/${port.id}`)));
        for (const from of all) {
          const possible = all.filter((to) => whyNotJoin(any, from, to) === null);
          expect(joinTargets(any, from)).toEqual(possible);
        }
      }),
      { numRuns: 40 },
    );
  });
});
