/** The stacking converter: single-cable feeds for the branches of a house or the flats of a block. */
import { z } from "zod";
import { flat, passBand } from "../signal/response.ts";
import { TERRESTRIAL_INPUT, terrestrialFields, terrestrialPaths } from "./besideSatellite.ts";
import { define, type Path, type Port } from "./contract.ts";
import { crosstalkField, crosstalkFrom } from "./crosstalk.ts";
import { choice, number, wholeNumber } from "./fields.ts";
import { LNB_REJECTION_DB, UNIVERSAL_IF, WIDEBAND_IF } from "./lnbFields.ts";
import { lnbSupplies, lnbSupplyFields } from "./lnbSupply.ts";
import { decoupling } from "./passive.ts";
import { numberedOutputs, quadrantInputs, upTo } from "./quadrants.ts";
import { inner, stackedOutputs, stackPath, stackSwitch } from "./stacks.ts";
import { userBandCaption, userBandFields } from "./userBands.ts";

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
  outputs: wholeNumber({
    label: "Outputs",
    help: "Each has all the user bands for itself: one for each flat, or each branch.",
    min: 1,
    max: 16,
    default: 4,
    means: "outputs",
    sold: { values: [1, 2, 4, 6, 8, 12, 16], source: "usual, from memory" },
  }),
  ...userBandFields({ standard: "EN 50607", set: "thirtyTwo", onSite: "setting" }),
  ...terrestrialFields(),
  ...lnbSupplyFields(),
  inputLossDb: number({
    label: "Input loss",
    unit: "dB",
    help: "From an input to the stage that makes the user bands.",
    min: 0,
    max: 20,
    step: 0.5,
    default: 3,
    source: "order of magnitude, from memory",
    advanced: true,
    spreadDb: 1,
  }),
  crosstalkDb: crosstalkField(),
  isolationDb: decoupling(28),
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
        role: "plane",
        plane: { position: s, polarisation },
      }),
    ),
  );
}

export const STACKING_CONVERTER = define({
  kind: "stacking-converter",
  family: "convert",
  name: "SCR/dSCR multiswitch",
  firstName: "Stacking converter",
  summary:
    "Makes single-cable feeds with user bands for flats or branches, and passes TV and radio beside them.",
  keywords: ["single cable", "one cable", "user band", "multiswitch", "block", "flats"],
  prefix: "stacker",
  trade: { job: "switch unit", price: 180, workMinutes: 45, gives: "stacked", isRare: true },
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
    if (!powered) return { paths: beside, isolationDb: o.isolationDb };
    const inputs = stackerInputs(o).map(({ id }) => id);
    const response = passBand({
      ...(o.feed === "wideband" ? WIDEBAND_IF : UNIVERSAL_IF),
      gain: flat(-o.inputLossDb),
      rejectionDb: LNB_REJECTION_DB,
    });
    const paths: Path[] = inputs.map((from) => ({
      from,
      to: inner(from),
      response,
      ...crosstalkFrom(inputs, from, o.crosstalkDb),
    }));
    const from = inputs.map(inner);
    const planes = Object.fromEntries(
      stackerInputs(o).flatMap(({ id, plane }) => (plane ? [[inner(id), plane]] : [])),
    );
    return {
      paths: [...paths, ...beside],
      stacks: outputs.map((to) => ({ ...stackPath(o, { from, to }), planes })),
      isolationDb: o.isolationDb,
    };
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
