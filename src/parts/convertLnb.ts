/** Low-noise block converters: universal, quattro, wideband. The stacking one is in lnbStacked.ts. */
import { z } from "zod";
import { numeral } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import {
  define,
  type PartKind,
  type Path,
  type Port,
  type SignalTreatment,
  type SwitchDeclaration,
} from "./contract.ts";
import { choice, number } from "./fields.ts";
import { feedShares, quadrantFromSky } from "./lnbFeed.ts";
import {
  conversion,
  currentField,
  currentFields,
  lnbFields,
  lnbLoad,
  SKY_INPUT,
  SWITCH_THRESHOLD_VOLTS,
  UNIVERSAL_IF,
  universalOscillatorFields,
  WIDEBAND_IF,
} from "./lnbFields.ts";
import { LNB_MONOBLOCK } from "./lnbMonoblock.ts";
import { LNBS_OF_ONE_BAND } from "./lnbOneBand.ts";
import { SKY_FROM_MHZ, SKY_TO_MHZ } from "./planSatellite.ts";
import { numberedOutputs, QUADRANT_PORTS, upTo } from "./quadrants.ts";

/** Without supply nothing oscillates and nothing is converted: no way through at all. */
const DEAD: SignalTreatment = {};

const UNIVERSAL_OPTIONS = z.object({
  outputs: choice({
    label: "Outputs",
    help: "Each output gives one receiver the quadrant that it asks for.",
    choices: [
      { value: "1", label: "1 (single)" },
      { value: "2", label: "2 (twin)" },
      { value: "4", label: "4 (quad)" },
      { value: "8", label: "8 (octo)" },
    ],
    default: "1",
    means: "outputs",
    sold: { values: ["1", "2", "4", "8"], source: "usual, from memory" },
  }),
  ...lnbFields(),
  ...currentFields({
    commonMa: 60,
    outputMa: 35,
    source:
      "fits typical single 60 to 120, twin 120 to 200, quad 180 to 280, octo 250 to 400 mA, from memory",
  }),
  ...universalOscillatorFields(),
});

const outputsOf = (o: { outputs: string }): readonly Port[] => numberedOutputs(Number(o.outputs));

type Converting = Parameters<typeof conversion>[0] & Parameters<typeof quadrantFromSky>[1];

/** Outputs that each give the quadrant that their line asks for. */
function switchedPaths(o: Converting, outputs: readonly Port[]): readonly Path[] {
  const active = conversion(o, UNIVERSAL_IF);
  return outputs.flatMap(({ id }) =>
    QUADRANT_PORTS.map((q) => ({
      from: "sky",
      to: id,
      ...active,
      ...quadrantFromSky(q, o),
      condition: { port: id, setting: q.quadrant },
    })),
  );
}

const quadrantSwitches = (outputs: readonly Port[]): readonly SwitchDeclaration[] =>
  outputs.map(({ id }) => ({
    port: id,
    by: "quadrant",
    positions: 1,
    thresholdVolts: SWITCH_THRESHOLD_VOLTS,
  }));

const LNB_UNIVERSAL = define({
  kind: "lnb-universal",
  family: "convert",
  name: "Universal LNB",
  summary: "Brings the quadrant that a receiver asks for down to 950–2150 MHz; one receiver for each output.",
  keywords: ["low-noise block converter", "single", "twin", "quad", "octo", "converter", "head"],
  prefix: "lnb",
  trade: {
    job: "converter",
    price: 30,
    workMinutes: 40,
    gives: "switched",
    fedWithVolts: 14,
    mistakenFor: [{ kind: "lnb-wideband" }, { kind: "lnb-quattro" }, { kind: "lnb-stacked" }],
  },
  options: UNIVERSAL_OPTIONS,
  symbol: "lnb",
  caption: (o) => plural(Number(o.outputs), { one: (n) => `${n} output`, other: (n) => `${n} outputs` }),
  ports: (o) => [SKY_INPUT, ...outputsOf(o)],
  signal: (o, { powered }) => {
    if (!powered) return DEAD;
    return { paths: switchedPaths(o, outputsOf(o)) };
  },
  power: (o) => {
    const outputs = outputsOf(o);
    return {
      load: lnbLoad(
        o,
        o.commonMa,
        outputs.map(({ id }) => id),
        { milliamps: o.outputMa, ports: outputs.map(({ id }) => id) },
      ),
      switches: quadrantSwitches(outputs),
    };
  },
  cautions: ["height"],
});

const QUATTRO_OPTIONS = z.object({
  ...lnbFields(),
  currentMa: currentField(200, "150 to 250 mA"),
  ...universalOscillatorFields(),
});

const QUATTRO_OUTPUTS: readonly Port[] = QUADRANT_PORTS.map(({ port, quadrant, polarisation, half }) => ({
  id: port,
  side: "out",
  medium: "coax",
  label: quadrant,
  role: "plane",
  plane: { position: 1, polarisation, half },
}));

