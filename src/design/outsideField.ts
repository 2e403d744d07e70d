/** The field outside, from the settings of a design. */
import type { OutsideField } from "../parts/outsideField.ts";
import { eirpToFieldDbuvPerM } from "../rf/field.ts";
import type { Settings } from "./settings.ts";

/** Power of a cordless phone (DECT) [dBm EIRP]: 250 mW, EN 300 175-2, from memory. */
const CORDLESS_DBM = 24;

/** Nearer than this no part lies to a phone: beyond it the field falls with distance [m]; λ/2π is 0.03 m at 1.9 GHz. */
const NEAREST_M = 0.5;

/** Transmitters near the installation; undefined where none is named. */
export function fieldOf(settings: Settings): OutsideField | undefined {
  const { mastBand, mastFieldFrom, mastDbuvPerM, mastEirpDbm, mastDistanceM, cordlessDistanceM } = settings;
  if (mastBand === "none" && cordlessDistanceM === 0) return undefined;
  const dbuvPerM =
    mastFieldFrom === "measured"
      ? mastDbuvPerM
      : eirpToFieldDbuvPerM({ eirpDbm: mastEirpDbm, distanceM: mastDistanceM });
  return {
    ...(mastBand === "none" ? {} : { mast: { band: mastBand, dbuvPerM } }),
    ...(cordlessDistanceM === 0
      ? {}
      : {
          cordlessDbuvPerM: eirpToFieldDbuvPerM({
            eirpDbm: CORDLESS_DBM,
            distanceM: Math.max(NEAREST_M, cordlessDistanceM),
          }),
        }),
  };
}
