/** What becomes of the carriers on a receiver's lead: hand-made bands, the outcome known beforehand. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { PartRecord } from "../../src/evaluate/evaluation.ts";
import type { CarrierResults } from "../../src/findings/carrierResult.ts";
import type { TunedInput } from "../../src/findings/feedSuits.ts";
import { addInputResults, receiverResults } from "../../src/findings/inputReception.ts";
import type { ReceiverInput } from "../../src/parts/contract.ts";
import type { Band } from "../../src/signal/band.ts";
import type { Service } from "../../src/signal/carrier.ts";
import { draw } from "../draw.ts";
import { bandOf, gridOf, switchAt } from "../signal/bands.ts";
import { recordOf, stackOf } from "./byHand.ts";

const evaluation = evaluate(draw({ tv: ["receiver-tv"], twin: ["receiver-sat-twin"] }, ""));

const with_ = (part: string, inputs: Readonly<Record<string, readonly Band[]>>): PartRecord => ({
  ...recordOf(evaluation, part),
  inputs: Object.fromEntries(Object.entries(inputs).map(([port, bands]) => [port, { bands }])),
});

const INPUT: ReceiverInput = {
  port: "in",
  feed: "terrestrial",
  services: ["tv", "dab"],
  tunesFromMHz: 174,
  tunesToMHz: 862,
  tuners: 1,
  frontEnd: { noiseFigureDb: 8, overloadDbuv: 98.75, tuner: "silicon" },
};

/** What was made of each carrier: "got", or why not. */
function resultsAt(
  bands: readonly Band[],
  o: {
    readonly input?: Partial<ReceiverInput>;
    readonly service?: Service;
    readonly selectedOnly?: boolean;
  } = {},
) {
  const tuned: TunedInput = {
    receiver: "tv",
    input: { ...INPUT, ...o.input },
    alone: false,
    selectedOnly: o.selectedOnly ?? false,
  };
  const results: CarrierResults = new Map();
  addInputResults(with_("tv", { in: bands }), tuned, o.service ?? "tv", results);
  return [...results].map(([key, result]) => `${key} ${result.got ? "got" : result.why}`);
}

describe("of what is on the lead", () => {
  test("each carrier of the service has its result, by source and place in the plan", () => {
    const two = bandOf({ grid: gridOf([474, 482]) });
    expect(resultsAt([two, bandOf({ from: "b" })])).toEqual(["aerial#0 got", "aerial#1 got", "b#0 got"]);
    expect(resultsAt([])).toEqual([]);
  });

  test("only the service that is asked for counts, at an input that is meant for it", () => {
    const bands = [bandOf(), bandOf({ from: "radio", service: "dab", grid: gridOf([225]) })];
    expect(resultsAt(bands)).toEqual(["aerial#0 got"]);
    expect(resultsAt(bands, { service: "dab" })).toEqual(["radio#0 got"]);
    expect(resultsAt(bands, { input: { services: ["tv"] }, service: "dab" })).toEqual([]);
  });

  // To a filter it was lost first: what the tuner would make of it is no matter.
  test("what was stopped on the way is told so, before it is too weak or out of range", () => {
    const cuts = [{ part: "f", reason: "filter" }] as const;
    const cut = bandOf({
      grid: gridOf([474, 900]),
      level: 0,
      noise: 1000,
      more: { cut: Uint16Array.of(1, 0), cuts },
    });
    expect(resultsAt([cut])).toEqual(["aerial#0 cut", "aerial#1 out of range"]);
  });

  test("what is too weak is noisy", () => {
    expect(resultsAt([bandOf({ level: [20], noise: 10 })])).toEqual(["aerial#0 noisy"]);
  });

  test("a feed of the wrong sort is told so, carrier by carrier", () => {
    const raw = bandOf({ from: "d", service: "satellite", grid: gridOf([1200, 1300], 30) });
    const input = { feed: "switched", services: ["satellite"], tunesFromMHz: 950, tunesToMHz: 2150 } as const;
    expect(resultsAt([raw], { input, service: "satellite" })).toEqual(["d#0 wrong feed", "d#1 wrong feed"]);
  });

  test("of user bands what they hold counts, not they themselves", () => {
    const stack = stackOf(
      [1],
      [bandOf({ from: "d", service: "satellite", grid: gridOf([11_000, 11_040], 30) })],
    );
    const line = bandOf({ from: "lnb", service: "satellite", grid: gridOf([1210], 46), more: { stack } });
    const input = { feed: "stacked", services: ["satellite"], userBands: [] } as const;
    expect(resultsAt([line], { input, service: "satellite" })).toEqual(["d#0 wrong feed", "d#1 wrong feed"]);
  });

  // A second tuner behind one switched input takes what the first has left selected.
  test("a tuner that follows another one gets what is selected alone", () => {
    const at = (from: string, setting: string) =>
      bandOf({ from, conditions: [{ at: switchAt("s", "1"), setting }] });
    const bands = [at("here", "1"), at("there", "2")];
    expect(resultsAt(bands, { selectedOnly: true })).toEqual(["here#0 got"]);
    expect(resultsAt(bands)).toEqual(["here#0 got", "there#0 not selectable"]);
  });
});

describe("of all inputs of a receiver", () => {
  const plane = (from: string, level: number): Band =>
    bandOf({
      from,
      service: "satellite",
      grid: gridOf([1500], 30),
      level,
      noise: 1,
      more: {
        half: "low",
        shifts: [9750],
        origin: { key: from, service: "satellite", part: from, polarisation: "V" },
      },
    });

  test("the results are put together, the best of each carrier", () => {
    const record = with_("twin", { sat1: [plane("d", 50), plane("e", 60)], sat2: [plane("d", 60)] });
    const results = receiverResults(record, "satellite");
    expect([...results.keys()]).toEqual(["d#0", "e#0"]);
    expect(results.get("d#0")).toMatchObject({ got: true, port: "sat2", levelDbuv: 60 });
    expect(results.get("e#0")).toMatchObject({ got: true, port: "sat1" });
  });

  test("there are none for a service that it has no input for, nor at what is no receiver", () => {
    const record = with_("twin", { sat1: [plane("d", 50), bandOf()] });
    expect(receiverResults(record, "tv").size).toBe(0);
    const cable = recordOf(evaluate(draw({ k: ["cable"] }, "")), "k");
    expect(receiverResults(cable, "tv").size).toBe(0);
  });
});
