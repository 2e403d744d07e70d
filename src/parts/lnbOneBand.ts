/** LNBs with one oscillator, for C band and for Ka band: outputs that only switch the polarisation, by 13/18 V. */
import { z } from "zod";
import { kelvinToNoiseFigureDb } from "../rf/noise.ts";
import { numeral } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { define, type PartKind, type Path } from "./contract.ts";
import { number } from "./fields.ts";
import { feedShares } from "./lnbFeed.ts";
import {
  conversion,
  currentFields,
  lnbFields,
  lnbLoad,
  outputsField,
  SKY_INPUT,
  SWITCH_THRESHOLD_VOLTS,
  UNIVERSAL_IF,
} from "./lnbFields.ts";
import { SATELLITE_BANDS, type SatelliteBand } from "./planSatellite.ts";
import { C_BAND_LO_MHZ, KA_BAND_LO_MHZ, numberedOutputs } from "./quadrants.ts";

const OUTPUTS = outputsField(
  "Each output gives one receiver the polarisation that it asks for by 13/18 V. A tone changes nothing.",
);

/** What the LNB takes of the sky, and with which oscillator. */
function rangeFields(
  band: SatelliteBand,
  typical: { readonly fromMHz: number; readonly toMHz: number; readonly loMHz: number },
  words: { readonly range: string; readonly oscillator: string },
) {
  const { fromMHz, toMHz } = SATELLITE_BANDS[band];
  const edge = (label: string, value: number, help: string) =>
    number({
      label,
      unit: "MHz",
      help,
      min: fromMHz,
      max: toMHz,
      step: 1,
      default: value,
      source: "as usually sold, from memory",
    });
  return {
    fromMHz: edge("Receives from", typical.fromMHz, words.range),
    toMHz: edge("Receives to", typical.toMHz, "Upper end of what its input filter takes."),
    loMHz: number({
      label: "Oscillator",
      unit: "MHz",
      help: words.oscillator,
      min: fromMHz - 2_200,
      max: toMHz + 2_200,
      step: 1,
      default: typical.loMHz,
      source: "one of those that are sold, from memory",
    }),
  };
}

const { noiseFigureDb: _, ...C_BAND_FIELDS } = lnbFields({ gainDb: 60 });

const C_BAND_OPTIONS = z.object({
  outputs: OUTPUTS,
  ...rangeFields(
    "C",
    { fromMHz: 3_400, toMHz: 4_200, loMHz: C_BAND_LO_MHZ },
    {
      range: `Lower end of what its input filter takes. Types from ${numeral(3_700)} MHz keep 5G phone masts out.`,
      oscillator: "Above the band: the highest frequency comes out lowest. Receivers find it by their menu.",
    },
  ),
  noiseKelvin: number({
    label: "Noise temperature",
    unit: "K",
    help: `As sheets for C band state it. Makers print 13 to 20 K; 30 K is a cautious planning value, ${numeral(0.4)} dB.`,
    min: 5,
    max: 300,
    step: 1,
    default: 30,
    source: "cautious planning value, from memory",
  }),
  ...C_BAND_FIELDS,
  ...currentFields({
    commonMa: 80,
    outputMa: 40,
    source: "fits typical single 90 to 150, twin 130 to 220 mA, from memory",
  }),
});

const KA_BAND_OPTIONS = z.object({
  outputs: OUTPUTS,
  ...rangeFields(
    "Ka",
    { fromMHz: 19_200, toMHz: 20_200, loMHz: KA_BAND_LO_MHZ },
    {
      range: "Lower end of what its input filter takes.",
      oscillator: `Sold with ${numeral(17_250)}, ${numeral(18_250)}, ${numeral(19_250)} and ${numeral(21_200)} MHz. One above the band turns the order of frequencies round.`,
    },
  ),
  ...lnbFields({ feedType: "circular" }),
  noiseFigureDb: number({
    label: "Noise figure",
    unit: "dB",
    min: 0.1,
    max: 5,
    step: 0.1,
    default: 1.5,
    source: "typical (1.2 to 1.8), from memory",
    spreadDb: 0.2,
  }),
  ...currentFields({
    commonMa: 100,
    outputMa: 40,
    source: "order of magnitude, from memory; see the LNB’s sheet",
  }),
});

