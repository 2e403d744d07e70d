/** What aerials for terrestrial television share: their list of channels, and what comes of it. */
import { z } from "zod";
import type { PatternBand } from "../rf/aerialPattern.ts";
import { numeral } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { aerialCaption, aerialEmits, levelFields, levelOffset } from "./aerialLevel.ts";
import { define, type PartKind, type Port } from "./contract.ts";
import { choice, rows, toggle, wholeNumber } from "./fields.ts";
import { modeChoices } from "./modeChoices.ts";
import { tvCarrier, tvCarrierOnAir } from "./plans.ts";
import type { SymbolName } from "./symbols.ts";
import { aimFields, transmitterRow } from "./transmitters.ts";
import { channelEntry, type rasterField, rasterOf, vhfRasterOf } from "./tvRasters.ts";

export const AERIAL_OUT: readonly Port[] = [
  { id: "out", side: "out", medium: "coax", label: "out", role: "output" },
];

/** "6 channels". */
export const channelCount = (n: number) =>
  plural(n, {
    zero: "no channel",
    one: (count) => `${count} channel`,
    other: (count) => `${count} channels`,
  });

type Channels = {
  /** Numbers that some raster has. */
  readonly lowest: number;
  readonly highest: number;
  /** Number of a new row. */
  readonly first: number;
  readonly help: string;
  readonly raster: ReturnType<typeof rasterField>;
  /** An invented list. */
  readonly onAir: readonly { readonly channel: number; readonly mode: string }[];
};

/** Options of an aerial for the channels of one band; levels and gain [dBµV, dBµV/m, dBi] are typical ones. */
export function televisionOptions(
  levels: Omit<Parameters<typeof levelFields>[0], "gainHelp">,
  { lowest, highest, first, help, raster, onAir }: Channels,
) {
  return z.object({
    ...levelFields({
      ...levels,
      gainHelp: `Over an isotropic aerial; add ${numeral(2.15, 2)} dB to a gain stated over a dipole (dBd).`,
    }),
    ...aimFields(),
    raster,
    channels: rows({
      label: "Channels",
      help,
      row: z.object({
        channel: wholeNumber({ label: "Channel", min: lowest, max: highest, default: first }),
        mode: choice({
          label: "Modulation",
          help: "Decides the C/N that the channel needs.",
          choices: modeChoices("dvbt-", "dvbt2-"),
          default: "dvbt-64qam-2/3",
        }),
        levelOffsetDb: levelOffset(),
        ...transmitterRow(),
      }),
      maxRows: 200,
      default: onAir,
      source: "invented list",
      onSite: "not ours",
    }),
  });
}

/** Of UHF aerials: whether what was given to phones in most of Europe still carries television. */
export const formerOnAir = toggle({
  label: "TV above 694 MHz on air",
  help: "Off in most of Europe, where phones use 694 to 862 MHz now: nobody misses channels listed up there. With 6 MHz channels from 698 MHz.",
  default: false,
  source: "Decision (EU) 2017/899, from memory",
  onSite: "not ours",
  advanced: true,
});

type TelevisionOptions = z.output<ReturnType<typeof televisionOptions>>;

/** What it hears, at its terminals or at an element before an amplifier of its own. */
export function televisionEmits(
  options: TelevisionOptions & { readonly formerOnAir?: boolean },
  at: { readonly id: string; readonly pattern: PatternBand; readonly port?: string },
) {
  const raster = at.pattern === "III" ? vhfRasterOf(options.raster) : rasterOf(options.raster);
  return aerialEmits({
    ...at,
    options,
    service: "tv",
    plan: options.channels,
    raster: `${options.raster}${options.formerOnAir ? " to the top" : ""}`,
    carrier: (row) => (options.formerOnAir ? tvCarrier : tvCarrierOnAir)(row, raster),
    entry: (row) => channelEntry(row.channel, raster),
  });
}

/** A passive aerial for television in one band. */
export function televisionAerial(o: {
  readonly kind: string;
  readonly name: string;
  readonly summary: string;
  readonly keywords: readonly string[];
  readonly prefix: string;
  readonly symbol: SymbolName;
  readonly options: ReturnType<typeof televisionOptions>;
  readonly pattern: PatternBand;
  readonly isRare?: true;
}): PartKind {
  const { pattern, isRare, ...rest } = o;
  return define({
    ...rest,
    family: "receive",
    trade: { job: "aerial", price: 50, workMinutes: 60, ...(isRare ? { isRare } : {}) },
    caption: (options) => aerialCaption(channelCount(options.channels.length), options),
    ports: () => AERIAL_OUT,
    signal: (options, { id }) => ({ emits: televisionEmits(options, { id, pattern }) }),
    cautions: ["height", "bonding"],
  });
}
