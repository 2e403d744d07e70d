/** Whether a receiver can use a feed at all: is it the kind it needs, and can it set the switches on the way? */
import type { ReceiverInput } from "../parts/contract.ts";
import { type Clause, partName } from "../sentences/phrases.ts";
import type { Band } from "../signal/band.ts";
import type { Condition } from "../signal/control.ts";
import type { Lost } from "./fate.ts";

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
  if (wrong) return { got: false, why: "wrong feed", clause: wrong };
  const swapped = swappedAt(band);
  if (swapped) {
    const where = `by a wrong input of ${partName(swapped)}`;
    return {
      got: false,
      why: "wrong feed",
      part: swapped,
      clause: { one: (n) => `${n} comes in ${where}`, other: (n) => `${n} come in ${where}` },
    };
  }
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
function wrongFeed(input: ReceiverInput, band: Band): Clause | undefined {
  if (band.origin.service !== "satellite") return undefined;
  const lo = band.shifts[0];
  if (lo === undefined) return WRONG_FEED.unconverted;
  if (input.feed === "wideband") {
    if (band.half) return WRONG_FEED.switched;
    if (input.polarisation && input.polarisation !== band.origin.polarisation) {
      const where = `on the input for ${input.polarisation}, but polarised ${band.origin.polarisation ?? "otherwise"}`;
      return { one: (n) => `${n} is ${where}`, other: (n) => `${n} are ${where}` };
    }
    return undefined;
  }
  if (input.feed === "stacked") return WRONG_FEED.unstacked;
  const expected = band.half ? UNIVERSAL_LOS[band.half] : undefined;
  if (expected === undefined || Math.abs(lo - expected) > 5) return WRONG_FEED.wideband;
  return undefined;
}

const WRONG_FEED = {
  unconverted: {
    one: (n) => `${n} is not converted to satellite IF`,
    other: (n) => `${n} are not converted to satellite IF`,
  },
  switched: {
    one: (n) => `${n} is on a switched or quattro feed, but this input needs a wideband one`,
    other: (n) => `${n} are on a switched or quattro feed, but this input needs a wideband one`,
  },
  unstacked: {
    one: (n) => `${n} is not on a user band`,
    other: (n) => `${n} are not on a user band`,
  },
  wideband: {
    one: (n) => `${n} is on a wideband feed, which this input cannot tune`,
    other: (n) => `${n} are on a wideband feed, which this input cannot tune`,
  },
} as const satisfies Readonly<Record<string, Clause>>;

/** Whether the receiver itself can make a switch stand as needed; the barrier if not. */
function unreachable({ receiver, input, alone }: Listener, condition: Condition): Lost | undefined {
  const { at, setting } = condition;
  const speaks = at.offers.filter((o) => o.kind === "commands");
  const own = speaks.find((o) => o.part === receiver && o.port === input.port);
  const foreign = alone ? undefined : speaks.find((o) => !o.dormant && o !== own);
  if (!own || foreign) {
    if (at.setting === setting) return undefined;
    const when = foreign
      ? `only when ${partName(foreign.part)} asks for the same at ${partName(at.part)}`
      : "";
    return barred(
      at.part,
      foreign
        ? { one: (n) => `${n} is there ${when}`, other: (n) => `${n} are there ${when}` }
        : outOfReach(`no command gets from here to ${partName(at.part)}`),
    );
  }
  const quadrant = /[VH][LH]$/.exec(setting)?.[0];
  const where = partName(at.part);
  if (quadrant?.startsWith("H") && own.volts18 <= at.thresholdVolts)
    return barred(at.part, {
      one: (n) => `${n} is horizontal, and ${where} sees too few volts to select it`,
      other: (n) => `${n} are horizontal, and ${where} sees too few volts to select them`,
    });
  const needsTone = quadrant?.endsWith("H") || /^[2-9]/.test(setting);
  if (needsTone && !own.toneArrives)
    return barred(at.part, {
      one: (n) => `${n} needs the 22 kHz tone, which does not reach ${where}`,
      other: (n) => `${n} need the 22 kHz tone, which does not reach ${where}`,
    });
  return undefined;
}

/** A feed that is there, but that this receiver cannot have, because of a part. */
export function barred(part: string, clause: Clause): Lost {
  return { got: false, why: "not selectable", part, clause };
}

/** "3 are out of reach: no message gets to ⟦converter⟧". */
export function outOfReach(why: string): Clause {
  return { one: (n) => `${n} is out of reach: ${why}`, other: (n) => `${n} are out of reach: ${why}` };
}
