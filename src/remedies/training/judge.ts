/** Whether a suspicion is right: by name, or because no meter could tell it from the fault. */
import type { Design } from "../../design/design.ts";
import { evaluate } from "../../evaluate/evaluate.ts";
import { askingFor, requestsOf } from "../faults/asked.ts";
import type { Fault } from "../faults/fault.ts";
import { faults } from "../faults/list.ts";
import { measure } from "../faults/measure.ts";
import { pointsOf } from "../faults/points.ts";
import { QUANTITIES } from "../faults/reading.ts";
import { alike } from "../faults/readingWords.ts";
import { type Look, lookAt, symptomsOf } from "../faults/symptoms.ts";
import type { OpenedCase } from "./case.ts";
import type { NamedFault, Verdict } from "./progress.ts";

export function judge({ design, fault }: OpenedCase, named: NamedFault): Verdict {
  const isAt = fault.parts.includes(named.part);
  if (isAt && fault.type === named.type) return "right";
  const sound = lookAt(design);
  const seen = gotUnder(design, fault, sound);
  const isSame = faults(design)
    .filter((other) => other.type === named.type && other.parts.includes(named.part))
    .some((other) => gotUnder(design, other, sound) === seen && looksAlike(design, other, fault));
  if (isSame) return "right";
  return isAt ? "part" : "wrong";
}

function gotUnder(design: Design, fault: Fault, sound: Look): string {
  return symptomsOf(lookAt(fault.apply(design), sound), sound)
    .map((s) => s.got)
    .join();
}

/** The same readings, as far as a meter can tell, wherever it can be connected and whatever is asked for. */
export function looksAlike(design: Design, a: Fault, b: Fault): boolean {
  const points = pointsOf(design);
  return [null, ...requestsOf(design)].every((asked) => {
    const [one, other] = [a, b].map((fault) => evaluate(askingFor(fault.apply(design), asked)));
    if (!one || !other) return false;
    return points.every(({ at }) =>
      QUANTITIES.every((quantity) => {
        const here = measure(design, one, at, quantity);
        const there = measure(design, other, at, quantity);
        return here === null || there === null ? here === there : alike(here, there);
      }),
    );
  });
}
