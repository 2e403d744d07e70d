/** Loads, supplies and switches at one part, by Ohm's law and by the table of 13/18 V and 22 kHz. */
import { describe, expect, test } from "vitest";
import {
  demandsAtOutputs,
  isPowered,
  MOST_SUPPLIES,
  offersAtInputs,
  sameDemand,
  sameFeed,
  switchStates,
} from "../../src/evaluate/power.ts";
import type { PowerPath, PowerTreatment, SwitchDeclaration } from "../../src/parts/contract.ts";
import { type Demand, type Feed, NO_DEMAND, NO_FEED, type Offer } from "../../src/signal/control.ts";
import { ASKS_H_HIGH, ASKS_V_LOW, offerOf, plainOffer } from "./offers.ts";

function demand(draws: Readonly<Record<string, number>>, shortedBy: string | null = null): Demand {
  const list = Object.entries(draws).map(([part, milliamps]) => ({ part, milliamps }));
  return { milliamps: list.reduce((sum, d) => sum + d.milliamps, 0), draws: list, shortedBy };
}

const at = (ports: Readonly<Record<string, Demand>>) => (port: string) => ports[port] ?? NO_DEMAND;
const feedAt = (ports: Readonly<Record<string, Feed>>) => (port: string) => ports[port] ?? NO_FEED;

describe("what hangs on an output", () => {
  const through: PowerTreatment = { paths: [{ from: "out", to: "in", tone: true }] };

  test("is what hangs on the input that it leads to, the same object", () => {
    const lnb = demand({ lnb: 150 });
    const found = demandsAtOutputs("cable", through, at({ in: lnb }));
    expect(Object.keys(found)).toEqual(["out"]);
    expect(found.out).toBe(lnb);
  });

  test("is nothing where nothing hangs there, or no way leads there", () => {
    expect(demandsAtOutputs("cable", through, at({}))).toEqual({});
    expect(demandsAtOutputs("block", {}, at({ in: demand({ lnb: 150 }) }))).toEqual({});
  });

  // 150 + 200 + 60 mA.
  test("is the sum over its ways and its own load", () => {
    const power: PowerTreatment = {
      paths: [
        { from: "out", to: "in1", tone: true },
        { from: "out", to: "in2", tone: true },
      ],
      load: { milliamps: 60, ports: ["out"], minVolts: 11 },
    };
    const found = demandsAtOutputs("switch", power, at({ in1: demand({ a: 150 }), in2: demand({ b: 200 }) }));
    expect(found.out).toEqual(demand({ a: 150, b: 200, switch: 60 }));
  });

  test("holds a part that is reached by two ways once", () => {
    const power: PowerTreatment = {
      paths: [
        { from: "out", to: "in1", tone: true },
        { from: "out", to: "in2", tone: true },
      ],
    };
    const found = demandsAtOutputs(
      "s",
      power,
      at({ in1: demand({ a: 150, b: 20 }), in2: demand({ b: 20, c: 5 }) }),
    );
    expect(found.out).toEqual(demand({ a: 150, b: 20, c: 5 }));
  });

  test("holds a load at each port that may feed it, and none that draws nothing", () => {
    const load = { milliamps: 100, ports: ["out1", "out2"], minVolts: 11 };
    expect(demandsAtOutputs("lnb", { load }, at({}))).toEqual({
      out1: demand({ lnb: 100 }),
      out2: demand({ lnb: 100 }),
    });
    expect(demandsAtOutputs("lnb", { load: { ...load, milliamps: 0 } }, at({}))).toEqual({});
  });

  test("names who shorts it, own or passed on", () => {
    expect(demandsAtOutputs("plate", { shorts: ["out"] }, at({}))).toEqual({ out: demand({}, "plate") });
    const both: PowerTreatment = { ...through, shorts: ["out"] };
    expect(demandsAtOutputs("b", both, at({ in: demand({ lnb: 100 }) })).out).toEqual(
      demand({ lnb: 100 }, "b"),
    );
    expect(demandsAtOutputs("b", both, at({ in: demand({ lnb: 100 }, "a") })).out?.shortedBy).toBe("a");
  });
});

describe("a supply of its own", () => {
  const supply = { port: "sat", kind: "commands", volts13: 13.2, volts18: 18.4, limitMa: 350 } as const;

  test.each([
    { name: "13 V for a vertical request", request: ASKS_V_LOW, volts: 13.2 },
    { name: "18 V for a horizontal one", request: ASKS_H_HIGH, volts: 18.4 },
    { name: "its higher voltage without a request", request: undefined, volts: 18.4 },
  ])("is offered with $name", ({ request, volts }) => {
    const power = { supplies: [{ ...supply, ...(request ? { request } : {}) }] };
    const { offers, left } = offersAtInputs("rx", power, feedAt({}), at({}));
    expect(offers).toEqual({
      sat: [
        {
          part: "rx",
          port: "sat",
          kind: "commands",
          volts13: 13.2,
          volts18: 18.4,
          volts,
          ohms: 0,
          dropVolts: 0,
          limitMa: 350,
          toneArrives: true,
          ...(request ? { request } : {}),
          dormant: false,
        },
      ],
    });
    expect(left).toBe(0);
  });

  test("gives no volts into a short, for its protection shuts it down", () => {
    const { offers } = offersAtInputs(
      "rx",
      { supplies: [supply] },
      feedAt({}),
      at({ sat: demand({}, "plate") }),
    );
    expect(offers.sat).toMatchObject([{ volts13: 0, volts18: 0, volts: 0 }]);
  });
});

