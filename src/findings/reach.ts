/** Whether a receiver can use a feed at all: is it the kind it needs, and can it set the switches on the way? */
import type { ReceiverInput } from "../parts/contract.ts";
import type { Band } from "../signal/band.ts";
import type { Condition } from "../signal/control.ts";
import type { Lost } from "./fate.ts";
import { partName } from "./words.ts";

/** A switched feed was converted with these oscillators [MHz]; EN 61319-1 values, from memory. */
const UNIVERSAL_LOS = { low: 9750, high: 10600 } as const;

/** Who listens, and how: alone, as if nobody else spoke to any switch; or only to what is selected now. */
export type Listener = {
  readonly receiver: string;
  readonly input: ReceiverInput;
  readonly alone: boolean;
  readonly selectedOnly?: boolean;
};

/** Why the whole band is of no use at this input; undefined when it is. */
export function refusal(listener: Listener, band: Band): Lost | undefined {
  const wrong = wrongFeed(listener.input, band);
  if (wrong) return { got: false, why: "wrong feed", text: wrong };
  const swapped = swappedAt(band);
  if (swapped)
    return {
      got: false,
      why: "wrong feed",
      part: swapped,
      text: `come in by a wrong input of ${partName(swapped)}`,
    };
  for (const condition of band.conditions) {
    const barrier = unreachable(listener, condition);
    if (barrier) return barrier;
  }
  return undefined;
}

/**
 * The switch behind which this band hides under another quadrant's name. The receiver that asks for vertical low
 * and is given vertical high finds nothing where it looks.
 */
function swappedAt(band: Band): string | undefined {
  const own = `${band.origin.polarisation}${band.half === "low" ? "L" : "H"}`;
  if (!band.half) return undefined;
  return band.conditions.find(({ setting }) => {
    const quadrant = /[VH][LH]$/.exec(setting)?.[0];
    return quadrant !== undefined && quadrant !== own;
  })?.at.part;
}

/** What is wrong with a kind of feed for an input, as words; undefined when it suits. */
function wrongFeed(input: ReceiverInput, band: Band): string | undefined {
  if (band.origin.service !== "satellite") return undefined;
  const lo = band.shifts[0];
  if (lo === undefined) return "are not converted to satellite IF";
  if (input.feed === "wideband") {
    if (band.half) return "are on a switched or quattro feed, but this input needs a wideband one";
    if (input.polarisation && input.polarisation !== band.origin.polarisation)
      return `are on the input for ${input.polarisation}, but polarised ${band.origin.polarisation ?? "otherwise"}`;
    return undefined;
  }
  if (input.feed === "stacked") return "are not on a user band";
  const expected = band.half ? UNIVERSAL_LOS[band.half] : undefined;
  if (expected === undefined || Math.abs(lo - expected) > 5)
    return "are on a wideband feed, which this input cannot tune";
  return undefined;
}

/** Whether the receiver itself can make a switch stand as needed; the barrier if not. */
function unreachable({ receiver, input, alone }: Listener, condition: Condition): Lost | undefined {
  const { at, setting } = condition;
  const speaks = at.offers.filter((o) => o.kind === "commands");
  const own = speaks.find((o) => o.part === receiver && o.port === input.port);
  const foreign = alone ? undefined : speaks.find((o) => !o.dormant && o !== own);
  if (!own || foreign) {
    if (at.setting === setting) return undefined;
    const text = foreign
      ? `are there only when ${partName(foreign.part)} asks for the same at ${partName(at.part)}`
      : `are out of reach: no command gets from here to ${partName(at.part)}`;
    return barred(at.part, text);
  }
  const quadrant = /[VH][LH]$/.exec(setting)?.[0];
  if (quadrant?.startsWith("H") && own.volts18 <= at.thresholdVolts)
    return barred(at.part, `are horizontal, and ${partName(at.part)} sees too few volts to select it`);
  const needsTone = quadrant?.endsWith("H") || /^[2-9]/.test(setting);
  if (needsTone && !own.toneArrives)
    return barred(at.part, `need the 22 kHz tone, which does not reach ${partName(at.part)}`);
  return undefined;
}

/** A feed that is there, but that this receiver cannot have, because of a part. */
export function barred(part: string, text: string): Lost {
  return { got: false, why: "not selectable", part, text };
}
