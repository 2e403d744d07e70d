/** What lets so much of other signals in that a carrier which is received has too little to spare. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { extreme } from "../extreme.ts";
import type { Blamed } from "./culprit.ts";
import { type Leak, leaksAt } from "./leaks.ts";
import { type Arriving, type OutputSpot, stagesTo } from "./stages.ts";

/** Less than so much nobody would notice by putting it right [dB]; a choice of this tool. */
const NOTICED_DB = 1;

/**
 * The part that does not keep signals apart as it should, if a sound one in its place would bring at least 1 dB of C/N:
 * a turned LNB, poor isolation of a feed or a switch, a dish too small beside its neighbours.
 */
export function leakBehind(evaluation: Evaluation, end: OutputSpot, arriving: Arriving): Blamed | undefined {
  const stages = stagesTo(evaluation, end, arriving);
  const last = stages.at(-1);
  const total = last ? 10 ** (-last.step.cniDb / 10) : 0;
  if (!(total > 0)) return undefined;
  const leaks = stages.flatMap(leaksAt);
  const betterDb = (share: number) => -10 * Math.log10(Math.max(1e-9, 1 - share / total));
  const worst = extreme(leaks, ({ beyond }: Leak) => beyond);
  if (worst && betterDb(worst.beyond) >= NOTICED_DB)
    return { ...worst.culprit, excessDb: betterDb(worst.beyond) };
  // Neighbours that make most of it call for a larger dish, however usual it is.
  const beside = extreme(
    leaks.filter(({ by }) => by === "neighbours"),
    ({ share }) => share,
  );
  return beside && beside.share > total / 2
    ? { ...beside.culprit, excessDb: betterDb(beside.share) }
    : undefined;
}
