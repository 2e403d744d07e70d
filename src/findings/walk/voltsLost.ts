/** Who takes the volts that a part lacks, as facts of a finding. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Offer } from "../../signal/control.ts";
import { cableVolts, failingTemperatureC, mostTaking, supplyWay, type VoltsAsked } from "./supplyWay.ts";

export type VoltsLost = {
  /** Who gives the supply, and how many volts [V]. */
  readonly supply: PartId;
  readonly givenVolts: number;
  /** The part on the way that takes most; absent where nothing takes any, or where too few are given from the start. */
  readonly taker?: {
    readonly part: PartId;
    readonly volts: number;
    readonly ohms: number;
    /** Of these volts, what a steering diode takes, whatever the current. */
    readonly diodeVolts: number;
  };
  /** Volts above what is needed [V]; negative: missing. */
  readonly spareVolts: number;
  /** Where less than 1 V is to spare and cables take some: their temperature at which none is left [°C]. */
  readonly failsAtC?: number;
};

/** Less than so much to spare is told with the temperature at which it is used up [V]. */
export const LITTLE_TO_SPARE_VOLTS = 1;

/** Follows a supply down from where it arrives. `asked`: which of its voltages; `needs`: what is needed there. */
export function voltsLost(
  evaluation: Evaluation,
  at: { readonly part: PartId; readonly port: string },
  o: { readonly offer: Offer; readonly asked: VoltsAsked; readonly needs: number },
): VoltsLost {
  const { offer, asked, needs } = o;
  const volts = offer[asked];
  const way = supplyWay(evaluation, at, offer, asked);
  const own = evaluation.record(offer.part)?.offers[offer.port]?.find((one) => one.part === offer.part);
  const givenVolts = own?.[asked] ?? volts + offer.dropVolts;
  const most = givenVolts < needs ? undefined : mostTaking(way);
  const spareVolts = volts - needs;
  const cables = cableVolts(evaluation, way);
  const isTight = spareVolts >= 0 && spareVolts < LITTLE_TO_SPARE_VOLTS && cables.ohmicVolts > 0;
  return {
    supply: offer.part,
    givenVolts,
    spareVolts,
    ...(most && most.dropVolts > 0
      ? { taker: { part: most.part, volts: most.dropVolts, ohms: most.ohms, diodeVolts: most.diodeVolts } }
      : {}),
    ...(isTight ? { failsAtC: failingTemperatureC({ spareVolts, ...cables }) } : {}),
  };
}
