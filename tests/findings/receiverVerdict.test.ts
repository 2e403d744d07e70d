/** What a receiver's verdict makes of what is missing and of what it has to spare: all of it made by hand. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { PartRecord } from "../../src/evaluate/evaluation.ts";
import type { Margin } from "../../src/findings/margin.ts";
import type { ReceiverLoss } from "../../src/findings/receiverLosses.ts";
import type { MissingGroup, ReceptionResult, ServiceReception } from "../../src/findings/reception.ts";
import type { TunerReception } from "../../src/findings/tuners.ts";
import { idleReason, outletVerdict, receiverVerdict, withMargins } from "../../src/findings/verdict.ts";
import type { Service } from "../../src/signal/carrier.ts";
import { draw } from "../draw.ts";

type Parts = Parameters<typeof draw>[0];

function recordOf(parts: Parts, wires: string, part: string): PartRecord {
  const record = evaluate(draw(parts, wires)).record(part);
  if (!record) throw new Error("no such part");
  return record;
}

const TWIN = recordOf(
  { z: ["receiver-sat-twin"], x: ["lnb-universal"], d: ["dish"] },
  "d.sky > x.sky, x.out > z.sat1",
  "z",
);

const service = (name: Service, wanted = 5, got = wanted): ServiceReception => ({
  service: name,
  wanted,
  got,
  missing: [],
});
const gets = (...services: readonly ServiceReception[]): ReceptionResult => ({ services, tuners: [] });

function margin(of: Service, marginDb: number, edge?: Margin["edge"]): readonly [Service, Margin] {
  const tightest = { service: of, carrier: `the worst of ${of}`, by: "level low" } as const;
  return [of, { service: of, marginDb, tightest, ...(edge ? { edge } : {}) }];
}

function loss(more: Partial<ReceiverLoss> & { readonly count?: number } = {}): ReceiverLoss {
  const { count = 1, ...rest } = more;
  const missing = { why: "cut", count, reason: { kind: "does not arrive" }, planes: [] } as const;
  return { service: "satellite", wanted: 5, got: 4, missing, groups: [], ...rest };
}

describe("a receiver that misses nothing", () => {
  const verdict = (...margins: readonly (readonly [Service, Margin])[]) =>
    receiverVerdict(TWIN, gets(service("tv"), service("satellite")), [], new Map(margins));

  test("works by as much as the tighter of its services has to spare", () => {
    const found = verdict(margin("tv", 9), margin("satellite", 4));
    expect(found).toMatchObject({
      state: "works",
      marginDb: 4,
      tightest: { service: "satellite", carrier: "the worst of satellite", by: "level low" },
    });
    expect(found).not.toHaveProperty("edge");
    expect(found.services.map((s) => s.marginDb)).toEqual([9, 4]);
  });

  test("stands on the edge by the service that does, even where another has less to spare", () => {
    const edge = { kind: "kept distance", neededDb: 10 } as const;
    expect(verdict(margin("tv", 3), margin("satellite", 8, edge))).toMatchObject({
      state: "edge",
      marginDb: 8,
      tightest: { service: "satellite" },
      edge,
    });
  });

  test("works where it is not known what it has to spare", () => {
    const found = verdict();
    expect(found.state).toBe("works");
    expect(found).not.toHaveProperty("marginDb");
    expect(found.services[0]).not.toHaveProperty("marginDb");
  });
});

describe("a receiver that misses something", () => {
  test("fails, whatever it has to spare of the rest, and says of which service it is", () => {
    const reception = gets(service("tv"), service("satellite", 5, 3));
    const losses = [loss({ count: 2 })];
    const found = receiverVerdict(TWIN, reception, losses, new Map([margin("tv", 9)]));
    expect(found.state).toBe("fails");
    expect(found).not.toHaveProperty("marginDb");
    expect(found.services.map((s) => s.missing.map((m) => m.count))).toEqual([[], [2]]);
  });

  test("of single tuners alone misses nothing as a whole, and fails", () => {
    const found = receiverVerdict(TWIN, gets(service("satellite")), [loss({ tuner: 2 })], new Map());
    expect(found.state).toBe("fails");
    expect(found.services[0]?.missing).toEqual([]);
  });
});

describe("a tuner misses", () => {
  const group = (key: string): MissingGroup => ({
    key,
    why: "cut",
    count: 1,
    reason: { kind: "does not arrive" },
    planes: [],
    sample: { key, carrier: { name: key } } as MissingGroup["sample"],
  });
  const tuner: TunerReception = {
    number: 1,
    input: "sat1",
    inputs: ["sat1"],
    service: "satellite",
    alone: { got: 5, of: 5 },
    together: { got: 3, of: 5 },
    missing: [group("low"), group("high")],
    follows: false,
  };
  /** Numbers of the losses that it shares. */
  const shares = (...losses: readonly ReceiverLoss[]) => {
    const reception = { services: [service("satellite", 5, 3)], tuners: [tuner] };
    const [found] = receiverVerdict(TWIN, reception, losses, new Map()).tuners;
    expect(found).toMatchObject({ number: 1, input: "sat1", wanted: 5, got: 3 });
    return found?.missing.map((m) => m.count);
  };

  test("what it misses alone, and nothing that another one misses", () => {
    expect(shares(loss({ tuner: 1, count: 1 }), loss({ tuner: 2, count: 2, groups: ["low"] }))).toEqual([1]);
  });

  test("of what the receiver misses as a whole that which concerns it", () => {
    const concerns = loss({ count: 1, groups: ["other", "high"] });
    expect(shares(concerns, loss({ count: 2, groups: ["other"] }), loss({ count: 3 }))).toEqual([1]);
    expect(shares(loss({ service: "tv", groups: ["low"] }))).toEqual([]);
  });
});

