/** The stacking converter: single-cable feeds for the branches of a house or the flats of a block. */
import { z } from "zod";
import { TERRESTRIAL_INPUT, terrestrialFields, terrestrialPaths } from "./besideSatellite.ts";
import { define, type Port } from "./contract.ts";
import { crosstalkField } from "./crosstalk.ts";
import { choice, wholeNumber } from "./fields.ts";
import { UNIVERSAL_IF, WIDEBAND_IF } from "./lnbFields.ts";
import {
  energySavingField,
  lnbSupplies,
  lnbSupplyFields,
  terrestrialSupplies,
  terrestrialSupplyFields,
} from "./lnbSupply.ts";
import { decoupling } from "./passive.ts";
import { numberedOutputs, polarisationInputs, quadrantInputs } from "./quadrants.ts";

import { stackedOutputs, stackInputFields, stackInputs, stackPath, stackSwitch } from "./stacks.ts";
import { unitOscillator } from "./unitOscillator.ts";
import { userBandCaption, userBandFields, userBandsOf } from "./userBands.ts";

const STACKER_OPTIONS = z.object({
  feed: choice({
    label: "Fed by",
    choices: [
      { value: "quattro", label: "Quattro LNB (4 inputs)" },
      { value: "wideband", label: "Wideband LNB (2 inputs)" },
    ],
    default: "quattro",
  }),
  widebandLoMHz: unitOscillator(),
  satellites: choice({
    label: "Satellites",
    choices: [
      { value: "1", label: "1" },
      { value: "2", label: "2" },
      { value: "4", label: "4" },
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
  ...terrestrialSupplyFields(),
  ...lnbSupplyFields(),
  energySaving: energySavingField(),
  ...stackInputFields(),
  crosstalkDb: crosstalkField(),
  isolationDb: decoupling(28),
});

type StackerOptions = z.output<typeof STACKER_OPTIONS>;

function stackerInputs(o: StackerOptions): readonly Port[] {
  const satellites = Number(o.satellites);
  return o.feed === "quattro" ? quadrantInputs(satellites) : polarisationInputs(satellites);
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
    const passes = o.feed === "wideband" ? WIDEBAND_IF : UNIVERSAL_IF;
    const { paths, from, planes } = stackInputs(o, { inputs: stackerInputs(o), passes });
    const bands = {
      standard: o.standard,
      userBands: userBandsOf(o),
      ...(o.feed === "wideband" ? { widebandLoMHz: o.widebandLoMHz } : {}),
    };
    return {
      paths: [...paths, ...beside],
      stacks: outputs.map((to) => stackPath(o, { from, to, planes, ...bands })),
      isolationDb: o.isolationDb,
    };
  },
  power: (o) => {
    const outputs = stackedOutputs(o.outputs);
    const wakes = o.energySaving ? { whileFedAt: outputs } : {};
    return {
      selfPowered: o.mainsOn,
      supplies: [...lnbSupplies(o, stackerInputs(o), wakes), ...terrestrialSupplies(o, wakes)],
      switches: outputs.map(stackSwitch),
    };
  },
  cautions: ["mains", "bonding"],
});
