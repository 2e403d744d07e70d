/** A flat or a room in one line, for whoever cannot see it. */

import type { Verdict } from "../findings/finding.ts";
import type { PlaceState } from "../findings/placeState.ts";
import { numeral } from "../words/numbers.ts";
import { share } from "./phrases.ts";
import { stateName } from "./verdict.ts";

type Told = {
  readonly label: string;
  readonly state: PlaceState;
  /** Of its receivers or outlets, worst first. */
  readonly verdicts: readonly Verdict[];
  readonly cableM: number;
};

/** "Flat 17, fails: 60 of 80 satellite transponders, 160 m of cable". */
export function placeSentence({ label, state, verdicts, cableM }: Told): string {
  const stands = state === "idle" ? "not connected yet" : stateName({ state });
  const [worst] = verdicts;
  const lacking = worst?.services
    .filter((service) => service.wanted > service.got)
    .map((service) => share(service.got, service.wanted, service.counted ?? service.service));
  const why = lacking && lacking.length > 0 ? `: ${lacking.join(" and ")}` : "";
  const cable = cableM > 0 ? `, ${numeral(cableM, 0)} m of cable` : "";
  return `${label}, ${stands}${why}${cable}`;
}

/** What a receiver gets of the service that it lacks most of, in figures: "80/80". */
export function resultFigures({ services }: Verdict): string {
  const [worst] = services.filter((s) => s.wanted > 0).sort((a, b) => a.got / a.wanted - b.got / b.wanted);
  return worst ? `${worst.got}/${worst.wanted}` : "–";
}