describe("there is nothing to judge", () => {
  test("without any lead, but with one of two leads there is", () => {
    const open = recordOf({ z: ["receiver-sat-twin"] }, "", "z");
    expect(idleReason(open, gets(service("satellite")))).toBe("nothing connected");
    expect(idleReason(TWIN, gets(service("satellite", 5, 0)))).toBeUndefined();
  });

  test("where it asks for nothing, or where none of what it asks for is sent", () => {
    expect(idleReason(TWIN, gets())).toBe("off");
    expect(idleReason(TWIN, gets(service("tv", 0), service("satellite", 0)))).toBe("no source");
    expect(idleReason(TWIN, gets(service("tv", 5), service("satellite", 0)))).toBeUndefined();
  });

  test("so a receiver that is off works, and one that nothing is sent to fails", () => {
    const losses = [loss()];
    expect(receiverVerdict(TWIN, gets(), losses, new Map())).toMatchObject({ state: "works", idle: "off" });
    expect(receiverVerdict(TWIN, gets(service("tv", 0)), [], new Map([margin("tv", 9)]))).toMatchObject({
      state: "fails",
      idle: "no source",
    });
  });
});

describe("an outlet", () => {
  const channel = (number: number, levelOffsetDb = 0) => ({
    channel: number,
    mode: "dvbt-64qam-2/3",
    levelOffsetDb,
  });
  const outlet = (parts: Parts, wires: string) => {
    const verdict = outletVerdict(recordOf(parts, wires, "o"));
    if (!verdict) throw new Error("no outlet");
    return verdict;
  };
  const sound = () => outlet({ o: ["outlet-tv"], a: ["aerial-uhf"] }, "a.out > o.in");

  test("that works is judged by what it has to spare", () => {
    const edge = { kind: "spread", neededDb: 3 } as const;
    const found = withMargins(sound(), new Map([margin("tv", 2, edge)]));
    expect(found).toMatchObject({ part: "o", role: "outlet", state: "edge", marginDb: 2, edge });
    expect(found.services).toMatchObject([{ service: "tv", marginDb: 2 }]);
    expect(withMargins(sound(), new Map([margin("tv", 7)]))).toMatchObject({ state: "works", marginDb: 7 });
    expect(withMargins(sound(), new Map()).services[0]).not.toHaveProperty("marginDb");
  });

  // C30 ends at 550 MHz, C33 begins at 566: a TV socket up to 555 MHz stops one of them, FM comes out whole.
  test("fails by one service although another comes out whole, whatever that has to spare", () => {
    const channels = [channel(30), channel(33)];
    const parts: Parts = {
      o: ["outlet-diplexed", { tvToMHz: 555 }],
      c: ["combiner"],
      a: ["aerial-uhf", { channels }],
      b: ["aerial-fm"],
    };
    const found = outlet(parts, "a.out > c.in1, b.out > c.in2, c.out > o.in");
    expect(found.services.map((s) => [s.service, s.got === s.wanted])).toEqual([
      ["tv", false],
      ["fm", true],
    ]);
    expect(found.state).toBe("fails");
    const judged = withMargins(found, new Map([margin("fm", 7)]));
    expect(judged).toMatchObject({ part: "o", state: "fails" });
    expect(judged).not.toHaveProperty("marginDb");
    expect(judged.services.map((s) => s.marginDb)).toEqual([undefined, 7]);
  });

  // 62 − 45 = 17 dBµV at the aerial lie less than the needed 18.7 dB above the 3.6 dBµV of noise.
  test("that hands nothing on tells no levels", () => {
    const noisy = outlet(
      { o: ["outlet-tv"], a: ["aerial-uhf", { channels: [channel(30, -45)] }] },
      "a.out > o.in",
    );
    expect(noisy.services).toMatchObject([{ wanted: 1, got: 0 }]);
    expect(noisy.services[0]).not.toHaveProperty("levelMin");
    expect(noisy.services[0]).not.toHaveProperty("cnMin");
  });

  const bands = (numbers: readonly number[]) => {
    const centres = [1210, 1420, 1680, 2040];
    return { userBands: numbers.map((number) => ({ number, centreMHz: centres[number - 1] ?? 0 })) };
  };

  test("with a TV socket beside it is asked for the user bands of the receiver at its satellite socket", () => {
    const parts: Parts = {
      o: ["outlet-diplexed"],
      x: ["lnb-stacked"],
      d: ["dish"],
      z: ["receiver-stacked", bands([1, 3])],
    };
    const found = outlet(parts, "d.sky > x.sky, x.out > o.in, o.sat > z.sat");
    expect(found.services).toMatchObject([{ service: "satellite", wanted: 2, got: 2, counted: "user band" }]);
  });

  // Each cable brings the usual four user bands; the receivers behind the two sockets use the first of each.
  test("with two satellite sockets is asked for the user bands at both", () => {
    const parts: Parts = {
      o: ["outlet-sat-twin"],
      x: ["lnb-stacked", { outputs: "2" }],
      d: ["dish"],
      y: ["receiver-stacked", bands([1])],
      z: ["receiver-stacked", bands([1])],
    };
    const wires = "d.sky > x.sky, x.out1 > o.in, x.out2 > o.in2, o.sat > y.sat, o.sat2 > z.sat";
    expect(outlet(parts, wires).services).toMatchObject([{ wanted: 2, got: 2 }]);
  });
});
