/** Where levels are judged, and what is heard there. Figures of EN 60728-1, as quoted beside the profile. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { profileOf } from "../../src/findings/limits.ts";
import { heardAt, type Place, placesOf } from "../../src/findings/places.ts";
import type { Band } from "../../src/signal/band.ts";
import type { Service } from "../../src/signal/carrier.ts";
import { draw } from "../draw.ts";
import { bandOf, carrierAt, gridOf, switchAt } from "../signal/bands.ts";
import { recordOf, stackOf } from "./byHand.ts";

type Parts = Parameters<typeof draw>[0];

function places(parts: Parts, wires: string, part: string): readonly Place[] {
  const evaluation = evaluate(draw(parts, wires));
  const record = recordOf(evaluation, part);
  return placesOf({ record, kindAt: (port) => evaluation.record(record.joined[port]?.[0] ?? "")?.kind });
}

const ports = (...of: Parameters<typeof places>) => places(...of).map((p) => p.port);

const flat: Parts = {
  set: ["receiver-tv"],
  k: ["cable"],
  last: ["outlet-end"],
  plate: ["outlet-through"],
  a: ["aerial-uhf"],
};

describe("levels are judged", () => {
  test("at the sockets of a plate, each for what it is meant for", () => {
    const found = places(flat, "a.out > plate.in", "plate");
    expect(found.map((p) => [p.port, p.services])).toEqual([
      ["tv", ["tv", "dab"]],
      ["radio", ["fm"]],
    ]);
  });

  test("at a receiver that hangs on no plate", () => {
    expect(ports(flat, "a.out > set.in", "set")).toEqual(["in"]);
    expect(ports(flat, "a.out > k.in, k.out > set.in", "set")).toEqual(["in"]);
    expect(ports(flat, "", "set")).toEqual(["in"]);
    const [place] = places(flat, "a.out > set.in", "set");
    expect(place?.services).toEqual(["tv"]);
    expect(place?.spectrum.bands).toHaveLength(1);
  });

  // The same level would be told twice.
  test("not at a receiver that hangs on a socket", () => {
    expect(ports(flat, "a.out > plate.in, plate.tv > set.in", "set")).toEqual([]);
    expect(ports(flat, "a.out > last.in, last.tv > set.in", "set")).toEqual([]);
  });

  test("but at one that hangs on the line that goes on from a plate", () => {
    expect(ports(flat, "a.out > plate.in, plate.out > set.in", "set")).toEqual(["in"]);
  });

  test("at no other part", () => {
    expect(ports(flat, "a.out > k.in, k.out > set.in", "k")).toEqual([]);
  });

  test("with silence where nothing is connected", () => {
    expect(places(flat, "", "set")[0]?.spectrum.bands).toEqual([]);
    expect(places(flat, "", "last")[0]?.spectrum.bands).toEqual([]);
  });
});

const EN_60728 = profileOf(evaluate(draw({}, "")).design);

const place = (bands: readonly Band[], userBands: readonly number[] = []): Place => ({
  port: "tv",
  services: ["tv"],
  spectrum: { bands },
  userBands: new Set(userBands),
});

const heard = (bands: readonly Band[], service: Service = "tv", userBands: readonly number[] = []) =>
  heardAt(place(bands, userBands), service, EN_60728);

describe("what is heard at a place", () => {
  // 60 dBµV are 10⁶ (µV)²: against 10³ of noise 30 dB, against 10⁴ of interference 20 dB,
  // against both (1.1·10⁴) 10·log10(90.909) = 19.586 dB.
  test("has its level, and its distance to noise, to interference and to both", () => {
    const [carrier, ...more] = heard([
      bandOf({ grid: gridOf([474]), level: 60, noise: 1000, interference: 10_000 }),
    ]);
    expect(more).toEqual([]);
    expect(carrier).toMatchObject({ origin: "aerial", index: 0, name: "474", centreMHz: 474, levelDbuv: 60 });
    expect(carrier?.cnDb).toBeCloseTo(30, 6);
    expect(carrier?.ciDb).toBeCloseTo(20, 6);
    expect(carrier?.cniDb).toBeCloseTo(19.586, 3);
    expect(carrier).not.toHaveProperty("userBand");
  });

  test("is held to the limits of its service and modulation", () => {
    const [tv] = heard([bandOf()]);
    expect(tv?.limits).toMatchObject({ minDbuv: 45, maxDbuv: 74, cnDb: 26 });
    const dab = { ...carrierAt(225, 1.5), mode: "dab" };
    const grid = { ...gridOf([225]), plan: [dab] };
    const [radio] = heard([bandOf({ service: "dab", grid })], "dab");
    expect(radio?.limits).toMatchObject({ minDbuv: 28, maxDbuv: 94 });
  });

  test("is of the service that is asked for, and of none that nobody judges", () => {
    const bands = [
      bandOf(),
      bandOf({ from: "mast", service: "mobile" }),
      bandOf({ from: "b", service: "dab" }),
    ];
    expect(heard(bands).map((h) => h.origin)).toEqual(["aerial"]);
    expect(heard(bands, "mobile")).toEqual([]);
    expect(heard([])).toEqual([]);
  });

  test("is not what a filter has stopped", () => {
    const cuts = [{ part: "f", reason: "filter" }] as const;
    const band = bandOf({ grid: gridOf([474, 482, 490]), more: { cut: Uint16Array.of(0, 1, 0), cuts } });
    expect(heard([band]).map((h) => h.name)).toEqual(["474", "490"]);
  });

  // Two positions of one switch offer the same transponder: it is one.
  test("counts once where several alternatives offer it, and twice from two sources", () => {
    const one = (from: string, setting: string) =>
      bandOf({ from, level: 60, conditions: [{ at: switchAt("s", "1"), setting }] });
    expect(heard([one("a", "1"), one("a", "2")])).toHaveLength(1);
    expect(heard([one("a", "1"), one("b", "2")])).toHaveLength(2);
  });
});

describe("user bands at a place", () => {
  const stack = stackOf([4, 2]);
  const band = bandOf({ service: "satellite", grid: gridOf([1210, 1420], 46), more: { stack } });

  test("are told by their numbers", () => {
    expect(heard([band], "satellite").map((h) => [h.userBand, h.centreMHz])).toEqual([
      [4, 1210],
      [2, 1420],
    ]);
  });

  test("are heard as far as somebody behind it uses them", () => {
    expect(heard([band], "satellite", [2]).map((h) => h.userBand)).toEqual([2]);
    expect(heard([band], "satellite", [4, 7]).map((h) => h.userBand)).toEqual([4]);
    expect(heard([band], "satellite", [7])).toEqual([]);
  });

  test("are not mixed up where one spectrum stands at two places, nor with another service", () => {
    const spectrum = { bands: [band, bandOf()] };
    const at = (userBands: readonly number[]) => ({ ...place([], userBands), spectrum });
    expect(heardAt(at([2]), "satellite", EN_60728).map((h) => h.userBand)).toEqual([2]);
    expect(heardAt(at([4]), "satellite", EN_60728).map((h) => h.userBand)).toEqual([4]);
    expect(heardAt(at([4]), "tv", EN_60728).map((h) => h.name)).toEqual(["474"]);
  });
});
