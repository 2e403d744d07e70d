/** Channel stacking: many tuners on one cable, each with a user band of its own. */
import { z } from "zod";
import { flat, passBand } from "../signal/response.ts";
import { TERRESTRIAL_INPUT, terrestrialFields, terrestrialPaths } from "./besideSatellite.ts";
import { define, type PartKind, type Path, type Port, type SwitchDeclaration } from "./contract.ts";
import { WIDEBAND_IF } from "./convertLnb.ts";
import { choice, number, toggle, whole } from "./fields.ts";
import {
  conversion,
  currentField,
  LNB_REJECTION_DB,
  lnbFields,
  lnbLoad,
  SKY_INPUT,
  SWITCH_THRESHOLD_VOLTS,
  universalOscillatorFields,
} from "./lnbFields.ts";
import { lnbSupplies, lnbSupplyFields } from "./lnbSupply.ts";
import {
  IF_FROM_MHZ,
  IF_TO_MHZ,
  numberedOutputs,
  outputId,
  QUADRANT_PORTS,
  quadrantConversion,
  quadrantInputs,
  upTo,
} from "./quadrants.ts";
import { stackPath, userBandCaption, userBandFields } from "./userBands.ts";

const UNIVERSAL_IF = { fromMHz: IF_FROM_MHZ, toMHz: IF_TO_MHZ };

const LNB_OPTIONS = z.object({
  ...userBandFields({ standard: "EN 50494", set: "four" }),
  outputs: choice({
    label: "Stacked outputs",
    help: "Each has all the user bands for itself.",
    choices: [
      { value: "1", label: "1" },
      { value: "2", label: "2" },
    ],
    default: "1",
  }),
  legacy: toggle({
    label: "Switched output too",
    help: "One more output for a receiver that switches by 13/18 V and 22 kHz.",
    default: false,
  }),
  ...lnbFields(),
  currentMa: currentField(280, "200 to 350 mA"),
  ...universalOscillatorFields(),
});

const LEGACY: Port = { id: "legacy", side: "out", medium: "coax", label: "switched" };

/** Inner node where a quadrant stands at its satellite IF. */
const inner = (port: string): string => `#${port}`;
const QUADRANT_NODES = QUADRANT_PORTS.map(({ port }) => inner(port));

const stackedOutputs = (count: number): readonly string[] => upTo(count).map((n) => outputId(n, count));

function stackSwitch(port: string): SwitchDeclaration {
  return { port, by: "stack", positions: 1, thresholdVolts: SWITCH_THRESHOLD_VOLTS };
}

const LNB_STACKED = define({
  kind: "lnb-stacked",
  family: "convert",
  name: "Channel-stacking LNB",
  summary: "Puts the transponder that each tuner asks for onto the tuner's own user band, all on one cable.",
  keywords: ["SCR", "dSCR", "single cable", "one cable", "user band", "EN 50494", "EN 50607", "converter"],
  prefix: "lnb",
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
      ...quadrantConversion(q, o),
    }));
    if (o.legacy)
      for (const { port, quadrant } of QUADRANT_PORTS)
        paths.push({
          from: inner(port),
          to: LEGACY.id,
          response: flat(0),
          condition: { port: LEGACY.id, setting: quadrant },
        });
    const stacks = stackedOutputs(Number(o.outputs)).map((to) => stackPath(o, { from: QUADRANT_NODES, to }));
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

const STACKER_OPTIONS = z.object({
  feed: choice({
    label: "Fed by",
    choices: [
      { value: "quattro", label: "Quattro LNB (4 inputs)" },
      { value: "wideband", label: "Wideband LNB (2 inputs)" },
    ],
    default: "quattro",
  }),
  satellites: choice({
    label: "Satellites",
    choices: [
      { value: "1", label: "1" },
      { value: "2", label: "2" },
    ],
    default: "1",
  }),
  outputs: whole({
    label: "Outputs",
    help: "Each has all the user bands for itself: one for each flat, or each branch.",
    min: 1,
    max: 16,
    default: 4,
  }),
  ...userBandFields({ standard: "EN 50607", set: "thirtyTwo" }),
  ...terrestrialFields(),
  ...lnbSupplyFields(),
  inputLossDb: number({
    label: "Input loss",
    unit: "dB",
    help: "From an input to the stacking stage.",
    min: 0,
    max: 20,
    step: 0.5,
    default: 3,
    source: "order of magnitude, from memory",
    advanced: true,
  }),
});

type StackerOptions = z.output<typeof STACKER_OPTIONS>;

function stackerInputs(o: StackerOptions): readonly Port[] {
  const satellites = Number(o.satellites);
  if (o.feed === "quattro") return quadrantInputs(satellites);
  return upTo(satellites).flatMap((s) =>
    (["V", "H"] as const).map(
      (polarisation): Port => ({
        id: s === 1 ? polarisation.toLowerCase() : `${polarisation.toLowerCase()}${s}`,
        side: "in",
        medium: "coax",
        label: satellites > 1 ? `${s} ${polarisation}` : polarisation,
      }),
    ),
  );
}

const STACKING_CONVERTER = define({
  kind: "stacking-converter",
  family: "convert",
  name: "Stacking converter",
  summary: "Makes single-cable feeds with user bands for flats or branches, terrestrial passed beside.",
  keywords: ["SCR", "dSCR", "single cable", "one cable", "user band", "multiswitch", "block", "flats"],
  prefix: "stacker",
  options: STACKER_OPTIONS,
  symbol: "stacking",
  caption: (o) => `${o.outputs} out · ${userBandCaption(o)}`,
  ports: (o) => [
    ...stackerInputs(o),
    ...(o.terrestrial ? [TERRESTRIAL_INPUT] : []),
    ...numberedOutputs(o.outputs),
  ],
  signal: (o, { powered }) => {
    const outputs = stackedOutputs(o.outputs);
    const beside = terrestrialPaths(o, outputs, powered);
    if (!powered) return { paths: beside };
    const inputs = stackerInputs(o).map(({ id }) => id);
    const response = passBand({
      ...(o.feed === "wideband" ? WIDEBAND_IF : UNIVERSAL_IF),
      gain: flat(-o.inputLossDb),
      rejectionDb: LNB_REJECTION_DB,
    });
    const paths: Path[] = inputs.map((from) => ({ from, to: inner(from), response }));
    const from = inputs.map(inner);
    return { paths: [...paths, ...beside], stacks: outputs.map((to) => stackPath(o, { from, to })) };
  },
  power: (o) => ({
    selfPowered: o.mainsOn,
    supplies: lnbSupplies(
      o,
      stackerInputs(o).map(({ id }) => id),
    ),
    switches: stackedOutputs(o.outputs).map(stackSwitch),
  }),
  cautions: ["mains", "bonding"],
});

export const STACKERS: readonly PartKind[] = [LNB_STACKED, STACKING_CONVERTER];
