/** What a receiver loses at parts that get too few volts at 13 V: alive while horizontal is asked for, dead else. */
import type { Band } from "../signal/band.ts";
import type { Offer } from "../signal/control.ts";
import { flat } from "../signal/response.ts";
import { amplifyBand } from "../signal/treat.ts";
import type { LostCarrier } from "./carrierResult.ts";
import { extreme } from "./extreme.ts";

export type DeadAtVertical = {
  /** What is left of the band while the part is dead; undefined: nothing. */
  readonly left: Band | undefined;
  /** What becomes of the carriers for which that is not enough. */
  readonly lost: LostCarrier;
};

/** The part that takes most from a band whenever vertical is asked for; undefined where the receiver meets none. */
export function deadAtVertical(
  { receiver, port }: { readonly receiver: string; readonly port: string },
  band: Band,
): DeadAtVertical | undefined {
  let worst: (NonNullable<Band["failing"]>[number] & { readonly own: Offer | undefined }) | undefined;
  let lossDb = 0;
  for (const failing of band.failing ?? []) {
    const own = failing.at.offers.find((o) => o.part === receiver && o.port === port);
    if (own && own.volts18 >= failing.at.leastVolts && asksForHorizontal(band, own)) continue;
    lossDb += failing.lossDb;
    if (!worst || failing.lossDb > worst.lossDb) worst = { ...failing, own };
  }
  const feeder = worst?.own ?? extreme(worst?.at.offers ?? [], (offer) => offer.volts13);
  if (!worst || !feeder) return undefined;
  const { at, own } = worst;
  return {
    left: lossDb < Number.POSITIVE_INFINITY ? amplifyBand(band, flat(-lossDb), { part: at.part }) : undefined,
    lost: {
      got: false,
      why: "not selectable",
      reason: {
        kind: "dies at vertical",
        part: at.part,
        // With all asking for vertical it may get less than this one would give it alone.
        volts: Math.min(feeder.volts13, at.volts),
        leastVolts: at.leastVolts,
        ...(own ? {} : { by: { part: feeder.part, port: feeder.port } }),
      },
      culprit: { part: at.part },
    },
  };
}

/** Whether a band comes only while this supply gives its voltage for horizontal. */
function asksForHorizontal({ conditions }: Band, own: Offer): boolean {
  return conditions.some(
    ({ at, setting }) =>
      /H[LH]$/.test(setting) && at.offers.some((o) => o.part === own.part && o.port === own.port),
  );
}
