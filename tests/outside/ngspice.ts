/** Runs circuits through ngspice, the circuit simulator of the Debian package of that name. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sayMissing } from "./loud.ts";

let found: boolean | undefined;

/** True where ngspice runs; otherwise says loudly what stays unchecked. */
export function hasNgspice(unchecked: string): boolean {
  found ??= spawnSync("ngspice", ["--version"], { stdio: "ignore" }).status === 0;
  if (!found) sayMissing({ what: "ngspice", unchecked, install: "apt-get install ngspice" });
  return found;
}

export type Simulation = {
  /** Element lines of the netlist, without title and end. */
  readonly circuit: string;
  /** Commands that run the analyses, for instance "ac lin 1 1e9 1e9". */
  readonly commands: readonly string[];
  /** Scalar expressions to read afterwards, for instance "vdb(out)". */
  readonly read: readonly string[];
};

/** Values of the expressions, in their order. Throws with ngspice's own words when one is missing. */
export function simulate(simulation: Simulation): readonly number[] {
  const folder = mkdtempSync(join(tmpdir(), "ngspice-"));
  try {
    const deck = join(folder, "circuit.cir");
    writeFileSync(deck, netlist(simulation));
    const run = spawnSync("ngspice", ["-b", deck], { encoding: "utf8", timeout: 15_000, cwd: folder });
    return simulation.read.map((expression, i) => readOff(`read${i}`, expression, run.stdout + run.stderr));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** 16.85 °C is 290 K, the reference temperature of noise figures. */
function netlist({ circuit, commands, read }: Simulation): string {
  return [
    "* circuit",
    circuit.trim(),
    ".options temp=16.85 tnom=16.85",
    ".control",
    "set numdgt=12",
    ...commands,
    ...read.flatMap((expression, i) => [`let read${i} = ${expression}`, `print read${i}`]),
    ".endc",
    ".end",
    "",
  ].join("\n");
}

function readOff(name: string, expression: string, output: string): number {
  const printed = new RegExp(`^${name} = (\\S+)`, "m").exec(output)?.[1];
  const value = Number(printed);
  if (printed === undefined || Number.isNaN(value)) {
    throw new Error(`ngspice printed no value for ${expression}:\n${output}`);
  }
  return value;
}
