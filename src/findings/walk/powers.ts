/** Level, noise and interference of one carrier at one point, its own also on a user band. */
import { type CarrierId, type FoundCarrier, findCarrier } from "../../evaluate/trace.ts";
import { disturbanceUv2 } from "../../signal/readout.ts";
import { ownPowers } from "../stackedReception.ts";

export type Powers = {
  readonly levelDbuv: number;
  /** Linear, in the carrier's noise bandwidth [(µV)²]. */
  readonly noise: number;
  readonly interference: number;
};

export function powersAt({ band, i }: FoundCarrier, carrier: CarrierId): Powers {
  const levelDbuv = band.level[i] ?? 0;
  const { stack } = band;
  const held = stack && findCarrier(stack.holds, carrier, undefined);
  if (stack && held) return ownPowers({ band, stack, held: held.band, i: held.i }, i);
  return { levelDbuv, noise: band.noise[i] ?? 0, interference: disturbanceUv2(band, i) };
}
