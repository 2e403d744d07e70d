/** Designs with none, one, two and many of whatever is counted in words. */
import type { Design } from "../../src/design/design.ts";
import { draw, type Sketch } from "../draw.ts";

const NUMBERS = [0, 1, 2, 7];

const upTo = (n: number) => Array.from({ length: n }, (_, i) => i);
const channels = (n: number, first = 21) => upTo(n).map((i) => ({ channel: first + 3 * i }));
const transponders = (n: number) =>
  upTo(n).map((i) => ({
    frequencyMHz: 10_729 + 120 * i,
    polarisation: i % 3 === 0 ? "V" : "H",
  }));
const joinAll = (n: number, wire: (i: number) => string) => upTo(n).map(wire).join(", ");

const DRAWN: Readonly<Record<string, (n: number) => readonly [Sketch, string]>> = {
  "channels that are too weak": (n) => [
    {
      uhf: ["aerial-uhf", { levelDbuv: 44, channels: channels(n) }],
      plate: ["outlet-tv"],
      tv: ["receiver-tv"],
    },
    "uhf.out > plate.in, plate.tv > tv.in",
  ],
  "channels that are too strong": (n) => [
    {
      uhf: ["aerial-uhf", { levelDbuv: 95, channels: channels(n) }],
      plate: ["outlet-tv"],
      tv: ["receiver-tv"],
    },
    "uhf.out > plate.in, plate.tv > tv.in",
  ],
  "channels with too much noise": (n) => [
    {
      uhf: ["aerial-uhf", { levelDbuv: 20, channels: channels(n) }],
      amp: ["amp-distribution"],
      tv: ["receiver-tv"],
    },
    "uhf.out > amp.in, amp.out > tv.in",
  ],
  "channels that drive an amplifier too hard": (n) => [
    {
      uhf: ["aerial-uhf", { levelDbuv: 90, channels: channels(n) }],
      amp: ["amp-distribution", { gainDb: 35, outputDbuv: 100 }],
      tv: ["receiver-tv"],
    },
    "uhf.out > amp.in, amp.out > tv.in",
  ],
  "weak channels beside a strong one in an amplifier": (n) => [
    {
      near: ["aerial-uhf", { levelDbuv: 95, channels: [{ channel: 48 }] }],
      far: ["aerial-uhf", { levelDbuv: 60, channels: channels(n) }],
      both: ["combiner"],
      amp: ["amp-distribution", { gainDb: 35, outputDbuv: 100 }],
      tv: ["receiver-tv"],
    },
    "near.out > both.in1, far.out > both.in2, both.out > amp.in, amp.out > tv.in",
  ],
  "channels that a filter stops": (n) => [
    {
      uhf: ["aerial-uhf", { channels: [...channels(n, 30), { channel: 22 }] }],
      filter: ["filter-channel", { channels: [{ channel: 22 }] }],
      tv: ["receiver-tv"],
    },
    "uhf.out > filter.in, filter.out > tv.in",
  ],
  "channels of which none passes": (n) => [
    {
      uhf: ["aerial-uhf", { channels: channels(n, 30) }],
      filter: ["filter-channel", { channels: [{ channel: 22 }] }],
      tv: ["receiver-tv"],
    },
    "uhf.out > filter.in, filter.out > tv.in",
  ],
  "channels that a filter lets through": (n) => [
    {
      uhf: ["aerial-uhf", { channels: [...channels(n), { channel: 48 }] }],
      filter: ["filter-channel", { channels: channels(n) }],
      tv: ["receiver-tv"],
    },
    "uhf.out > filter.in, filter.out > tv.in",
  ],
  "channels above the band edge": (n) => [
    { uhf: ["aerial-uhf", { channels: channels(n, 49) }], tv: ["receiver-tv"] },
    "uhf.out > tv.in",
  ],
  "channels from two directions": (n) => [
    {
      a: ["aerial-uhf", { channels: channels(n) }],
      b: ["aerial-uhf", { channels: channels(Math.max(1, n)) }],
      both: ["combiner"],
      tv: ["receiver-tv"],
    },
    "a.out > both.in1, b.out > both.in2, both.out > tv.in",
  ],
  "DAB blocks": (n) => [
    {
      dab: [
        "aerial-dab",
        {
          levelDbuv: 10,
          blocks: ["5C", "7A", "8B", "9C", "10A", "11D", "12B"].slice(0, n).map((block) => ({ block })),
        },
      ],
      radio: ["receiver-dab"],
    },
    "dab.out > radio.in",
  ],
  "FM stations": (n) => [
    {
      fm: ["aerial-fm", { levelDbuv: 10, stations: upTo(n).map((i) => ({ frequencyMHz: 88 + 2 * i })) }],
      radio: ["receiver-fm"],
    },
    "fm.out > radio.in",
  ],
  "transponders on a universal feed": (n) => [
    { dish: ["dish", { transponders: transponders(n) }], lnb: ["lnb-universal"], sat: ["receiver-sat"] },
    "dish.sky > lnb.sky, lnb.out > sat.sat",
  ],
  "transponders on a wideband feed at a universal receiver": (n) => [
    { dish: ["dish", { transponders: transponders(n) }], lnb: ["lnb-wideband"], sat: ["receiver-sat"] },
    "dish.sky > lnb.sky, lnb.v > sat.sat",
  ],
  "transponders behind a terrestrial plate": (n) => [
    {
      dish: ["dish", { transponders: transponders(n) }],
      lnb: ["lnb-wideband"],
      plate: ["outlet-tv"],
      sat: ["receiver-hybrid", { tuners: Math.max(1, n) }],
    },
    "dish.sky > lnb.sky, lnb.v > plate.in, plate.tv > sat.v",
  ],
  "user bands set for too many tuners": (n) => [
    {
      dish: ["dish", { transponders: transponders(n) }],
      lnb: ["lnb-stacked"],
      sat: [
        "receiver-stacked",
        {
          tuners: 8,
          userBands: upTo(n).map((i) => ({ number: i + 1, centreMHz: [1210, 1420, 1680, 2040][i % 4] })),
        },
      ],
    },
    "dish.sky > lnb.sky, lnb.out > sat.sat",
  ],
  "tuners on one user band": (n) => [
    {
      dish: ["dish"],
      lnb: ["lnb-stacked"],
      sat: [
        "receiver-stacked",
        { tuners: Math.max(1, n), userBands: upTo(n).map(() => ({ number: 1, centreMHz: 1210 })) },
      ],
    },
    "dish.sky > lnb.sky, lnb.out > sat.sat",
  ],
  "receivers on a switched output": (n) => [
    {
      dish: ["dish"],
      lnb: ["lnb-universal"],
      split: ["splitter", { ways: 8, dc: "all" }],
      ...Object.fromEntries(
        upTo(n).map((i) => [`sat${i}`, ["receiver-sat", { half: i % 2 ? "low" : "high" }] as const]),
      ),
    },
    `dish.sky > lnb.sky, lnb.out > split.in, ${joinAll(n, (i) => `split.out${i + 1} > sat${i}.sat`)}`,
  ],
  "inputs of one receiver on a switched output": (n) => [
    {
      dish: ["dish"],
      lnb: ["lnb-universal"],
      split: ["splitter", { ways: 2, dc: "all" }],
      sat: ["receiver-sat-twin"],
    },
    `dish.sky > lnb.sky, lnb.out > split.in, ${joinAll(Math.min(2, n), (i) => `split.out${i + 1} > sat.sat${i + 1}`)}`,
  ],
  "receivers on a single-cable line": (n) => [
    {
      dish: ["dish"],
      lnb: ["lnb-stacked"],
      split: ["splitter", { ways: 8, dc: "all" }],
      ...Object.fromEntries(
        upTo(n).map((i) => [
          `sat${i}`,
          [
            "receiver-stacked",
            { tuners: 1, userBands: [{ number: 1, centreMHz: 1210 }], limitMa: 200 },
          ] as const,
        ]),
      ),
    },
    `dish.sky > lnb.sky, lnb.out > split.in, ${joinAll(n, (i) => `split.out${i + 1} > sat${i}.sat`)}`,
  ],
  "legs in use": (n) => [
    {
      uhf: ["aerial-uhf", { channels: channels(3) }],
      split: ["splitter", { ways: 8 }],
      ...Object.fromEntries(upTo(n).map((i) => [`tv${i}`, ["receiver-tv"] as const])),
    },
    `uhf.out > split.in, ${joinAll(n, (i) => `split.out${i + 1} > tv${i}.in`)}`,
  ],
  "legs left open": (n) => [
    {
      uhf: ["aerial-uhf", { channels: channels(3) }],
      split: ["splitter", { ways: 8 }],
      ...Object.fromEntries(upTo(8 - n).map((i) => [`tv${i}`, ["receiver-tv"] as const])),
    },
    `uhf.out > split.in, ${joinAll(8 - n, (i) => `split.out${i + 1} > tv${i}.in`)}`,
  ],
  "cables of steel in a row": (n) => [
    {
      dish: ["dish"],
      lnb: ["lnb-universal"],
      ...Object.fromEntries(
        upTo(n).map((i) => [`run${i}`, ["cable", { lengthM: 60, grade: "clad-0.8" }] as const]),
      ),
      sat: ["receiver-sat"],
    },
    `dish.sky > lnb.sky, ${joinAll(n + 1, (i) => `${i === 0 ? "lnb.out" : `run${i - 1}.out`} > ${i === n ? "sat.sat" : `run${i}.in`}`)}`,
  ],
};

export function countedDesigns(): readonly { readonly name: string; readonly design: Design }[] {
  return Object.entries(DRAWN).flatMap(([name, drawn]) =>
    NUMBERS.map((n) => ({ name: `${n} ${name}`, design: draw(...drawn(n)) })),
  );
}
