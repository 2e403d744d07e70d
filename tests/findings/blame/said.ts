/** What is said of the part that a carrier has come through last, at one of its outputs. */
import type { Evaluation } from "../../../src/evaluate/evaluation.ts";
import { exceeding, lacking, type Shortcoming } from "../../../src/findings/blame/shortcomings.ts";
import { type Arriving, stagesTo } from "../../../src/findings/blame/stages.ts";

export type Said = { readonly lacking: Shortcoming | undefined; readonly exceeding: Shortcoming | undefined };

/** At an output ("x.out1"). Carriers are counted in the order of their source's list, from 0. */
export function said(
  evaluation: Evaluation,
  output: string,
  { origin = "a", index = 0, ...more }: Partial<Arriving> = {},
): Said {
  const [part = "", port = ""] = output.split(".");
  const stage = stagesTo(evaluation, { part, port }, { origin, index, ...more }).at(-1);
  if (stage?.step.part !== part) throw new Error(`it does not come out at ${output}`);
  return { lacking: lacking(stage), exceeding: exceeding(stage) };
}

export const NOTHING: Said = { lacking: undefined, exceeding: undefined };
