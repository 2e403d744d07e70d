import { describe, expect, test } from "vitest";
import { carrierAt, gainBetween, isLive, kindNamed, led, optionsOf, signalOf } from "./walk.ts";

type Probe = { readonly name: string; readonly f: number; readonly width: number };
// Band II, Band III block 12B, UHF channels 21 and 48, and ends of a public 28.2°E list through 9.75 and 10.4 GHz.
const FM: Probe = { name: "FM", f: 98, width: 0.2 };
const DAB: Probe = { name: "DAB", f: 225.648, width: 1.536 };
const UHF_21: Probe = { name: "C21", f: 474, width: 7.61 };
const UHF_48: Probe = { name: "C48", f: 690, width: 7.61 };
const IF_LOW: Probe = { name: "IF 964", f: 964.25, width: 22 };
const IF_HIGH: Probe = { name: "IF 1935", f: 1935.5, width: 27.5 };
const WIDE_LOW: Probe = { name: "wideband 314", f: 314.25, width: 22 };
const WIDE_HIGH: Probe = { name: "wideband 2080", f: 2080, width: 27.5 };
const PROBES = [FM, DAB, UHF_21, UHF_48, IF_LOW, IF_HIGH, WIDE_LOW, WIDE_HIGH];

const letsOut = (key: string, from: string, socket: string, options = {}) =>
  PROBES.filter((p) => isLive(led(carrierAt(p.f, p.width), signalOf(key, options), from, socket))).map(
    (p) => p.name,
  );

describe("a plate", () => {
  const universal = ["IF 964", "IF 1935", "wideband 2080"];
  const all = PROBES.map((p) => p.name);
  // Plates that separate TV and satellite mutilate a wideband feed, plain ones don't: common practice, no source.
  test.each([
    { key: "outlet-sat", from: "in", socket: "sat", out: all },
    { key: "outlet-sat-twin", from: "in", socket: "sat", out: all },
    { key: "outlet-sat-twin", from: "in2", socket: "sat2", out: all },
    { key: "outlet-tv", from: "in", socket: "tv", out: ["FM", "DAB", "C21", "C48", "wideband 314"] },
    { key: "outlet-diplexed", from: "in", socket: "tv", out: ["FM", "DAB", "C21", "C48", "wideband 314"] },
    { key: "outlet-diplexed", from: "in", socket: "sat", out: universal },
    { key: "outlet-triplexed", from: "in", socket: "tv", out: ["C21", "C48"] },
    { key: "outlet-triplexed", from: "in", socket: "radio", out: ["FM", "DAB"] },
    { key: "outlet-triplexed", from: "in", socket: "sat", out: universal },
    { key: "outlet-quad", from: "in", socket: "sat", out: universal },
    { key: "outlet-quad", from: "in2", socket: "sat2", out: all },
  ])("$key lets $out out at $socket", ({ key, from, socket, out }) => {
    expect(letsOut(key, from, socket)).toEqual(out);
  });

  test("with an FM-only radio socket leaves DAB to its TV socket", () => {
    expect(letsOut("outlet-triplexed", "in", "radio", { radio: "fm" })).toEqual(["FM"]);
    expect(letsOut("outlet-triplexed", "in", "tv", { radio: "fm" })).toContain("DAB");
  });

  test("whose satellite socket begins at 290 MHz no longer lets UHF out at the TV socket", () => {
    const options = { satFromMHz: 290, satToMHz: 2400 };
    expect(letsOut("outlet-diplexed", "in", "sat", options)).toContain("wideband 314");
    expect(letsOut("outlet-diplexed", "in", "tv", options)).toEqual(["FM", "DAB"]);
    expect(letsOut("outlet-triplexed", "in", "tv", options)).toEqual([]);
  });

  // Usual data sheets, from memory: single 0.5–1, diplexed 1–2 and 1.5–3, triplexed 2–4 dB.
  test.each([
    { key: "outlet-sat", socket: "sat", f: 1550, loss: [0.5, 1] },
    { key: "outlet-diplexed", socket: "tv", f: 600, loss: [1, 2] },
    { key: "outlet-diplexed", socket: "sat", f: 1550, loss: [1.5, 3] },
    { key: "outlet-triplexed", socket: "tv", f: 600, loss: [2, 4] },
    { key: "outlet-triplexed", socket: "radio", f: 98, loss: [2, 4] },
  ])("$key has a usual loss to $socket", ({ key, socket, f, loss }) => {
    const db = -gainBetween(signalOf(key), "in", socket, f);
    expect(db).toBeGreaterThanOrEqual(loss[0] ?? 0);
    expect(db).toBeLessThanOrEqual(loss[1] ?? 0);
  });

  test.each([
    { key: "outlet-sat", from: ["sat"] },
    { key: "outlet-sat-twin", from: ["sat", "sat2"] },
    { key: "outlet-tv", from: [] },
    { key: "outlet-diplexed", from: ["sat"] },
    { key: "outlet-triplexed", from: ["sat"] },
    { key: "outlet-quad", from: ["sat", "sat2"] },
  ])("$key lets supply and tone in at $from only", ({ key, from }) => {
    const { paths = [] } = kindNamed(key).power(optionsOf(key));
    expect(paths.map((p) => p.from)).toEqual(from);
    expect(paths.every((p) => p.tone)).toBe(true);
  });

  test("delivers each service at a socket that lets it out", () => {
    const probes = { tv: [UHF_21, UHF_48], dab: [DAB], fm: [FM], satellite: [IF_LOW, IF_HIGH] };
    for (const key of [
      "outlet-tv",
      "outlet-diplexed",
      "outlet-triplexed",
      "outlet-quad",
      "outlet-end",
      "outlet-through",
    ])
      for (const options of [optionsOf(key), optionsOf(key, { satellite: true, radio: "fm" })])
        for (const { port, services } of kindNamed(key).delivery?.(options).sockets ?? [])
          for (const service of services)
            for (const probe of service === "distant" || service === "mobile" || service === "cordless"
              ? []
              : probes[service])
              expect(letsOut(key, port === "sat2" ? "in2" : "in", port, options), `${key} ${port}`).toContain(
                probe.name,
              );
  });
});

