/** Aerial for television in Band III, in channels of 7 MHz. */
import { televisionAerial, televisionOptions } from "./aerialTelevision.ts";
import { DEFAULT_VHF_ROWS, FIRST_VHF_CHANNEL, LAST_VHF_CHANNEL } from "./plans.ts";

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
      first: FIRST_VHF_CHANNEL,
      last: LAST_VHF_CHANNEL,
      help: "TV channels of Band III on air here, 7 MHz apart: 5 is 174 to 181 MHz, 12 is 223 to 230 MHz.",
      onAir: DEFAULT_VHF_ROWS,
    },
  ),
});
