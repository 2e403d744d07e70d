/** How hard a part's active stages are driven, as lines to read. */
import type { Drive, PartRecord } from "../../../../evaluate/evaluation.ts";
import { deratingDb } from "../../../../rf/intermod.ts";
import { numeral } from "../../../../words/numbers.ts";
import { counted, decimal } from "../../../kit/format.ts";

export type LoadLine = {
  /** Labels of the outputs that are driven alike. */
  readonly ports: readonly string[];
  readonly levelDbuv: number;
  readonly allowedDbuv: number;
  /** "6 carriers at 85.0 dBµV; limit 94.8 dBµV (100 − 7.5·log₁₀(5)); products 78 dB below". */
  readonly words: string;
  readonly totalDbuv: number;
};

/** One line for each output, or one for all that are driven alike; the hardest drive of each output counts. */
export function loadLines(record: PartRecord): readonly LoadLine[] {
  const hardest = new Map<string, Drive>();
  for (const drive of record.drives) {
    const known = hardest.get(drive.port);
    if (!known || excess(drive) > excess(known)) hardest.set(drive.port, drive);
  }
  const lines = new Map<string, LoadLine>();
  for (const drive of hardest.values()) {
    const words = driveWords(drive);
    const label = record.ports.find((p) => p.id === drive.port)?.label ?? "Its stage";
    const { levelDbuv, allowedDbuv, totalDbuv } = drive;
    lines.set(words, {
      ports: [...(lines.get(words)?.ports ?? []), label],
      levelDbuv,
      allowedDbuv,
      totalDbuv,
      words,
    });
  }
  return [...lines.values()];
}

function excess(drive: Drive): number {
  return drive.levelDbuv - drive.allowedDbuv;
}

/** `n` is what unequal carriers amount to, so it need not be whole. */
function driveWords({ carriers, levelDbuv, allowedDbuv, ratioDb, rule }: Drive): string {
  const rated = allowedDbuv + deratingDb({ rule, carriers });
  return (
    `${counted(carriers, "carrier")} at ${decimal(levelDbuv)} dBµV; ` +
    `limit ${decimal(allowedDbuv)} dBµV (${numeral(rated)}${deratingWords(rule, carriers)}); ` +
    `products ${decimal(Math.max(0, ratioDb), 0)} dB below`
  );
}

function deratingWords(rule: Drive["rule"], carriers: number): string {
  // What is printed as 2 carriers is as rated: a formula of 2/2 or 2 − 1 would say nothing.
  if (carriers < 2.05) return ", as rated";
  switch (rule) {
    case "beats":
      return ` − ${numeral(7.5)}·log₁₀(${numeral(carriers - 1)})`;
    case "channels":
      return ` − 10·log₁₀(${numeral(carriers - 1)})`;
    case "power":
      return ` − 10·log₁₀(${numeral(carriers)}/2)`;
  }
}
