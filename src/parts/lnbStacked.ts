/** The channel-stacking LNB: an LNB and a stacking converter for one house in one housing. */
import { z } from "zod";
import { flat } from "../signal/response.ts";
import { define, type Path, type Port } from "./contract.ts";
import { choice, number, toggle } from "./fields.ts";
import { feedShares, quadrantFromSky } from "./lnbFeed.ts";
import {
  conversion,
  currentField,
  lnbFields,
  lnbLoad,
  SKY_INPUT,
  SWITCH_THRESHOLD_VOLTS,
  UNIVERSAL_IF,
  universalOscillatorFields,
  WIDEBAND_IF,
} from "./lnbFields.ts";
import { SKY_FROM_MHZ, SKY_TO_MHZ } from "./planSatellite.ts";
import { numberedOutputs, QUADRANT_PORTS, quadrantOfWhole } from "./quadrants.ts";
import { inner, stackedOutputs, stackPath, stackSwitch } from "./stacks.ts";
import { userBandCaption, userBandFields, userBandsOf } from "./userBands.ts";

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
  oscillators: choice({
    label: "Oscillators",
    help: "With one for the whole band each polarisation is brought down at once; the user bands stay what they are.",
    choices: [
      { value: "two", label: "Two, as a universal LNB" },
      { value: "one", label: "One for the whole band" },
    ],
    default: "two",
    advanced: true,
  }),
  ...universalOscillatorFields({ onlyWhen: { oscillators: "two" } }),
  singleLoMHz: number({
    label: "Oscillator for the whole band",
    unit: "MHz",
    min: 10_200,
    max: 10_600,
    step: 1,
    default: 10_400,
    source: "as in a wideband LNB, from memory",
    advanced: true,
    onlyWhen: { oscillators: "one" },
  }),
});

type LnbOptions = z.output<typeof LNB_OPTIONS>;

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
    const { paths, nodes: from } = o.oscillators === "one" ? wholeStage(o) : quadrantStage(o);
    const stacks = stackedOutputs(Number(o.outputs)).map((to) =>
      stackPath(o, { from, to, standard: o.standard, userBands: userBandsOf(o) }),
    );
    return { paths, stacks };
  },
  power: (o) => {
    const stacked = stackedOutputs(Number(o.outputs));
    return {
      load: lnbLoad(o, o.currentMa, o.legacy ? [...stacked, LEGACY.id] : stacked),
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

/** Ways from the sky to the nodes that the user bands are made of, and on to the legacy output. */
type Stage = { readonly paths: readonly Path[]; readonly nodes: readonly string[] };

function quadrantStage(o: LnbOptions): Stage {
  const active = conversion(o, UNIVERSAL_IF);
  const paths = QUADRANT_PORTS.map(
    (q): Path => ({ from: "sky", to: inner(q.port), ...active, ...quadrantFromSky(q, o) }),
  );
  const legacy = QUADRANT_PORTS.map((q): Path => ({ from: inner(q.port), ...legacyWay(q.quadrant) }));
  return {
    paths: [...paths, ...(o.legacy ? legacy : [])],
    nodes: QUADRANT_PORTS.map(({ port }) => inner(port)),
  };
}

/** With one oscillator a whole polarisation comes down at once, and the legacy output is made of it. */
function wholeStage(o: LnbOptions): Stage {
  const active = conversion(o, WIDEBAND_IF);
  const paths = POLARISATIONS.map(
    (polarisation): Path => ({
      from: "sky",
      to: inner(polarisation.toLowerCase()),
      ...active,
      takes: { polarisation, fromMHz: SKY_FROM_MHZ, toMHz: SKY_TO_MHZ },
      loMHz: o.singleLoMHz,
      feed: feedShares(polarisation, o),
    }),
  );
  const legacy = QUADRANT_PORTS.map(
    (q): Path => ({
      from: inner(q.polarisation.toLowerCase()),
      ...quadrantOfWhole(q, o.singleLoMHz),
      ...legacyWay(q.quadrant),
    }),
  );
  return {
    paths: [...paths, ...(o.legacy ? legacy : [])],
    nodes: POLARISATIONS.map((polarisation) => inner(polarisation.toLowerCase())),
  };
}

const POLARISATIONS = ["V", "H"] as const;

function legacyWay(quadrant: string): Pick<Path, "to" | "response" | "condition"> {
  return { to: LEGACY.id, response: flat(0), condition: { port: LEGACY.id, setting: quadrant } };
}
