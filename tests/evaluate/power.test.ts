/** Loads, supplies and switches at one part, by Ohm's law and by the table of 13/18 V and 22 kHz. */
import { describe, expect, test } from "vitest";
import {
  byTheStrongestWay,
  isPowered,
  MOST_SUPPLIES,
  sameDemand,
  sameFeed,
  strongestFirst,
  switchStates,
  withinCount,
} from "../../src/evaluate/power.ts";
import type { PowerTreatment, SwitchDeclaration } from "../../src/parts/contract.ts";
import { type Demand, type Feed, NO_FEED, type Offer } from "../../src/signal/control.ts";
import { ASKS_H_HIGH, ASKS_V_LOW, offerOf, plainOffer } from "./offers.ts";

function demand(draws: Readonly<Record<string, number>>, shortedBy: string | null = null): Demand {
  const list = Object.entries(draws).map(([part, milliamps]) => ({ part, milliamps }));
  return { milliamps: list.reduce((sum, d) => sum + d.milliamps, 0), draws: list, shortedBy };
}

const feedAt = (ports: Readonly<Record<string, Feed>>) => (port: string) => ports[port] ?? NO_FEED;

describe("several supplies on one line", () => {
  /** What is left of the supplies of two outputs that lead to one input. */
  const joined = (out1: Feed, out2: Feed) => {
    const feed = byTheStrongestWay([...out1, ...out2].sort(strongestFirst));
    const kept = withinCount(feed);
    return { offers: { in: kept }, left: feed.length - kept.length };
  };

  test("stand with the highest voltage first, and with dormant ones last", () => {
    const { offers } = joined(
      [offerOf({ part: "a", volts: 13 }), offerOf({ part: "b", volts: 19, dormant: true })],
      [offerOf({ part: "c", volts: 18 }), offerOf({ part: "d", volts: 14, dormant: true })],
    );
    expect(offers.in?.map((o) => o.part)).toEqual(["c", "a", "b", "d"]);
  });

  test("one supply by two ways is offered once, as it comes by the stronger", () => {
    const { offers } = joined([offerOf({ volts: 12.5, ohms: 3 })], [offerOf({ volts: 12.9, ohms: 1 })]);
    expect(offers.in).toEqual([offerOf({ volts: 12.9, ohms: 1 })]);
    // Another port of the same part is another supply.
    expect(joined([offerOf()], [offerOf({ port: "sat2" })]).offers.in).toHaveLength(2);
  });

  test.each([
    { name: "by the weaker way", strong: {}, weak: {}, tone: [false, true], arrives: true },
    { name: "by neither", strong: {}, weak: {}, tone: [false, false], arrives: false },
    { name: "by the stronger", strong: {}, weak: {}, tone: [true, false], arrives: true },
    {
      name: "by a weaker way that is shut",
      strong: {},
      weak: { dormant: true },
      tone: [false, true],
      arrives: false,
    },
    {
      name: "by a weaker way, where both are shut",
      strong: { dormant: true },
      weak: { dormant: true },
      tone: [false, true],
      arrives: true,
    },
  ])("its tone comes $name: arrives $arrives", ({ strong, weak, tone, arrives }) => {
    const { offers } = joined(
      [offerOf({ volts: 12.9, toneArrives: tone[0] === true, ...strong })],
      [offerOf({ volts: 12.5, toneArrives: tone[1] === true, ...weak })],
    );
    expect(offers.in).toHaveLength(1);
    expect(offers.in?.[0]).toMatchObject({ volts: 12.9, toneArrives: arrives });
  });

  const many = (n: number, o: (i: number) => Partial<Offer> = () => ({})) =>
    Array.from({ length: n }, (_, i) => offerOf({ part: `rx${i}`, volts: 18 - i / 100, ...o(i) }));

  test.each([
    { count: MOST_SUPPLIES - 1, kept: MOST_SUPPLIES - 1, left: 0 },
    { count: MOST_SUPPLIES, kept: MOST_SUPPLIES, left: 0 },
    { count: MOST_SUPPLIES + 3, kept: MOST_SUPPLIES, left: 3 },
  ])("of $count supplies $kept are worked out, and $left left out", ({ count, kept, left }) => {
    const found = joined(many(count), []);
    expect(found.offers.in).toHaveLength(kept);
    expect(found.offers.in?.map((o) => o.part)).toEqual(many(kept).map((o) => o.part));
    expect(found.left).toBe(left);
  });

  test.each([
    { name: "tone from far behind", tone: {}, isKept: true },
    { name: "low band", tone: { request: ASKS_V_LOW }, isKept: false },
    { name: "tone that does not arrive", tone: { toneArrives: false }, isKept: false },
    { name: "tone through a way that is shut", tone: { dormant: true }, isKept: false },
  ])("of too many the last place is kept for: $name, $isKept", ({ tone, isKept }) => {
    const last = MOST_SUPPLIES + 5;
    const { offers } = joined(
      many(last + 1, (i) => (i === last ? { request: ASKS_H_HIGH, ...tone } : {})),
      [],
    );
    expect(offers.in).toHaveLength(MOST_SUPPLIES);
    expect(offers.in?.at(-1)?.part).toBe(isKept ? `rx${last}` : `rx${MOST_SUPPLIES - 1}`);
    expect(offers.in?.[0]?.part).toBe("rx0");
  });

  test("of too many none gives way where one of the strongest sends tone already", () => {
    const { offers } = joined(
      many(MOST_SUPPLIES + 2, (i) => (i === 5 || i > MOST_SUPPLIES ? { request: ASKS_H_HIGH } : {})),
      [],
    );
    expect(offers.in?.at(-1)?.part).toBe(`rx${MOST_SUPPLIES - 1}`);
  });
});