const LNB_QUATTRO = define({
  kind: "lnb-quattro",
  family: "convert",
  name: "Quattro LNB",
  summary: "Gives all four quadrants at once on four fixed outputs, for a multiswitch.",
  keywords: ["low-noise block converter", "multiswitch", "fixed", "four", "converter", "head"],
  prefix: "lnb",
  trade: {
    job: "converter",
    price: 40,
    workMinutes: 40,
    gives: "planes",
    leadsTo: ["switch unit", "cable"],
    fedWithVolts: 14,
    mistakenFor: [
      { kind: "lnb-universal", options: { outputs: "4", commonMa: 140 } },
      { kind: "lnb-wideband" },
    ],
  },
  options: QUATTRO_OPTIONS,
  symbol: "lnb-quattro",
  caption: () => "4 fixed outputs",
  ports: () => [SKY_INPUT, ...QUATTRO_OUTPUTS],
  signal: (o, { powered }) => {
    if (!powered) return DEAD;
    const active = conversion(o, UNIVERSAL_IF);
    return {
      paths: QUADRANT_PORTS.map((q) => ({ from: "sky", to: q.port, ...active, ...quadrantFromSky(q, o) })),
    };
  },
  power: (o) => ({
    load: lnbLoad(
      o,
      o.currentMa,
      QUATTRO_OUTPUTS.map(({ id }) => id),
    ),
  }),
  cautions: ["height"],
});

const WITH_SWITCHED = { onlyWhen: { switchedOutputs: ["1", "2", "4", "6"] } } as const;

const WIDEBAND_OPTIONS = z.object({
  loMHz: number({
    label: "Oscillator",
    unit: "MHz",
    help: `${numeral(10_400)} MHz puts the whole band at 300 to 2350 MHz; ${numeral(10_410)} MHz exists as well.`,
    min: 10_200,
    max: 10_600,
    step: 1,
    default: 10_400,
    source: "usual value, from memory",
  }),
  switchedOutputs: choice({
    label: "Switched outputs too",
    help: "Outputs beside V and H for receivers that switch by 13/18 V and 22 kHz.",
    choices: [
      { value: "0", label: "none" },
      { value: "1", label: "1" },
      { value: "2", label: "2" },
      { value: "4", label: "4" },
      { value: "6", label: "6" },
    ],
    default: "0",
    sold: { values: ["0", "2", "4", "6"], source: "usual, from memory" },
  }),
  ...lnbFields(),
  currentMa: currentField(120, "80 to 200 mA"),
  switchedMa: number({
    label: "Current for each switched output",
    unit: "mA",
    help: "What each of these outputs adds.",
    min: 0,
    max: 200,
    step: 5,
    default: 35,
    source: "as an output of a universal LNB, from memory",
    advanced: true,
    ...WITH_SWITCHED,
  }),
  ...universalOscillatorFields(WITH_SWITCHED),
});

/** Its switched outputs, named so that a plan tells them from V and H. */
const switchedOf = (o: { switchedOutputs: string }): readonly Port[] =>
  upTo(Number(o.switchedOutputs)).map((n) => ({
    id: `sw${n}`,
    side: "out",
    medium: "coax",
    label: `switched ${n}`,
    role: "output",
  }));

const WIDEBAND_OUTPUTS: readonly Port[] = (["V", "H"] as const).map((polarisation) => ({
  id: polarisation.toLowerCase(),
  side: "out",
  medium: "coax",
  label: polarisation,
  role: "plane",
  plane: { position: 1, polarisation },
}));

const LNB_WIDEBAND = define({
  kind: "lnb-wideband",
  family: "convert",
  name: "Wideband LNB",
  summary:
    "Gives the whole of each polarisation at once at 300–2350 MHz: two cables for any number of tuners.",
  keywords: [
    "low-noise block converter",
    "wide band",
    "two cables",
    "hybrid",
    "converter",
    "head",
    "full band",
  ],
  prefix: "lnb",
  trade: {
    job: "converter",
    price: 30,
    workMinutes: 40,
    gives: "wideband",
    fedWithVolts: 14,
    mistakenFor: [{ kind: "lnb-universal", options: { outputs: "2" } }],
  },
  options: WIDEBAND_OPTIONS,
  symbol: "lnb-wideband",
  caption: (o) => {
    const switched = Number(o.switchedOutputs) > 0 ? ` · ${o.switchedOutputs} switched` : "";
    return `V and H${switched} · oscillator ${numeral(o.loMHz / 1000, 3)} GHz`;
  },
  ports: (o) => [SKY_INPUT, ...WIDEBAND_OUTPUTS, ...switchedOf(o)],
  signal: (o, { powered }) => {
    if (!powered) return DEAD;
    const active = conversion(o, WIDEBAND_IF);
    const wide = (["V", "H"] as const).map((polarisation) => ({
      from: "sky",
      to: polarisation.toLowerCase(),
      ...active,
      takes: { polarisation, fromMHz: SKY_FROM_MHZ, toMHz: SKY_TO_MHZ },
      feed: feedShares(polarisation, o),
      loMHz: o.loMHz,
    }));
    return { paths: [...wide, ...switchedPaths(o, switchedOf(o))] };
  },
  power: (o) => {
    const switched = switchedOf(o);
    const ports = [...WIDEBAND_OUTPUTS, ...switched].map(({ id }) => id);
    return {
      load: lnbLoad(
        o,
        o.currentMa,
        ports,
        switched.length > 0 ? { milliamps: o.switchedMa, ports: switched.map(({ id }) => id) } : undefined,
      ),
      ...(switched.length > 0 ? { switches: quadrantSwitches(switched) } : {}),
    };
  },
  cautions: ["height"],
});

export const LNBS: readonly PartKind[] = [
  LNB_UNIVERSAL,
  LNB_MONOBLOCK,
  LNB_QUATTRO,
  LNB_WIDEBAND,
  ...LNBS_OF_ONE_BAND,
];
