/** The monoblock: two LNBs side by side in one housing, with the position switch between them built in. */
import { z } from "zod";
import { numeral } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { define, type Path, type Port } from "./contract.ts";
import { crosstalkField, crosstalkFrom } from "./crosstalk.ts";
import { feedPort } from "./dishFeeds.ts";
import { choice } from "./fields.ts";
import { quadrantFromSky } from "./lnbFeed.ts";
import {
  conversion,
  currentFields,
  lnbFields,
  lnbLoad,
  outputsField,
  SWITCH_THRESHOLD_VOLTS,
  UNIVERSAL_IF,
  universalOscillatorFields,
} from "./lnbFields.ts";
import { numberedOutputs, QUADRANT_PORTS, upTo } from "./quadrants.ts";

const OPTIONS = z.object({
  outputs: outputsField("Each output gives one receiver any quadrant of either satellite."),
  heeds: choice({
    label: "Listens to",
    help: "Most take a position command. Older ones know a tone burst only.",
    choices: [
      { value: "committed", label: "Position (committed)" },
      { value: "burst", label: "Tone burst A/B" },
    ],
    default: "committed",
  }),
  ...lnbFields(),
  crosstalkDb: crosstalkField(),
  ...currentFields({
    commonMa: 110,
    outputMa: 40,
    source: "fits typical single 110 to 180, twin 180 to 250, quad 250 to 350 mA, from memory",
  }),
  ...universalOscillatorFields(),
});

/** Position 1 is the LNB in the focus, position 2 the one beside it: as most are wired, from memory. */
const FEEDS: readonly Port[] = upTo(2).map((n) => ({
  id: feedPort(n),
  side: "in",
  medium: "sky",
  label: `feed ${n}`,
  role: "beam",
}));
const FEED_PORTS = FEEDS.map(({ id }) => id);

export const LNB_MONOBLOCK = define({
  kind: "lnb-monoblock",
  family: "convert",
  name: "Monoblock LNB",
  summary:
    "Two LNBs in one housing for two satellites on one dish; a receiver chooses between them by its position command.",
  keywords: [
    "low-noise block converter",
    "two satellites",
    "DiSEqC",
    "dual feed",
    "twin",
    "quad",
    "converter",
    "head",
    `${numeral(4.3)}°`,
    "6°",
  ],
  prefix: "lnb",
  trade: {
    job: "converter",
    price: 45,
    workMinutes: 40,
    gives: "switched",
    fedWithVolts: 14,
    isRare: true,
  },
  options: OPTIONS,
  symbol: "lnb-monoblock",
  caption: (o) =>
    `2 satellites · ${plural(Number(o.outputs), { one: (n) => `${n} output`, other: (n) => `${n} outputs` })}`,
  ports: (o) => [...FEEDS, ...numberedOutputs(Number(o.outputs))],
  signal: (o, { powered }) => {
    if (!powered) return {};
    const active = conversion(o, UNIVERSAL_IF);
    const paths: readonly Path[] = numberedOutputs(Number(o.outputs)).flatMap(({ id }) =>
      FEED_PORTS.flatMap((from, i) =>
        QUADRANT_PORTS.map((q) => ({
          from,
          to: id,
          ...active,
          ...quadrantFromSky(q, o),
          ...crosstalkFrom(FEED_PORTS, from, o.crosstalkDb),
          condition: { port: id, setting: `${i + 1}:${q.quadrant}` },
        })),
      ),
    );
    return { paths };
  },
  power: (o) => {
    const outputs = numberedOutputs(Number(o.outputs)).map(({ id }) => id);
    return {
      load: lnbLoad(o, o.commonMa, outputs, { milliamps: o.outputMa, ports: outputs }),
      switches: outputs.map((port) => ({
        port,
        by: "both",
        positions: FEEDS.length,
        heeds: o.heeds,
        thresholdVolts: SWITCH_THRESHOLD_VOLTS,
      })),
    };
  },
  cautions: ["height"],
});