type OneBand = {
  readonly outputs: string;
  readonly fromMHz: number;
  readonly toMHz: number;
  readonly loMHz: number;
};

type Microwave = Parameters<typeof conversion>[0] & Parameters<typeof feedShares>[1];

/** Each output gives one of two polarisations; an oscillator above all that is taken turns the order round. */
function pathsOf(o: OneBand & Microwave): readonly Path[] {
  const active = conversion(o, UNIVERSAL_IF);
  return numberedOutputs(Number(o.outputs)).flatMap(({ id }) =>
    (["V", "H"] as const).map((polarisation) => ({
      from: "sky",
      to: id,
      ...active,
      takes: { polarisation, half: "low" as const, fromMHz: o.fromMHz, toMHz: o.toMHz },
      feed: feedShares(polarisation, o),
      loMHz: o.loMHz,
      ...(o.loMHz >= o.toMHz ? { isInverted: true as const } : {}),
      condition: { port: id, setting: polarisation },
    })),
  );
}

type Powered = Parameters<typeof lnbLoad>[0] & {
  readonly outputs: string;
  readonly commonMa: number;
  readonly outputMa: number;
};

function powerOf(o: Powered) {
  const outputs = numberedOutputs(Number(o.outputs)).map(({ id }) => id);
  return {
    load: lnbLoad(o, o.commonMa, outputs, { milliamps: o.outputMa, ports: outputs }),
    switches: outputs.map((port) => ({
      port,
      by: "polarisation" as const,
      positions: 1,
      thresholdVolts: SWITCH_THRESHOLD_VOLTS,
    })),
  };
}

function captionOf(o: OneBand): string {
  const outputs = plural(Number(o.outputs), { one: (n) => `${n} output`, other: (n) => `${n} outputs` });
  return `${outputs} · oscillator ${numeral(o.loMHz / 1000, 3)} GHz`;
}

const LNB_C = define({
  kind: "lnb-c-band",
  family: "convert",
  name: "LNB for C band",
  summary:
    "Brings satellites of C band down to 950–1750 MHz with an oscillator above the band; each output switches the polarisation.",
  keywords: ["low-noise block converter", "LNBF", "4 GHz", "inverted", "single", "twin", "converter", "head"],
  prefix: "lnb",
  trade: {
    job: "converter",
    price: 30,
    workMinutes: 60,
    gives: "switched",
    fedWithVolts: 14,
    isRare: true,
    mistakenFor: [{ kind: "lnb-universal" }],
    satelliteBand: "C",
  },
  options: C_BAND_OPTIONS,
  symbol: "lnb",
  caption: captionOf,
  ports: (o) => [SKY_INPUT, ...numberedOutputs(Number(o.outputs))],
  signal: (o, { powered }) =>
    powered ? { paths: pathsOf({ ...o, noiseFigureDb: kelvinToNoiseFigureDb(o.noiseKelvin) }) } : {},
  power: powerOf,
  cautions: ["height"],
});

const LNB_KA = define({
  kind: "lnb-ka-band",
  family: "convert",
  name: "LNB for Ka band",
  summary:
    "Brings a part of Ka band, about 20 GHz, down to satellite IF with one oscillator; each output switches the polarisation.",
  keywords: ["low-noise block converter", "LNBF", "20 GHz", "single", "twin", "converter", "head"],
  prefix: "lnb",
  trade: {
    job: "converter",
    price: 80,
    workMinutes: 40,
    gives: "switched",
    fedWithVolts: 14,
    isRare: true,
    mistakenFor: [{ kind: "lnb-universal" }],
    satelliteBand: "Ka",
  },
  options: KA_BAND_OPTIONS,
  symbol: "lnb",
  caption: captionOf,
  ports: (o) => [SKY_INPUT, ...numberedOutputs(Number(o.outputs))],
  signal: (o, { powered }) => (powered ? { paths: pathsOf(o) } : {}),
  power: powerOf,
  cautions: ["height"],
});

export const LNBS_OF_ONE_BAND: readonly PartKind[] = [LNB_C, LNB_KA];
