/** The channel-stacking LNB: an LNB and a stacking converter for one house in one housing. */
import { z } from "zod";
import { flat } from "../signal/response.ts";
import { define, type Path, type Port } from "./contract.ts";
import { choice, toggle } from "./fields.ts";
import { quadrantFromSky } from "./lnbFeed.ts";
import {
  conversion,
  currentField,
  lnbFields,
  lnbLoad,
  SKY_INPUT,
  SWITCH_THRESHOLD_VOLTS,
  UNIVERSAL_IF,
  universalOscillatorFields,
} from "./lnbFields.ts";
import { numberedOutputs, QUADRANT_PORTS } from "./quadrants.ts";
import { inner, stackedOutputs, stackPath, stackSwitch } from "./stacks.ts";
import { userBandCaption, userBandFields, userBandsOf } from "./userBands.ts";

const QUADRANT_NODES = QUADRANT_PORTS.map(({ port }) => inner(port));

const LNB_OPTIONS = z.object({
  ...userBandFields({ standard: "EN 50494", set: "four", onSite: undefined }),
  outputs: choice({
    label: "Single-cable outputs",
    help: "Each has all the user bands for itself.",
    choices: [
      { value: "1", label: "1" },
      { value: "2", label: "2" },
    ],
    default: "1",
    means: "outputs",
    sold: { values: ["1", "2"], source: "usual, from memory" },
  }),
  legacy: toggle({
    label: "Legacy (switched) output too",
    help: "One more output for a receiver that switches by 13/18 V and 22 kHz.",
    default: false,
  }),
  ...lnbFields(),
  currentMa: currentField(280, "200 to 350 mA"),
  ...universalOscillatorFields(),
});

const LEGACY: Port = { id: "legacy", side: "out", medium: "coax", label: "legacy", role: "output" };

export const LNB_STACKED = define({
  kind: "lnb-stacked",
  family: "convert",
  name: "SCR/dSCR LNB",
  firstName: "Channel-stacking LNB",
  summary: "Puts the transponder that each tuner asks for onto the tuner’s own user band, all on one cable.",
  keywords: [
    "single cable",
    "one cable",
    "user band",
    "channel stacking",
    "EN 50494",
    "EN 50607",
    "converter",
  ],
  prefix: "lnb",
  trade: {
    job: "converter",
    price: 50,
    workMinutes: 40,
    gives: "stacked",
    isRare: true,
    fedWithVolts: 14,
    mistakenFor: [{ kind: "lnb-universal" }],
  },
  options: LNB_OPTIONS,
  symbol: "lnb-stacked",
  caption: userBandCaption,
  ports: (o) => [SKY_INPUT, ...numberedOutputs(Number(o.outputs)), ...(o.legacy ? [LEGACY] : [])],
  signal: (o, { powered }) => {
    if (!powered) return {};
    const active = conversion(o, UNIVERSAL_IF);
    const paths: Path[] = QUADRANT_PORTS.map((q) => ({
      from: "sky",
      to: inner(q.port),
      ...active,
      ...quadrantFromSky(q, o),
    }));
    if (o.legacy)
      for (const { port, quadrant } of QUADRANT_PORTS)
        paths.push({
          from: inner(port),
          to: LEGACY.id,
          response: flat(0),
          condition: { port: LEGACY.id, setting: quadrant },
        });
    const stacks = stackedOutputs(Number(o.outputs)).map((to) =>
      stackPath(o, { from: QUADRANT_NODES, to, standard: o.standard, userBands: userBandsOf(o) }),
    );
    return { paths, stacks };
  },
  power: (o) => {
    const stacked = stackedOutputs(Number(o.outputs));
    return {
      load: lnbLoad(o.currentMa, o.legacy ? [...stacked, LEGACY.id] : stacked),
      switches: [
        ...stacked.map(stackSwitch),
        ...(o.legacy
          ? [
              {
                port: LEGACY.id,
                by: "quadrant" as const,
                positions: 1,
                thresholdVolts: SWITCH_THRESHOLD_VOLTS,
              },
            ]
          : []),
      ],
    };
  },
  cautions: ["height"],
});
