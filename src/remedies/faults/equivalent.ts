/** Faults that are one and the same for whoever measures: described differently, alike in effect. */
import type { Design } from "../../design/design.ts";
import { evaluate } from "../../evaluate/evaluate.ts";
import { alike } from "./alike.ts";
import type { Fault } from "./fault.ts";
import { measure } from "./measure.ts";
import { pointsOf } from "./points.ts";
import { QUANTITIES } from "./reading.ts";
import { askingFor, requestsOf } from "./requestChoice.ts";
import { detailedSymptoms } from "./symptoms.ts";

/** The same physical fault in two descriptions: alike in effect, and found at the same part or wire. */
export function isSameFault(design: Design, a: Fault, b: Fault): boolean {
  if (a.id === b.id) return true;
  return a.parts.some((part) => b.parts.includes(part)) && isAlikeInEffect(design, a, b);
}

/** The same reception and the same readings, as far as a meter can tell, at every point and with every request. */
export function isAlikeInEffect(design: Design, a: Fault, b: Fault): boolean {
  if (a.id === b.id) return true;
  const sound = evaluate(design);
  const gotUnder = (fault: Fault) =>
    detailedSymptoms({ evaluation: evaluate(fault.apply(design), sound) }, { evaluation: sound })
      .map((s) => s.got)
      .join();
  return gotUnder(a) === gotUnder(b) && readAlike(design, a, b);
}

function readAlike(design: Design, a: Fault, b: Fault): boolean {
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