describe("a riser", () => {
  test("of three through plates and an end plate gets weaker from floor to floor", () => {
    // Each plate costs the line more than the ideal −10·log10(1 − 10^(−C/10)): conservation of energy.
    const [first, ...rest] = [20, 16, 12].map((tapLossDb) => signalOf("outlet-through", { tapLossDb }));
    const lineLoss = [first, ...rest].map((t) => (t ? -gainBetween(t, "in", "out", 600) : 0));
    expect(lineLoss[0]).toBeGreaterThan(0.04);
    expect(lineLoss[1]).toBeGreaterThan(0.11);
    expect(lineLoss[2]).toBeGreaterThan(0.28);
    expect([...lineLoss].sort((a, b) => a - b)).toEqual(lineLoss);
  });

  test("with satellite sockets steers supply by diodes past the plates, and lets the tone through", () => {
    const { paths = [] } = kindNamed("outlet-through").power(
      optionsOf("outlet-through", { satellite: true }),
    );
    expect(paths.map((p) => p.from)).toEqual(["out", "sat"]);
    expect(paths.find((p) => p.from === "sat")?.dropVolts).toBeGreaterThan(0);
    expect(paths.every((p) => p.tone)).toBe(true);
  });

  test("decouples neighbours by the 30 dB for 300–862 MHz of Spanish RD 346/2011 once two plates lie between them", () => {
    const { isolationDb = 0, ...treatment } = signalOf("outlet-through", { tapLossDb: 14 });
    expect(isolationDb - gainBetween(treatment, "in", "tv", 600)).toBeGreaterThanOrEqual(30);
  });
});
