/** What somebody before a receiver may expect: what the sources that it is connected to send. Common practice. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { carriersSent, planeKey, sourcesOf, wantedCarriers } from "../../src/findings/wanted.ts";
import type { Service } from "../../src/signal/carrier.ts";
import { draw } from "../draw.ts";
import { recordOf } from "./byHand.ts";

type Parts = Parameters<typeof draw>[0];

/** A UHF aerial at 60 dBµV with these channels, each [channel, offset in dB]. */
const uhf = (...channels: readonly (readonly [number, number])[]): Parts[string] => [
  "aerial-uhf",
  {
    levelDbuv: 60,
    channels: channels.map(([channel, levelOffsetDb]) => ({
      channel,
      mode: "dvbt-64qam-2/3",
      levelOffsetDb,
    })),
  },
];

const transponder = (frequencyMHz: number, polarisation: "V" | "H") => ({ frequencyMHz, polarisation });

function wantedIn(design: Design, part: string, service: Service) {
  const evaluation = evaluate(design);
  return wantedCarriers(recordOf(evaluation, part), sourcesOf(evaluation), service);
}

/** Names of the carriers with the source that they are expected from, sorted. */
const expected = (design: Design, service: Service = "tv") =>
  wantedIn(design, "set", service)
    .map((w) => `${w.carrier.name} ${w.source}`)
    .sort();

/** The same design with a part at another place on the canvas. */
const moved = (design: Design, id: string, at: readonly [number, number]): Design => ({
  ...design,
  parts: design.parts.map((part) => (part.id === id ? { ...part, at: [at[0], at[1]] } : part)),
});

describe("what is expected of a receiver", () => {
  const parts: Parts = { set: ["receiver-tv"], a: uhf([30, 0], [33, 0]), b: uhf([40, 0]) };

  test("is what the aerial that it is connected to sends, and not what another one does", () => {
    expect(expected(draw(parts, "a.out > set.in"))).toEqual(["C30 a", "C33 a"]);
    expect(expected(draw(parts, "b.out > set.in"))).toEqual(["C40 b"]);
  });

  test("without a connection is what all aerials drawn send", () => {
    expect(expected(draw(parts, ""))).toEqual(["C30 a", "C33 a", "C40 b"]);
  });

  // Its lead comes from an aerial for radio: the TV that is drawn is still what it is there for.
  test("is what all aerials send where the one above sends another service", () => {
    const design = draw({ ...parts, radio: ["aerial-dab"] }, "radio.out > set.in");
    expect(expected(design)).toEqual(["C30 a", "C33 a", "C40 b"]);
  });

  test("is nothing where nothing is drawn that sends the service", () => {
    expect(expected(draw(parts, "a.out > set.in"), "dab")).toEqual([]);
    expect(expected(draw(parts, "a.out > set.in"), "satellite")).toEqual([]);
  });

  test("is known by its source, its place in the list and its level at the source", () => {
    const design = draw({ set: ["receiver-tv"], a: uhf([40, -7], [30, 4]) }, "a.out > set.in");
    const byName = new Map(wantedIn(design, "set", "tv").map((w) => [w.carrier.name, w]));
    // 60 dBµV at the terminals; C40 is the first of the list, though the higher one.
    expect(byName.get("C40")).toMatchObject({ key: "a#0", source: "a", origin: "a", index: 0, sentDbuv: 53 });
    expect(byName.get("C30")).toMatchObject({ key: "a#1", source: "a", origin: "a", index: 1, sentDbuv: 64 });
    expect(byName.get("C30")).not.toHaveProperty("plane");
  });

  test("is not what only passes a source: a pick-up sends its own", () => {
    const design = draw(
      { set: ["receiver-tv"], p: ["pick-up"], a: uhf([30, 0]) },
      "a.out > p.in, p.out > set.in",
    );
    expect(expected(design)).toEqual(["C30 a"]);
    expect(expected(design, "mobile").every((line) => line.endsWith(" p"))).toBe(true);
    expect(expected(design, "mobile").length).toBeGreaterThan(0);
  });
});

