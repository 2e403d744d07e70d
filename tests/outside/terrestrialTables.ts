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

/** The raster of this program on which an entry stands, within 200 kHz. */
export function rasterOf({
  frequencyMHz,
  widthMHz,
}: Pick<Multiplex, "frequencyMHz" | "widthMHz">): "uhf" | "vhf" | "none" {
  const uhf = (frequencyMHz - 306) / 8;
  const vhf = (frequencyMHz - 177.5) / 7 + 5;
  const isNear = (exact: number, stepMHz: number) => Math.abs(exact - Math.round(exact)) * stepMHz <= 0.2;
  if (widthMHz === 8 && isNear(uhf, 8) && Math.round(uhf) >= 21 && Math.round(uhf) <= 69) return "uhf";
  if (widthMHz === 7 && isNear(vhf, 7) && Math.round(vhf) >= 5 && Math.round(vhf) <= 12) return "vhf";
  return "none";
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
  const { frequencyMHz, widthMHz } = placeOf(fields);
  // Rasters of the Geneva 2006 plan, from memory: 306 + 8·N, and 177.5 + 7·(N − 5); some are set off by 167 kHz.
  const exact = widthMHz === 7 ? (frequencyMHz - 177.5) / 7 + 5 : (frequencyMHz - 306) / 8;
  const channel = Math.round(exact);
  if (Math.abs(exact - channel) * widthMHz > 0.2) throw new Error(`${frequencyMHz} MHz is on no raster.`);
  return { channel, mode: modeOf(fields), frequencyMHz, widthMHz };
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
