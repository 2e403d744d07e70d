/**
 * Satellite installations: a converter that lives at 18 V only, positions that are not there, a second satellite from
 * which nothing comes. Who is to be named is common practice, no source, unless a source stands beside it.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { report } from "../../../src/findings/report.ts";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";

const verdictAt = (design: ReturnType<typeof draw>, part: string) =>
  report(evaluate(design)).verdicts.find((v) => v.part === part);

describe("a converter that dies as soon as vertical is asked for", () => {
  // 200 mA through 10 Ω take 2 V: 16 V are left of 18 V, and 11 V of 13 V, where 11.5 V are needed (EN 61319-1 cl. 5.2,
  // from memory). 0.072 V go on two metres of cable of 36 Ω/km at most.
  const quad = (polarisation: string, neighbour: Sketch[string]) =>
    draw(
      {
        b: neighbour,
        a: ["receiver-sat", { polarisation, volts18: 18.2 }],
        j: ["bad-joint", { fault: "corroded", ohms: 10, lossDb: 0 }],
        m: ["lnb-universal", { outputs: "2", commonMa: 200, outputMa: 0 }],
        k: ["dish", { diameterM: 0.8 }],
      },
      "k.sky > m.sky, m.out1 > j.in, j.out > a.sat, m.out2 > b.sat",
    );
  const off = ["receiver-sat", { state: "unplugged" }] as const;

  test.each(["H", "V"])("its receiver has no vertical, asking for %s now", (polarisation) => {
    const design = quad(polarisation, off);
    expect(foundBy("no-supply", design)).toMatchObject([{ severity: "error", parts: ["j", "m", "a"] }]);
    const verdict = verdictAt(design, "a");
    expect(verdict?.state).toBe("fails");
    // Of the invented plan of 80 transponders half are vertical; without any supply now, nothing comes at all.
    expect(verdict?.services).toMatchObject([{ wanted: 80, got: polarisation === "H" ? 40 : 0 }]);
  });

  test("a neighbour on another output keeps it alive", () => {
    const design = quad("H", ["receiver-sat"]);
    expect(foundBy("no-supply", design)).toEqual([]);
    expect(verdictAt(design, "a")).toMatchObject({ services: [{ wanted: 80, got: 80 }] });
  });
});

test("a position that the switch does not have is named with the receiver", () => {
  const design = draw(
    {
      a: ["receiver-sat", { position: "4" }],
      w: ["position-switch"],
      m2: ["lnb-universal"],
      m1: ["lnb-universal"],
      k2: ["dish"],
      k1: ["dish"],
    },
    "k1.sky > m1.sky, k2.sky > m2.sky, m1.out > w.in1, m2.out > w.in2, w.out > a.sat",
  );
  expect(foundBy("command-lost", design)).toMatchObject([
    { severity: "error", parts: ["a", "w"], facts: { kind: "no such position", asked: 4, positions: 2 } },
  ]);
});

describe("a second satellite at a multiswitch", () => {
  const PLANES = ["vl", "vh", "hl", "hh"];
  const two = (position: string, second: "on its dish" | "without dish" | "not plugged in") =>
    draw(
      {
        b: ["receiver-sat", { position }],
        a: ["receiver-sat", { position: "1" }],
        u: ["multiswitch", { terrestrial: false, satelliteInputs: "8", outputs: 4 }],
        m2: ["lnb-quattro"],
        m1: ["lnb-quattro"],
        k2: ["dish"],
        k1: ["dish"],
      },
      [
        "u.out1 > a.sat, u.out3 > b.sat, k1.sky > m1.sky",
        ...PLANES.map((p) => `m1.${p} > u.${p}`),
        ...(second === "not plugged in" ? [] : PLANES.map((p) => `m2.${p} > u.${p}2`)),
        ...(second === "without dish" ? [] : ["k2.sky > m2.sky"]),
      ].join(", "),
    );
  const missed = (design: ReturnType<typeof draw>) =>
    foundBy("not-connected", design).filter((f) => f.severity === "error");

  test("its LNB without a dish is named, also before anybody asks for it", () => {
    expect(missed(two("2", "without dish"))).toMatchObject([
      { at: { part: "m2", port: "sky" }, parts: ["m2", "b"] },
    ]);
    expect(missed(two("1", "without dish"))).toMatchObject([{ at: { part: "m2", port: "sky" } }]);
  });

  test("open inputs are named as soon as somebody asks for them", () => {
    expect(missed(two("2", "not plugged in"))).toMatchObject([
      { parts: ["u", "b"], facts: { kind: "missed", ports: ["vl2", "vh2", "hl2", "hh2"], receivers: ["b"] } },
    ]);
    expect(missed(two("1", "not plugged in"))).toEqual([]);
  });

  test("on its dish nothing is said", () => {
    expect(missed(two("2", "on its dish"))).toEqual([]);
  });
});

test("a short is named for what it takes, not the plate below it", () => {
  const design = draw(
    {
      a: ["receiver-sat"],
      p: ["outlet-sat"],
      j: ["bad-joint", { fault: "shorted" }],
      u: ["multiswitch", { terrestrial: false, outputs: 4 }],
      m: ["lnb-quattro"],
      k: ["dish"],
    },
    "k.sky > m.sky, m.vl > u.vl, m.vh > u.vh, m.hl > u.hl, m.hh > u.hh, u.out1 > j.in, j.out > p.in, p.sat > a.sat",
  );
  const { causes } = report(evaluate(design));
  expect(causes.filter((c) => c.severity === "error").map((c) => c.root.parts[0])).toEqual(["j"]);
});

test("an open line to one socket of a plate is no fault of the plate", () => {
  const design = draw(
    {
      b: ["receiver-sat"],
      a: ["receiver-sat", { polarisation: "H" }],
      p: ["outlet-sat-twin"],
      r2: ["cable"],
      r1: ["cable"],
      m: ["lnb-universal", { outputs: "4" }],
      k: ["dish"],
    },
    "k.sky > m.sky, m.out1 > r1.in, r1.out > p.in, r2.out > p.in2, p.sat > a.sat, p.sat2 > b.sat",
  );
  const [cause] = report(evaluate(design)).causes;
  expect(cause?.root.parts[0]).toBe("r2");
});

test("a mains unit that cannot feed its LNB leaves nobody behind it with a picture", () => {
  // 200 mA are drawn by the LNB, and the unit shuts down above 150 mA.
  const design = draw(
    {
      a: ["receiver-sat"],
      b: ["receiver-sat", { polarisation: "H" }],
      u: ["multiswitch", { terrestrial: false, outputs: 4, lnbLimitMa: 150 }],
      m: ["lnb-quattro", { currentMa: 200 }],
      k: ["dish", { diameterM: 0.8 }],
    },
    "k.sky > m.sky, m.vl > u.vl, m.vh > u.vh, m.hl > u.hl, m.hh > u.hh, u.out1 > b.sat, u.out4 > a.sat",
  );
  const { causes, verdicts } = report(evaluate(design));
  expect(verdicts.map(({ part, state }) => [part, state])).toEqual([
    ["a", "fails"],
    ["b", "fails"],
  ]);
  const [cause] = causes;
  expect([cause?.root.rule, [...(cause?.receivers ?? [])].sort()]).toEqual(["supply-overloaded", ["a", "b"]]);
});
