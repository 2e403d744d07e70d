/** What is on a wire, in words: for screen readers, tooltips and lists. */

import type { Part } from "../../design/design.ts";
import type { Band, Spectrum } from "../../signal/band.ts";
import { remembered } from "../../signal/remember.ts";
import { numeral } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { counted } from "../kit/format.ts";
import { bandLook } from "./bandLook.ts";
import { type CarrierState, carrierState } from "./carrierState.ts";

/** "TV 62–68 dBµV, Satellite V low 58–63 dBµV (12 of 20 carriers are lost)"; "nothing" for silence. */
export function spectrumWords(spectrum: Spectrum): string {
  return remembered(known, spectrum, () => wordsOf(spectrum));
}

/** What a wire is called, from near and from afar alike. */
export function wireWords(from: Part, to: Part, spectrum: Spectrum): string {
  return `From ${from.label} to ${to.label}: ${spectrumWords(spectrum)}`;
}

const known = new WeakMap<Spectrum, string>();

function wordsOf(spectrum: Spectrum): string {
  const phrases = spectrum.bands.filter((b) => b.selected).map(bandWords);
  const idle = spectrum.bands.length - phrases.length;
  if (idle > 0) phrases.push(`${idle} more on request`);
  return phrases.length > 0 ? phrases.join(", ") : "nothing";
}

function bandWords(band: Band): string {
  const states = Array.from(band.level, (_, i) => carrierState(band, i));
  const { words } = bandLook(band);
  const count = (...wanted: CarrierState[]) => states.filter((s) => wanted.includes(s)).length;
  const cut = count("cut");
  if (cut === states.length) return `${words} filtered away`;
  const troubles = [];
  if (cut > 0) troubles.push(`${cut} of ${states.length} carriers filtered away`);
  const of = states.length;
  const hit = count("hit");
  if (hit > 0)
    troubles.push(
      plural(hit, {
        one: (n) => (of === 1 ? "its only carrier is lost" : `${n} of ${of} carriers is lost`),
        other: (n) => `${n} of ${of} carriers are lost`,
      }),
    );
  const touched = count("touched");
  if (touched > 0)
    troubles.push(
      plural(touched, {
        one: (n) => (of === 1 ? "its only carrier loses margin" : `${n} of ${of} carriers loses margin`),
        other: (n) => `${n} of ${of} carriers lose margin`,
      }),
    );
  const range = levelWords(band, states);
  return `${words} ${range}${troubles.length > 0 ? ` (${troubles.join(", ")})` : ""}`;
}

function levelWords(band: Band, states: readonly CarrierState[]): string {
  const levels = Array.from(band.level).filter((_, i) => states[i] !== "cut");
  const least = Math.min(...levels);
  const [low, high] = [numeral(least, 0), numeral(Math.max(...levels), 0)];
  // A minus sign beside a dash would be misread.
  const range = low === high ? low : Math.round(least) < 0 ? `${low} to ${high}` : `${low}–${high}`;
  return `${range} dBµV`;
}

/** "2 parts, 1 wire". */
export function selectionWords(parts: number, wires: number): string {
  const words = [];
  if (parts > 0) words.push(counted(parts, "part"));
  if (wires > 0) words.push(counted(wires, "wire"));
  return words.join(", ");
}
