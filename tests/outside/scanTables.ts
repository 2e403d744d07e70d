/**
 * Reads transponder lists of the Debian package dtv-scan-tables where it is installed (LGPL-2.1+; its files are
 * read in place and never copied). They show how real satellites were occupied in 2019; they are no current plan.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import type { Wave } from "../../src/signal/carrier.ts";
import { sayMissing } from "./loud.ts";

const FOLDER = "/usr/share/dvb/dvb-s";

/** Name of the list for 28.2° East. */
export const AT_28_2_EAST = "Astra-28.2E";

/** One entry of a list; also a row that `transponder` of parts/planSatellite.ts takes. */
export type Listed = {
  readonly frequencyMHz: number;
  readonly polarisation: Wave;
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
  return {
    frequencyMHz: Number(field("FREQUENCY")) / 1000,
    polarisation: polarisation(field("POLARIZATION")),
    symbolRateMsps: Number(field("SYMBOL_RATE")) / 1e6,
    mode: modeOf(newer, fields.get("MODULATION") ?? "QPSK", field("INNER_FEC")),
    rollOff: newer ? "0.25" : "0.35",
  };
}

/** Where a list leaves the code rate to the receiver, or names an older system than the modulation needs, a usual mode. */
function modeOf(newer: boolean, modulation: string, rate: string): string {
  const [name = "", usual = ""] = MODULATIONS[modulation] ?? [];
  if (name === "") throw new Error(`A modulation of ${modulation} is unknown.`);
  const code = rate === "AUTO" ? usual : rate;
  return newer || name !== "qpsk" ? `dvbs2-${name}-${code}` : `dvbs-qpsk-${code}`;
}

const MODULATIONS: Readonly<Record<string, readonly [name: string, usual: string]>> = {
  QPSK: ["qpsk", "3/4"],
  "PSK/8": ["8psk", "2/3"],
  "APSK/16": ["16apsk", "2/3"],
  "APSK/32": ["32apsk", "3/4"],
  "QAM/AUTO": ["8psk", "2/3"],
};

const WAVES: Readonly<Record<string, Wave>> = { VERTICAL: "V", HORIZONTAL: "H", RIGHT: "R", LEFT: "L" };

function polarisation(word: string): Wave {
  const wave = WAVES[word];
  if (!wave) throw new Error(`A polarisation of ${word} is none.`);
  return wave;
}

/** Names of all lists; none where the package is not installed. */
export function scanTableNames(): readonly string[] {
  return existsSync(FOLDER) ? readdirSync(FOLDER).sort() : [];
}
