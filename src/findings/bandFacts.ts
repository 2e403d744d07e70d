/** A signal as a finding names it: what it is, and from whom. */
import type { PartId } from "../design/design.ts";
import { satelliteBandOn } from "../parts/planSatellite.ts";
import type { Band, Grid } from "../signal/band.ts";
import {
  type Polarisation,
  type Service,
  type SkyHalf,
  type Television,
  televisionOf,
} from "../signal/carrier.ts";

export type BandFacts = {
  readonly service: Service;
  /** Its source; of a stacked feed the converter that makes it. */
  readonly part: PartId;
  readonly television?: Television;
  /** Terrestrial transmitter as the user named it. */
  readonly transmitter?: string;
  readonly polarisation?: Polarisation;
  /** The wave turns: right-hand where `polarisation` is V, left-hand where it is H. */
  readonly circular?: true;
  readonly half?: SkyHalf;
  /** Present on what is not a band of carriers from the air: user bands, or a converter's own noise. */
  readonly sort?: "user bands" | "noise";
};

export function bandFactsOf(band: Band): BandFacts {
  const { origin, grid, half, stack, isFloor } = band;
  const sort = isFloor ? ("noise" as const) : stack ? ("user bands" as const) : undefined;
  return {
    service: origin.service,
    ...televisionOf(origin.service, modesOf(grid)),
    part: origin.part,
    ...(origin.transmitter === undefined ? {} : { transmitter: origin.transmitter }),
    ...(origin.polarisation ? { polarisation: origin.polarisation } : {}),
    ...(origin.circular ? { circular: origin.circular } : {}),
    ...(half && satelliteBandOn(band) === "Ku" ? { half } : {}),
    ...(sort ? { sort } : {}),
  };
}

function* modesOf({ index, plan }: Grid): Generator<string> {
  for (const entry of index) yield plan[entry]?.mode ?? "";
}