describe("of two aerials that receive one channel", () => {
  const wires = "a.out > mix.in1, b.out > mix.in2, mix.out > set.in";
  const both = (a: Parts[string], b: Parts[string]): Parts => ({
    set: ["receiver-tv"],
    mix: ["combiner"],
    a,
    b,
  });

  // C33 comes by both: from a at 60, from b at 63 dBµV.
  test("the one that receives it better is meant", () => {
    const [a, b] = [uhf([30, 0], [33, 0]), uhf([33, 3], [36, 0])];
    expect(expected(draw(both(a, b), wires))).toEqual(["C30 a", "C33 b", "C36 b"]);
    expect(expected(draw(both(b, a), wires))).toEqual(["C30 b", "C33 a", "C36 a"]);
  });

  test("of two alike the upper one on the canvas is meant, whichever was drawn first", () => {
    const design = draw(both(uhf([33, 0]), uhf([33, 0])), wires);
    const lower = (id: string) => expected(moved(design, id, [0, 900]));
    expect(lower("a")).toEqual(["C33 b"]);
    expect(lower("b")).toEqual(["C33 a"]);
  });

  test("of two at one height the left one is meant", () => {
    const design = draw(both(uhf([33, 0]), uhf([33, 0])), wires);
    expect(expected(moved(design, "a", [5000, 0]))).toEqual(["C33 b"]);
    expect(expected(moved(design, "b", [5000, 0]))).toEqual(["C33 a"]);
  });

  test("and of three alike one is", () => {
    const parts: Parts = {
      ...both(uhf([33, 0]), uhf([33, 0])),
      mix: ["combiner", { ways: 3 }],
      c: uhf([33, 1]),
    };
    expect(expected(draw(parts, `${wires}, c.out > mix.in3`))).toEqual(["C33 c"]);
  });
});

describe("planes of what is expected of a satellite receiver", () => {
  // The low band ends and the high band begins at 11 700 MHz (EN 61319-1).
  const transponders = [
    transponder(11_699.75, "V"),
    transponder(11_700, "V"),
    transponder(11_300, "H"),
    transponder(12_000, "H"),
  ];
  const dish: Parts[string] = ["dish", { transponders, satelliteName: "Nineteen" }];
  const design = draw(
    { set: ["receiver-sat"], lnb: ["lnb-universal"], d: dish },
    "d.sky > lnb.sky, lnb.out > set.sat",
  );

  test("are told by polarisation, half, dish and satellite", () => {
    const planes = new Map(wantedIn(design, "set", "satellite").map((w) => [w.carrier.airMHz, w.plane]));
    const at = { source: "d", position: "Nineteen" };
    expect(planes.get(11_699.75)).toEqual({ ...at, polarisation: "V", half: "low" });
    expect(planes.get(11_700)).toEqual({ ...at, polarisation: "V", half: "high" });
    expect(planes.get(11_300)).toEqual({ ...at, polarisation: "H", half: "low" });
    expect(planes.get(12_000)).toEqual({ ...at, polarisation: "H", half: "high" });
  });

  // Two satellites are two sets of programmes, even on one frequency.
  test("of two dishes are all expected, whatever frequencies they share", () => {
    const two = draw({ set: ["receiver-sat"], d: dish, e: ["dish", { transponders }] }, "");
    const sources = wantedIn(two, "set", "satellite").map((w) => w.source);
    expect(sources.filter((s) => s === "d")).toHaveLength(4);
    expect(sources.filter((s) => s === "e")).toHaveLength(4);
  });

  test("have a key of dish, polarisation and half", () => {
    expect(planeKey({ source: "d", polarisation: "V", half: "low" })).toBe("d/VL");
    expect(planeKey({ source: "roof", polarisation: "H", half: "high" })).toBe("roof/HH");
  });
});

describe("sources of a design", () => {
  const evaluation = evaluate(
    draw(
      {
        set: ["receiver-tv"],
        d: [
          "dish",
          { transponders: [transponder(11_300, "H"), transponder(11_300, "V"), transponder(12_000, "V")] },
        ],
        a: uhf([30, 0], [33, 0]),
        k: ["cable"],
        p: ["pick-up"],
        lnb: ["lnb-universal"],
      },
      "",
    ),
  );

  test("are aerials, dishes and pick-ups", () => {
    expect(sourcesOf(evaluation).map((r) => r.part.id)).toEqual(["d", "a", "p"]);
  });

  test("send so many carriers that somebody may want: none of a pick-up", () => {
    const sent = (part: string) => carriersSent(recordOf(evaluation, part));
    expect([sent("d"), sent("a"), sent("p"), sent("k")]).toEqual([3, 2, 0, 0]);
  });
});
