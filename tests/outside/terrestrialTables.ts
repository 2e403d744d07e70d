/**
 * Reads channel lists of the Debian package dtv-scan-tables where it is installed (LGPL-2.1+; its files are read in
 * place and never copied). They show how real areas were served up to 2019; they are no current plan.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { sayMissing } from "./loud.ts";

const FOLDER = "/usr/share/dvb/dvb-t";

/** A multiplex of an area: a channel and a modulation as an aerial of this program lists it. */
export type Multiplex = {
  readonly channel: number;
  readonly raster: RasterName;
  readonly mode: string;
  readonly frequencyMHz: number;
  readonly widthMHz: number;
};

/** True where the lists are there; otherwise says loudly what stays unchecked. */
export function hasAreas(areas: readonly string[], unchecked: string): boolean {
  const there = areas.every((area) => existsSync(`${FOLDER}/${area}`));
  if (!there)
    sayMissing({
      what: "Channel lists of terrestrial areas",
      unchecked,
      install: "apt-get install dtv-scan-tables",
    });
  return there;
}

/** Names of all lists. */
export function areaNames(): readonly string[] {
  return readdirSync(FOLDER).sort();
}

/** Multiplexes of an area, each frequency once, in rising order. Throws on one that is on no raster. */
export function readArea(area: string): readonly Multiplex[] {
  const found = fieldsOf(area).map(multiplex);
  const once = new Map(found.map((each) => [each.channel, each]));
  return [...once.values()].sort((a, b) => a.frequencyMHz - b.frequencyMHz);
}

/** Every entry of a list, on a raster or not [MHz]. */
export function readEntries(area: string): readonly Pick<Multiplex, "frequencyMHz" | "widthMHz">[] {
  return fieldsOf(area).map(placeOf);
}

/** One channel of each raster and the numbers that it has, as public channel tables give them. */
const RASTERS = {
  uhf8: { widthMHz: 8, channel: 21, centreMHz: 474, from: 21, to: 69 },
  uhf7: { widthMHz: 7, channel: 28, centreMHz: 529.5, from: 28, to: 69 },
  uhf6: { widthMHz: 6, channel: 14, centreMHz: 473, from: 14, to: 69 },
  vhf7: { widthMHz: 7, channel: 5, centreMHz: 177.5, from: 5, to: 12 },
  vhf8: { widthMHz: 8, channel: 6, centreMHz: 178, from: 6, to: 12 },
} as const;

export type RasterName = keyof typeof RASTERS;

const NAMES = ["uhf8", "uhf7", "uhf6", "vhf7", "vhf8"] as const satisfies readonly RasterName[];

type Place = Pick<Multiplex, "frequencyMHz" | "widthMHz">;

/** The raster on which an entry stands, within 200 kHz (some are set off by 125 or 167 kHz), and its number there. */
export function rasterOf({ frequencyMHz, widthMHz }: Place): { raster: RasterName; channel: number } | null {
  for (const raster of NAMES) {
    const r = RASTERS[raster];
    const exact = r.channel + (frequencyMHz - r.centreMHz) / r.widthMHz;
    const channel = Math.round(exact);
    const isOn = Math.abs(exact - channel) * r.widthMHz <= 0.2 && channel >= r.from && channel <= r.to;
    if (widthMHz === r.widthMHz && isOn) return { raster, channel };
  }
  return null;
}

function fieldsOf(area: string): ReadonlyMap<string, string>[] {
  const text = readFileSync(`${FOLDER}/${area}`, "utf8").replaceAll(/#.*$/gm, "");
  return text
    .split(/^\s*\[.*\]\s*$/m)
    .slice(1)
    .map((block) => new Map([...block.matchAll(/^\s*(\w+)\s*=\s*(.+?)\s*$/gm)].map(pair)));
}

const placeOf = (fields: ReadonlyMap<string, string>) => ({
  frequencyMHz: Number(fields.get("FREQUENCY")) / 1e6,
  widthMHz: Number(fields.get("BANDWIDTH_HZ")) / 1e6,
});

const pair = (match: RegExpExecArray): [string, string] => [match[1] ?? "", match[2] ?? ""];

function multiplex(fields: ReadonlyMap<string, string>): Multiplex {
  const place = placeOf(fields);
  const found = rasterOf(place);
  if (!found) throw new Error(`${place.frequencyMHz} MHz is on no raster.`);
  return { ...place, ...found, mode: modeOf(fields) };
}

/** Where a list leaves the modulation open: the one that most lists name. */
function modeOf(fields: ReadonlyMap<string, string>): string {
  const isNewer = fields.get("DELIVERY_SYSTEM") === "DVBT2";
  const modulation = /^(?:QAM\/(16|64|256)|QPSK)$/.exec(fields.get("MODULATION") ?? "");
  const rate = fields.get("CODE_RATE_HP") ?? "";
  const isKnown = modulation && /^\d\/\d$/.test(rate);
  if (isNewer) return "dvbt2-256qam-2/3";
  return isKnown ? `dvbt-${modulation[1] ? `${modulation[1]}qam` : "qpsk"}-${rate}` : "dvbt-64qam-2/3";
}
