/** What a meter shows as MER beside a calculated C/(N+I). */
import type { Evaluation } from "../evaluate/evaluation.ts";
import { METER_MER_DB } from "../remedies/faults/reading.ts";
import type { Origin } from "../signal/carrier.ts";

/**
 * Above this a carrier from the air has a lower MER than C/(N+I): echoes and the transmitter's own errors leave 28 to
 * 35 dB, and none of them is in the model [dB]; from memory.
 */
const MER_ON_AIR_DB = 28;

/** "none": FM has no MER. "lower": on air. "beyond": more than any meter shows. */
export type MerShown = "about" | "lower" | "beyond" | "none";

export function merShown(
  evaluation: Evaluation,
  { service, part }: Pick<Origin, "service" | "part">,
  cniDb: number,
): MerShown {
  if (service === "fm") return "none";
  if (evaluation.record(part)?.kind.trade.job === "aerial" && cniDb > MER_ON_AIR_DB) return "lower";
  return cniDb > METER_MER_DB ? "beyond" : "about";
}

/** Heading of a single figure. */
export const MER_TERMS: Readonly<Record<MerShown, string>> = {
  about: "C/(N+I), about MER",
  lower: "C/(N+I), MER on air is lower",
  beyond: "C/(N+I), above any MER shown",
  none: "C/(N+I)",
};
