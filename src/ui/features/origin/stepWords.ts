/** What one part on the way did to a carrier, in short phrases. */
import type { TraceStep } from "../../../evaluate/trace.ts";
import { decimal, megahertz, signed } from "../../kit/format.ts";

/** A frequency that differs by less than this is the same one, but for rounding [MHz]. */
const SAME_MHZ = 0.001;

/** A fall of C/I below this is the same interference behind some more of the way [dB]. */
const WORTH_A_WORD_DB = 0.3;

export function stepWords(step: TraceStep, before: TraceStep | undefined): readonly string[] {
  if (!before) return [`starts here at ${megahertz(step.centreMHz)} MHz`];
  const words: string[] = [];
  const moved = Math.abs(step.centreMHz - before.centreMHz) > SAME_MHZ;
  const way = `${megahertz(before.centreMHz)} → ${megahertz(step.centreMHz)} MHz`;
  const stacks = step.userBand !== undefined && before.userBand === undefined;
  if (stacks)
    words.push(
      `put on user band ${step.userBand}: ${way}`,
      ...askedWords(step),
      "level held by gain control",
    );
  else if (step.loMHz !== undefined) words.push(`${megahertz(step.loMHz)} MHz oscillator: ${way}`);
  else if (moved) words.push(way);
  if (!stacks) for (const { what, db } of step.made) words.push(`${what} ${signed(db)} dB`);
  if (before.imDb - step.imDb > WORTH_A_WORD_DB)
    words.push(`products are added: C/I ${decimal(step.ciDb)} dB`);
  else if (before.ciDb - step.ciDb > WORTH_A_WORD_DB)
    words.push(`interference is added: C/I ${decimal(step.ciDb)} dB`);
  if (words.length === 0) words.push("passes unchanged");
  if (step.cutHere) words.push("filtered out here");
  return words;
}

/** By which message a receiver gets a carrier onto a user band. */
function askedWords({ tuning }: TraceStep): readonly string[] {
  if (!tuning) return [];
  return [`asked for by tuning word ${tuning.word}, found at ${megahertz(tuning.tunesToMHz)} MHz`];
}
