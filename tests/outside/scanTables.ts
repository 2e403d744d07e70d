/**
 * Reads transponder lists of the Debian package dtv-scan-tables where it is installed (LGPL-2.1+; its files are
 * read in place and never copied). They show how real satellites were occupied in 2019; they are no current plan.
 */
import { existsSync, readFileSync } from "node:fs";
import type { Polarisation } from "../../src/signal/carrier.ts";
import { sayMissing } from "./loud.ts";

const FOLDER = "/usr/share/dvb/dvb-s";

/** Name of the list for 28.2° East. */
export const AT_28_2_EAST = "Astra-28.2E";

/** One entry of a list; also a row that `transponder` of parts/planSatellite.ts takes. */
export type Listed = {
  readonly frequencyMHz: number;
  readonly polarisation: Polarisation;
  readonly symbolRateMsps: number;
  /** A key of rf/thresholds.ts. */
  readonly mode: string;
  readonly rollOff: "0.35" | "0.25";
};

/** True where the list is there; otherwise says loudly what stays unchecked. */
export function hasScanTable(name: string, unchecked: string): boolean {
  const there = existsSync(`${FOLDER}/${name}`);
  if (!there) {
    sayMissing({
      what: `The transponder list ${name}`,
      unchecked,
      install: "apt-get install dtv-scan-tables",
    });
  }
  return there;
}

/** Entries of a list, in its order. Throws on an entry that it does not understand. */
export function readScanTable(name: string): readonly Listed[] {
  const text = readFileSync(`${FOLDER}/${name}`, "utf8");
  return parseScanTable(text);
}

/** Entries of a list with each pair of frequency and polarisation once: what a dish can tell apart. */
export function readDistinct(name: string): readonly Listed[] {
  const distinct = new Map(
    readScanTable(name).map((entry) => [`${entry.frequencyMHz} ${entry.polarisation}`, entry]),
  );
  return [...distinct.values()];
}

/** Blocks headed "[CHANNEL]" of lines "KEY = value"; "#" begins a comment. */
export function parseScanTable(text: string): readonly Listed[] {
  const blocks = text.replaceAll(/#.*$/gm, "").split(/^\s*\[.*\]\s*$/m);
  return blocks
    .slice(1)
    .map((block) => listed(new Map([...block.matchAll(/^\s*(\w+)\s*=\s*(.+?)\s*$/gm)].map(pair))));
}

const pair = (match: RegExpExecArray): [string, string] => [match[1] ?? "", match[2] ?? ""];

function listed(fields: ReadonlyMap<string, string>): Listed {
  const field = (key: string): string => {
    const value = fields.get(key);
    if (value === undefined) throw new Error(`An entry has no ${key}.`);
    return value;
  };
  const newer = field("DELIVERY_SYSTEM") === "DVBS2";
  const modulation = field("MODULATION") === "PSK/8" ? "8psk" : "qpsk";
  return {
    frequencyMHz: Number(field("FREQUENCY")) / 1000,
    polarisation: polarisation(field("POLARIZATION")),
    symbolRateMsps: Number(field("SYMBOL_RATE")) / 1e6,
    mode: newer ? `dvbs2-${modulation}-${field("INNER_FEC")}` : `dvbs-qpsk-${field("INNER_FEC")}`,
    rollOff: newer ? "0.25" : "0.35",
  };
}

function polarisation(word: string): Polarisation {
  if (word === "VERTICAL") return "V";
  if (word === "HORIZONTAL") return "H";
  throw new Error(`A polarisation of ${word} is neither vertical nor horizontal.`);
}