describe("whether a part is powered", () => {
  const load = { milliamps: 100, ports: ["out1", "out2"], minVolts: 11.5 };

  test.each([
    { name: "no load", power: {}, feeds: {}, powered: true },
    { name: "its own unit", power: { load, selfPowered: true }, feeds: {}, powered: true },
    {
      name: "its own unit switched off",
      power: { load, selfPowered: false },
      feeds: {},
      powered: false,
    },
    { name: "a unit that is off, without load", power: { selfPowered: false }, feeds: {}, powered: false },
    { name: "just enough", power: { load }, feeds: { out1: [plainOffer(11.5)] }, powered: true },
    { name: "a little less", power: { load }, feeds: { out1: [plainOffer(11.4)] }, powered: false },
    {
      name: "enough from the second supply of the second port",
      power: { load },
      feeds: { out1: [plainOffer(5)], out2: [plainOffer(3), plainOffer(12)] },
      powered: true,
    },
    {
      name: "enough at a port that does not feed it",
      power: { load },
      feeds: { x: [plainOffer(18)] },
      powered: false,
    },
  ])("$name: $powered", ({ power, feeds, powered }) => {
    expect(isPowered(power, feedAt(feeds))).toBe(powered);
  });
});

/** 13 V without tone is vertical low, 18 V without horizontal low, with 22 kHz the high ones (EN 61319-1, as in receiver manuals). */
describe("how a switched output stands", () => {
  const setting = (
    offers: Feed,
    declared: Partial<SwitchDeclaration> = {},
    power: PowerTreatment = {},
  ): string | null | undefined => {
    const declaration = {
      port: "out",
      by: "quadrant",
      positions: 4,
      thresholdVolts: 15,
      ...declared,
    } as const;
    return switchStates("lnb", { ...power, switches: [declaration] }, feedAt({ out: offers })).out?.setting;
  };

  test.each([
    { volts: 13, half: "low", is: "VL" },
    { volts: 18, half: "low", is: "HL" },
    { volts: 13, half: "high", is: "VH" },
    { volts: 18, half: "high", is: "HH" },
    // What counts is what arrives: 18 V that fell to the threshold count as 13 V.
    { volts: 15, half: "low", is: "VL" },
    { volts: 15.01, half: "low", is: "HL" },
    { volts: 0, half: "low", is: null },
  ] as const)("$volts V and the $half half: $is", ({ volts, half, is }) => {
    expect(setting([offerOf({ volts, request: { polarisation: "H", half } })])).toBe(is);
  });

  test("nobody there: not set", () => {
    expect(setting([])).toBeNull();
    expect(setting([], { by: "stack" })).toBeNull();
    expect(setting([], { by: "position" })).toBeNull();
  });

  test("tone that does not arrive selects nothing; anybody's tone counts", () => {
    expect(setting([offerOf({ volts: 18, request: ASKS_H_HIGH, toneArrives: false })])).toBe("HL");
    expect(setting([offerOf({ volts: 18 }), offerOf({ part: "b", volts: 13, request: ASKS_H_HIGH })])).toBe(
      "HH",
    );
    expect(setting([plainOffer(18)])).toBe("HL");
  });

  const asking = (position?: number) => ({ ...ASKS_V_LOW, ...(position === undefined ? {} : { position }) });

  test.each([
    { position: 3, positions: 4, is: "3" },
    { position: undefined, positions: 4, is: "1" },
    { position: 4, positions: 2, is: "2" },
    { position: 0, positions: 2, is: "1" },
  ])("position $position of $positions: $is", ({ position, positions, is }) => {
    const offers = [offerOf({ request: asking(position) })];
    expect(setting(offers, { by: "position", positions })).toBe(is);
    expect(setting(offers, { by: "both", positions })).toBe(`${is}:VL`);
  });

  test("the strongest's position counts, and one that is lost on the way is none", () => {
    const two = offerOf({ volts: 18, request: asking(2) });
    const three = offerOf({ part: "b", volts: 13, request: asking(3) });
    expect(setting([two, three], { by: "position" })).toBe("2");
    expect(setting([{ ...two, toneArrives: false }, three], { by: "position" })).toBe("1");
  });

  test("a switch of positions with a supply of its own rests at 1; a quadrant needs a voltage", () => {
    expect(setting([], { by: "position" }, { selfPowered: true })).toBe("1");
    expect(setting([], {}, { selfPowered: true })).toBeNull();
    expect(setting([], { by: "position" }, { selfPowered: false })).toBeNull();
  });

  test("a stack only listens", () => {
    expect(setting([offerOf()], { by: "stack" })).toBe("stack");
  });

  test("who sleeps behind another switch counts only while nobody is awake", () => {
    const asleep = offerOf({ part: "b", volts: 18, dormant: true });
    expect(setting([offerOf({ volts: 13 }), asleep])).toBe("VL");
    expect(setting([asleep])).toBe("HL");
    // Its tone counts no more than its voltage.
    const asleepInTone = offerOf({ part: "b", volts: 13, dormant: true, request: ASKS_H_HIGH });
    expect(setting([offerOf({ volts: 13 }), asleepInTone])).toBe("VL");
  });

  const stateOf = (offers: Feed, by: SwitchDeclaration["by"] = "quadrant") =>
    switchStates(
      "lnb",
      { switches: [{ port: "out", by, positions: 1, thresholdVolts: 15 }] },
      feedAt({ out: offers }),
    ).out;

  test("is contested where two inputs that may switch are awake on it", () => {
    const [a, b] = [offerOf(), offerOf({ part: "b" })];
    expect(stateOf([a, b])?.contested).toBe(true);
    expect(stateOf([a, offerOf({ port: "sat2" })])?.contested).toBe(true);
    expect(stateOf([a])?.contested).toBe(false);
    expect(stateOf([a, { ...b, dormant: true }])?.contested).toBe(false);
    expect(stateOf([a, plainOffer(12)])?.contested).toBe(false);
    // On a channel-stacked line they are meant to speak in turn.
    expect(stateOf([a, b], "stack")?.contested).toBe(false);
  });

  test("says which output of which part it is, who speaks and where its threshold lies", () => {
    const offers = [offerOf()];
    expect(stateOf(offers)).toEqual({
      id: "lnb/out",
      part: "lnb",
      port: "out",
      offers,
      setting: "VL",
      thresholdVolts: 15,
      contested: false,
    });
    expect(stateOf(offers)?.offers).toBe(offers);
    expect(switchStates("lnb", {}, feedAt({}))).toEqual({});
  });

  test("stays the same object while nothing about it changed", () => {
    const offers = [offerOf()];
    const at13 = (feed: Feed, thresholdVolts = 15, before = {}) =>
      switchStates(
        "lnb",
        { switches: [{ port: "out", by: "quadrant", positions: 1, thresholdVolts }] },
        feedAt({ out: feed }),
        before,
      );
    const before = at13(offers);
    expect(at13(offers, 15, before).out).toBe(before.out);
    expect(at13([offerOf()], 15, before).out).not.toBe(before.out);
    expect(at13(offers, 14, before).out).not.toBe(before.out);
    expect(at13(offers, 12, before).out?.setting).toBe("HL");
    // The same line seen by a stack: nothing but the setting, or the contest, is another.
    const two = [offerOf(), offerOf({ part: "b" })];
    const quadrant = stateOf(two);
    const stack = switchStates(
      "lnb",
      { switches: [{ port: "out", by: "stack", positions: 1, thresholdVolts: 15 }] },
      feedAt({ out: two }),
      quadrant ? { out: { ...quadrant, setting: "stack" } } : {},
    );
    expect(stack.out?.contested).toBe(false);
    const position = switchStates(
      "lnb",
      { switches: [{ port: "out", by: "position", positions: 1, thresholdVolts: 15 }] },
      feedAt({ out: two }),
      quadrant ? { out: quadrant } : {},
    );
    expect(position.out?.setting).toBe("1");
  });
});

