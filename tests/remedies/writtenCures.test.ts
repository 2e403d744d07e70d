/**
 * WC: what a finding says under "cure" is no empty word: in the rule's own example an idea that the sentence names
 * is proved by the search. Which ideas a sentence names is read from the sentence by hand. Where the sentence depends
 * on the culprit, each of its forms is tried, and all that it names.
 */
import { expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import type { IdeaId } from "../../src/remedies/cureStep.ts";
import type { Proposal } from "../../src/remedies/proposal.ts";
import { search } from "../../src/remedies/search.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import type { Sketch } from "../../src/sentences/explain/sketch.ts";
import { cureOf } from "../../src/sentences/finding.ts";
import { draw } from "../draw.ts";

const NAMED: readonly (readonly [rule: string, ...ideas: IdeaId[]])[] = [
  ["loop", "wire-off"],
  ["blocked-view", "dish-raised", "dish-moved"],
  ["open-end", "load"],
  ["supply-overloaded", "sound-joint", "dc-block"],
  ["no-supply", "block-away"],
  ["command-lost", "new-cable", "cable-grade"],
  ["switched-output-shared", "own-outputs", "stacked-converter"],
  ["user-band-conflict", "own-user-bands"],
  ["too-many-tuners", "own-user-bands"],
  ["wrong-quadrant", "swap-leads"],
  ["wideband-shared", "stacked-converter"],
  ["band-cut", "other-plate", "wider-type"],
  ["wrong-feed", "universal-converter", "other-receiver"],
  ["plane-missing", "plug-in"],
  ["receiver-misses", "wider-type", "filter-away"],
  ["same-signal-twice", "wire-off"],
  ["shared-frequencies", "wire-off", "second-cable", "stacked-converter", "stack-under-roof"],
  ["low-carrier-to-noise", "masthead"],
  ["overload", "gain", "pad"],
  ["level-limits", "pad"],
  ["slope", "equaliser", "amplifier-slope", "cable-grade"],
  ["dwelling-isolation", "better-decoupling", "tap-value"],
];

/** Ideas that the search proves for the first finding of a rule. */
function provedFor(design: Design, rule: string) {
  const { evaluation, report } = siteOf(design);
  const target = report.findings.find((f) => f.rule === rule);
  if (!target) throw new Error(`${rule} is silent`);
  let proposals: readonly Proposal[] = [];
  for (const p of search(design, { prices: PLACEHOLDER_PRICES, target, maxTrials: 60 })) ({ proposals } = p);
  return { cure: cureOf(target, evaluation), ideas: proposals.flatMap((p) => p.steps.map((s) => s.idea)) };
}

test.each(NAMED)(
  "WC1: the written cure of %s is proved in its example",
  { timeout: 30_000 },
  (rule, ...ideas) => {
    const design = RULE_EXAMPLES.find((e) => e.rule === rule)?.speaks.load();
    if (!design) throw new Error(`no example of ${rule}`);
    const { cure, ideas: proved } = provedFor(design, rule);
    expect(cure).toBeDefined();
    expect(proved.filter((i) => ideas.includes(i))).not.toEqual([]);
  },
);

/** A TV aerial of 62 dBµV is usual; `channels`: what it receives. */
const aerial = (levelDbuv: number, ...channels: readonly (readonly [channel: number, offsetDb: number])[]) =>
  [
    "aerial-uhf",
    {
      levelDbuv,
      ...(channels.length === 0
        ? {}
        : {
            channels: channels.map(([channel, levelOffsetDb]) => ({
              channel,
              mode: "dvbt-64qam-2/3",
              levelOffsetDb,
            })),
          }),
    },
  ] as const;
const amp = (o: Readonly<Record<string, number>>) => ["amp-distribution", o] as const;
const dishWith = (o: Readonly<Record<string, number>>): Sketch => ({
  rx: ["receiver-sat"],
  lnb: ["lnb-universal"],
  dish: ["dish", o],
});
const DISH_WIRES = "dish.sky > lnb.sky, lnb.out > rx.sat";
/** Mobile phones of the 700 MHz band send from 758 MHz on: into channel 58, 766 to 774 MHz, where TV is still sent there. */
const phonesInto = (mastDbuv: number): Sketch => ({
  tv: ["outlet-tv"],
  p: ["pick-up", { mast700: true, mastDbuv }],
  a: ["aerial-uhf", { ...aerial(60, [58, 0])[1], formerOnAir: true }],
});
const PHONE_WIRES = "a.out > p.in, p.out > tv.in";

/** A second receiver behind the loop-out of a first one. */
const loopOf = (o: Readonly<Record<string, unknown>>): Sketch => ({
  b: ["receiver-sat"],
  a: ["receiver-sat", { loopOut: "always", ...o }],
  c: ["cable", { lengthM: 20 }],
  l: ["lnb-universal"],
  d: ["dish"],
});
const LOOP_WIRES = "d.sky > l.sky, l.out > c.in, c.out > a.sat, a.loop > b.sat";

type Form = {
  readonly rule: string;
  readonly says: RegExp;
  readonly parts: Sketch;
  readonly wires: string;
  readonly ideas: readonly IdeaId[];
};

/** Three multiplexes from 40°, and what else the aerial hears. */
const heard = (o: Readonly<Record<string, unknown>>, ...others: readonly object[]) =>
  [
    "aerial-uhf",
    {
      aim: "bearing",
      bearingDeg: 40,
      ...o,
      channels: [
        ...[23, 26, 30].map((channel) => ({
          channel,
          mode: "dvbt2-256qam-2/3",
          transmitter: "Hill",
          bearingDeg: 40,
          polarisation: "H",
        })),
        ...others,
      ],
    },
  ] as const;

const FORMS: readonly Form[] = [
  {
    rule: "command-lost",
    says: /^Give “b” a lead of its own\. While “a” is in standby, “b” commands as it is\.$/,
    parts: loopOf({}),
    wires: LOOP_WIRES,
    ideas: ["second-cable"],
  },
  {
    rule: "command-lost",
    says: /^Give “b” a lead of its own, or set “a” to feed nothing in standby\.$/,
    parts: loopOf({ state: "standby", standbySupply: true }),
    wires: LOOP_WIRES,
    ideas: ["mend"],
  },
  {
    rule: "receiver-misses",
    says: /^Give “b” a lead of its own\. While “a” is in standby, its loop-out passes all\.$/,
    parts: loopOf({ loopOut: "standby" }),
    wires: LOOP_WIRES,
    ideas: ["second-cable"],
  },
  {
    rule: "no-supply",
    says: /^Plug “a” in and leave it in standby\.$/,
    parts: loopOf({ state: "unplugged" }),
    wires: LOOP_WIRES,
    ideas: ["mend"],
  },
  {
    rule: "no-supply",
    says: /^Set “a” to feed the cable\.$/,
    parts: loopOf({ gives: "none" }),
    wires: LOOP_WIRES,
    ideas: ["mend"],
  },
  {
    rule: "level-limits",
    says: /^Turn “a” towards the transmitter\.$/,
    parts: { tv: ["receiver-tv"], c: ["cable", { lengthM: 30 }], a: [...heard({ bearingDeg: 150 })] },
    wires: "a.out > c.in, c.out > tv.in",
    ideas: ["turn-aerial"],
  },
  {
    rule: "level-limits",
    says: /^Turn the elements of “a” to the polarisation of the transmitter\.$/,
    parts: { tv: ["receiver-tv"], c: ["cable", { lengthM: 30 }], a: [...heard({ polarisation: "V" })] },
    wires: "a.out > c.in, c.out > tv.in",
    ideas: ["turn-elements"],
  },
  {
    rule: "shared-frequencies",
    says: /^Turn “a” so that it hears less of the other transmitter, or fit an aerial of narrower beam\.$/,
    parts: {
      tv: ["receiver-tv"],
      a: [
        ...heard(
          {},
          { channel: 26, mode: "dvbt2-256qam-2/3", bearingDeg: 85, wanted: false, levelOffsetDb: -25 },
        ),
      ],
    },
    wires: "a.out > tv.in",
    ideas: ["turn-aerial", "narrow-aerial"],
  },
  {
    rule: "low-carrier-to-noise",
    says: /^Realign “a” or move it to a better place, or amplify right behind it\.$/,
    parts: { tv: ["outlet-tv"], down: ["cable", { lengthM: 20 }], a: [...aerial(33)] },
    wires: "a.out > down.in, down.out > tv.in",
    ideas: ["aim-aerial", "masthead"],
  },
  {
    // An aerial of more gain, too, stands in the drawing as more level from it.
    rule: "low-carrier-to-noise",
    says: /^Realign “a”, move it to a better place, or replace it with an aerial of more gain\.$/,
    parts: { tv: ["outlet-tv"], amp: [...amp({ gainDb: 11, noiseFigureDb: 7 })], a: [...aerial(35)] },
    wires: "a.out > amp.in, amp.out > tv.in",
    ideas: ["aim-aerial"],
  },
  {
    rule: "low-carrier-to-noise",
    says: /^Put a low-noise amplifier before “amp”\.$/,
    parts: { tv: ["outlet-tv"], amp: [...amp({ gainDb: 15, noiseFigureDb: 15 })], a: [...aerial(42)] },
    wires: "a.out > amp.in, amp.out > tv.in",
    ideas: ["masthead"],
  },
  {
    rule: "low-carrier-to-noise",
    says: /^Amplify before “down”, or replace it with cable of lower loss\.$/,
    parts: {
      tv: ["outlet-tv"],
      amp: [...amp({ gainDb: 25 })],
      down: ["cable", { lengthM: 120 }],
      a: [...aerial(50)],
    },
    wires: "a.out > down.in, down.out > amp.in, amp.out > tv.in",
    ideas: ["masthead", "cable-grade"],
  },
  {
    rule: "low-carrier-to-noise",
    says: /^Remove “pad” from the line\.$/,
    parts: {
      tv: ["outlet-tv"],
      amp: [...amp({ gainDb: 20 })],
      pad: ["attenuator", { lossDb: 20 }],
      a: [...aerial(52)],
    },
    wires: "a.out > pad.in, pad.out > amp.in, amp.out > tv.in",
    ideas: ["pad-away"],
  },
  {
    rule: "low-carrier-to-noise",
    says: /^Replace “dish” with a larger dish\.$/,
    parts: dishWith({ diameterM: 0.3 }),
    wires: DISH_WIRES,
    ideas: ["larger-dish"],
  },
  {
    rule: "low-carrier-to-noise",
    says: /^Realign “dish” with a meter\.$/,
    parts: dishWith({ diameterM: 0.8, pointingLossDb: 10 }),
    wires: DISH_WIRES,
    ideas: ["aim-dish"],
  },
  {
    rule: "low-carrier-to-noise",
    says: /^Replace the lead or connector at “p” /,
    parts: phonesInto(36),
    wires: PHONE_WIRES,
    ideas: ["screen-cable"],
  },
  {
    rule: "shared-frequencies",
    says: /^Replace the lead or connector at “p” with a well-screened one\.$/,
    parts: phonesInto(60),
    wires: PHONE_WIRES,
    ideas: ["screen-cable"],
  },
  {
    rule: "level-difference",
    says: /^Put an equaliser into the line, or set a slope at the amplifier before it\.$/,
    parts: {
      tv: ["outlet-tv"],
      amp: [...amp({ gainDb: 30 })],
      k: ["cable", { lengthM: 340 }],
      a: [...aerial(70, [21, 0], [48, -2])],
    },
    wires: "a.out > amp.in, amp.out > k.in, k.out > tv.in",
    ideas: ["equaliser", "amplifier-slope"],
  },
];

test.each(FORMS)(
  "WC2: all that $rule names is proved where it says $says",
  { timeout: 30_000 },
  ({ rule, says, parts, wires, ideas }) => {
    const proved = provedFor(draw(parts, wires), rule);
    expect(proved.cure).toMatch(says);
    expect(proved.ideas).toEqual(expect.arrayContaining([...ideas]));
  },
);

test("WC3: of a limit of the program itself no cure is promised", () => {
  const design = RULE_EXAMPLES.find((e) => e.rule === "many-alternatives")?.speaks.load();
  if (!design) throw new Error("no example");
  const { evaluation, report } = siteOf(design);
  const target = report.findings.find((f) => f.rule === "many-alternatives");
  expect(target && cureOf(target, evaluation)).toBeUndefined();
  expect(target).toBeDefined();
});
