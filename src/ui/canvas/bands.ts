/** What the panes say about the bands on a wire. */

import { levelRangeWords } from "../../sentences/figures.ts";
import type { Band, Spectrum } from "../../signal/band.ts";
import { waveOf } from "../../signal/leak.ts";
import { conditionsKey } from "../../signal/treat.ts";
import { counted } from "../kit/format.ts";
import { bandLook } from "./bandLook.ts";

/** Name of a band, with its satellite where one is named: "Satellite V low 20.0°E". */
export function bandTitle(band: Band): string {
  const { satellite } = band.origin;
  return satellite ? `${bandLook(band).words} ${satellite}` : bandLook(band).words;
}

export type BandSummary = {
  readonly carriers: number;
  readonly live: number;
  /** Of the live carriers [dBµV]; absent when none lives. */
  readonly levelMin?: number;
  readonly levelMax?: number;
};

/** How many carriers a band still has, and between which levels they lie. */
export function summarise(band: Band): BandSummary {
  let live = 0;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  band.level.forEach((level, i) => {
    if (band.cut[i] !== 0 || !Number.isFinite(level)) return;
    live += 1;
    min = Math.min(min, level);
    max = Math.max(max, level);
  });
  const carriers = band.level.length;
  return live > 0 ? { carriers, live, levelMin: min, levelMax: max } : { carriers, live };
}

/** "TV: 12 carriers, 58–66 dBµV", "TV: 4 of 12 carriers left, 58–66 dBµV", "TV: nothing left of 12 carriers". */
export function bandWords(band: Band): string {
  const { live, levelMin, levelMax } = summarise(band);
  return live === 0
    ? bandCountWords(band)
    : `${bandCountWords(band)}, ${levelRangeWords(levelMin, levelMax)}`;
}

/** The same without levels: "TV: 4 of 12 carriers left". */
export function bandCountWords(band: Band): string {
  const { carriers, live } = summarise(band);
  const name = bandTitle(band);
  const all = carriersWords(band);
  // A stacked feed is called by the number of its user bands already.
  if (band.stack && live === carriers) return name;
  if (live === 0) return `${name}: nothing left of ${all}`;
  return live === carriers ? `${name}: ${all}` : `${name}: ${live} of ${all} left`;
}

/** How much a band holds: "12 carriers", "1 user band". */
export function carriersWords(band: Band): string {
  return counted(band.level.length, band.stack ? "user band" : "carrier");
}

export type Alternative = {
  /** Names the way the switches stand; "" for what is there whatever they do. */
  readonly key: string;
  /** The same for people: "V low", "2: H high". */
  readonly words: string;
  readonly selected: boolean;
  readonly bands: readonly Band[];
};

/** Bands in groups, one for each way the switches can stand: the unswitched first, then the present one. */
export function alternatives(spectrum: Spectrum): readonly Alternative[] {
  const groups = new Map<string, { words: string; selected: boolean; bands: Band[] }>();
  for (const band of spectrum.bands) {
    const key = conditionsKey(band);
    const words = band.conditions.map((c) => settingWords(c.setting, band.origin.circular)).join(", ");
    const group = groups.get(key) ?? { words, selected: band.selected, bands: [] };
    group.bands.push(band);
    groups.set(key, group);
  }
  return [...groups]
    .map(([key, group]) => ({ key, ...group }))
    .sort((a, b) => Number(a.key !== "") - Number(b.key !== "") || Number(b.selected) - Number(a.selected));
}

/** "HL" → "H low", of circular waves "L low"; "2:HL" → "position 2, H low", "2" → "position 2". */
export function settingWords(setting: string, circular = false): string {
  const [first = "", second] = setting.split(":");
  const quadrant = second ?? (/^[VH][LH]$/.test(first) ? first : undefined);
  const position = /^\d+$/.test(first) ? `position ${first}` : "";
  const words = quadrant
    ? `${waveOf({ polarisation: quadrant[0] === "V" ? "V" : "H", ...(circular ? { circular } : {}) })} ${quadrant[1] === "L" ? "low" : "high"}`
    : "";
  return [position, words].filter((w) => w !== "").join(", ") || setting;
}
