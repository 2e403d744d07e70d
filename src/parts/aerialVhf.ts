/** Aerial for television in Band III, in channels of 7 MHz, or of another raster. */
import { televisionAerial, televisionOptions } from "./aerialTelevision.ts";
import { DEFAULT_VHF_ROWS, FIRST_VHF_CHANNEL } from "./plans.ts";
import { HIGHEST_VHF_CHANNEL, VHF_RASTER_FIELD } from "./tvRasters.ts";

export const AERIAL_VHF = televisionAerial({
  kind: "aerial-vhf",
  name: "Band III TV aerial",
  summary: "Receives terrestrial TV in Band III (174–230 MHz); lists the channels on air and their level.",
  keywords: ["antenna", "television", "VHF", "DVB-T", "yagi", "terrestrial"],
  prefix: "vhf",
  symbol: "aerial-vhf",
  pattern: "III",
  isRare: true,
  options: televisionOptions(
    { levelDbuv: 60, fieldDbuvPerM: 66, gainDbi: 9 },
    {
      lowest: FIRST_VHF_CHANNEL,
      highest: HIGHEST_VHF_CHANNEL,
      first: FIRST_VHF_CHANNEL,
      raster: VHF_RASTER_FIELD,
      help: "TV channels of Band III on air here. In the raster of 7 MHz 5 is 174 to 181 MHz and 12 is 223 to 230 MHz.",
      onAir: DEFAULT_VHF_ROWS,
    },
  ),
});