/** What becomes of one supply on one way, with so much hanging upstream [mA]. */
function passed(path: Partial<PowerPath>, offer: Offer, milliamps: number): Offer | undefined {
  const way: PowerPath = { from: "out", to: "in", tone: true, ...path };
  return offersAtInputs(
    "part",
    { paths: [way] },
    feedAt({ out: [offer] }),
    at({ in: demand({ lnb: milliamps }) }),
  ).offers.in?.[0];
}

describe("a supply on its way up", () => {
  // Ohm's law: 50 m at 36 Ω/km are 1.8 Ω; 250 mA drop 0.45 V. At 130 Ω/km 6.5 Ω, 1.625 V. A diode takes its 0.7 V whatever
  // the current.
  test.each([
    { name: "copper cable", path: { ohms: 1.8 }, drop: 0.45 },
    { name: "copper-clad steel", path: { ohms: 6.5 }, drop: 1.625 },
    { name: "a diode", path: { dropVolts: 0.7 }, drop: 0.7 },
    { name: "a diode and copper", path: { dropVolts: 0.7, ohms: 1.8 }, drop: 1.15 },
    { name: "nothing", path: {}, drop: 0 },
  ])("loses $drop V at 250 mA on $name", ({ path, drop }) => {
    const above = passed(path, offerOf({ ohms: 2, dropVolts: 0.1 }), 250);
    expect(above?.volts13).toBeCloseTo(13 - drop, 9);
    expect(above?.volts18).toBeCloseTo(18 - drop, 9);
    expect(above?.volts).toBeCloseTo(13 - drop, 9);
    expect(above?.dropVolts).toBeCloseTo(0.1 + drop, 9);
    expect(above?.ohms).toBeCloseTo(2 + ("ohms" in path ? (path.ohms ?? 0) : 0), 9);
  });

  test("has nothing left where the drop is larger than it is", () => {
    // 60 Ω · 250 mA = 15 V: nothing of 13 V, 3 V of 18 V.
    const above = passed({ ohms: 60 }, offerOf({ request: ASKS_V_LOW }), 250);
    expect([above?.volts13, above?.volts18, above?.volts]).toEqual([0, 3, 0]);
    expect(passed({ ohms: 100 }, offerOf({ request: ASKS_H_HIGH }), 250)?.volts18).toBe(0);
  });

  test.each([
    { tone: true, before: true, after: true },
    { tone: false, before: true, after: false },
    { tone: true, before: false, after: false },
  ])("tone arrives: $before before, way lets it through: $tone, after: $after", ({ tone, before, after }) => {
    expect(passed({ tone }, offerOf({ toneArrives: before }), 0)?.toneArrives).toBe(after);
  });

  test.each([
    { name: "the position that is asked for", position: 2, asked: 2, tone: true, dormant: false },
    { name: "another position", position: 1, asked: 2, tone: true, dormant: true },
    {
      name: "position 1, where none is asked for",
      position: 1,
      asked: undefined,
      tone: true,
      dormant: false,
    },
    { name: "position 2, where none is asked for", position: 2, asked: undefined, tone: true, dormant: true },
    { name: "position 1, where the command is lost", position: 1, asked: 2, tone: false, dormant: false },
    { name: "position 2, where the command is lost", position: 2, asked: 2, tone: false, dormant: true },
  ])("through $name it is dormant: $dormant", ({ position, asked, tone, dormant }) => {
    const request = { ...ASKS_V_LOW, ...(asked === undefined ? {} : { position: asked }) };
    expect(passed({ position }, offerOf({ request, toneArrives: tone }), 0)?.dormant).toBe(dormant);
  });

  test("stays dormant on any further way, and a way without position wakes none", () => {
    expect(passed({}, offerOf({ dormant: true }), 0)?.dormant).toBe(true);
    expect(passed({}, offerOf(), 0)?.dormant).toBe(false);
    expect(passed({ position: 2 }, plainOffer(12), 0)?.dormant).toBe(true);
  });
});

describe("several supplies on one line", () => {
  const join: PowerTreatment = {
    paths: [
      { from: "out1", to: "in", tone: true },
      { from: "out2", to: "in", tone: true },
    ],
  };
  const joined = (out1: Feed, out2: Feed) => offersAtInputs("split", join, feedAt({ out1, out2 }), at({}));

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

  test("own supplies and those from behind stand in one list", () => {
    const power: PowerTreatment = {
      paths: [{ from: "out", to: "in", tone: true }],
      supplies: [{ port: "in", kind: "plain", volts13: 12, volts18: 12, limitMa: 800 }],
    };
    const { offers } = offersAtInputs("psu", power, feedAt({ out: [offerOf()] }), at({}));
    expect(offers.in?.map((o) => [o.part, o.volts])).toEqual([
      ["rx", 13],
      ["psu", 12],
    ]);
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