describe("whether two loads, two feeds are the same", () => {
  const lnb = demand({ a: 100, b: 50 });

  test.each([
    { name: "equal", other: demand({ a: 100, b: 50 }), same: true },
    { name: "another current", other: { ...lnb, milliamps: 151 }, same: false },
    { name: "a short", other: demand({ a: 100, b: 50 }, "x"), same: false },
    {
      name: "one draw more",
      other: { ...lnb, draws: [...lnb.draws, { part: "c", milliamps: 0 }] },
      same: false,
    },
    { name: "other parts", other: demand({ a: 100, c: 50 }), same: false },
    { name: "other shares", other: demand({ a: 50, b: 100 }), same: false },
    { name: "fewer draws", other: { ...lnb, draws: lnb.draws.slice(1) }, same: false },
  ])("loads, $name: $same", ({ other, same }) => {
    expect(sameDemand(lnb, other)).toBe(same);
    expect(sameDemand(other, lnb)).toBe(same);
    expect(sameDemand(other, other)).toBe(true);
  });

  const offer = offerOf();
  const changes: readonly Partial<Offer>[] = [
    { part: "b" },
    { port: "sat2" },
    { kind: "plain" },
    { volts13: 12 },
    { volts18: 17 },
    { volts: 12 },
    { ohms: 1 },
    { dropVolts: 1 },
    { limitMa: 1 },
    { toneArrives: false },
    // As it is, not by content.
    { request: { ...ASKS_V_LOW } },
    { dormant: true },
  ];

  test.each(changes)("feeds that differ in %o are not the same", (change) => {
    expect(sameFeed([offer], [{ ...offer, ...change }])).toBe(false);
  });

  test("feeds of equal offers are the same; of other lengths they are not", () => {
    expect(sameFeed([offer], [{ ...offer }])).toBe(true);
    expect(sameFeed(NO_FEED, [])).toBe(true);
    expect(sameFeed([offer], [offer, offer])).toBe(false);
    expect(sameFeed([offer, offer], [offer])).toBe(false);
  });
});
