/** UHF aerial with an amplifier inside. */
import { z } from "zod";
import { flat, series } from "../signal/response.ts";
import { aerialCaption, levelFields } from "./aerialLevel.ts";
import { UHF_OPTIONS } from "./aerials.ts";
import { AERIAL_OUT, channelCount, televisionEmits } from "./aerialTelevision.ts";
import {
  cableFed,
  cableFedFields,
  gainDb,
  noiseFigureDb,
  OUT_OF_BAND_DB,
  outputDbuv,
  TV_RATIO_DB,
  UNPOWERED_GAIN,
  uhfTo,
} from "./amplifierFields.ts";
import { define } from "./contract.ts";
import { passing } from "./passive.ts";

/** Small and often indoors: less of everything. */
const ACTIVE_LEVELS = levelFields({
  levelDbuv: 48,
  fieldDbuvPerM: 66,
  gainDbi: 4,
  gainHelp: "Of its elements over an isotropic aerial, without the amplifier.",
});

export const AERIAL_ACTIVE = define({
  kind: "aerial-active",
  family: "receive",
  name: "Active aerial",
  summary: "UHF aerial with an amplifier inside, fed through the cable with 5 or 12 V.",
  keywords: ["antenna", "amplified", "indoor aerial", "caravan", "5 V", "television", "DVB-T2"],
  prefix: "active",
  trade: { job: "aerial", price: 40, workMinutes: 30, fedWithVolts: 12, isRare: true },
  options: z.object({
    ...UHF_OPTIONS.shape,
    ...ACTIVE_LEVELS,
    uhfTo,
    gainDb: gainDb(40, 15),
    noiseFigureDb: noiseFigureDb(2.5),
    outputDbuv: outputDbuv(98, TV_RATIO_DB),
    ...cableFedFields({ milliamps: 30, minVolts: 4.5 }),
  }),
  symbol: "aerial-active",
  caption: (o) => aerialCaption(channelCount(o.channels.length), o),
  ports: () => AERIAL_OUT,
  signal: (o, { id, powered }) => {
    const band = passing([{ fromMHz: 470, toMHz: Number(o.uhfTo) }], OUT_OF_BAND_DB);
    const emits = televisionEmits(o, { id, port: "#element", pattern: "IV/V" });
    const way = { from: "#element", to: "out" };
    if (!powered) return { emits, paths: [{ ...way, response: series(UNPOWERED_GAIN, band) }] };
    const rating = { outputDbuv: o.outputDbuv, ratioDb: TV_RATIO_DB };
    const response = series(flat(o.gainDb), band);
    return { emits, paths: [{ ...way, response, noiseFigureDb: o.noiseFigureDb, rating }] };
  },
  power: cableFed,
  cautions: ["height", "bonding"],
});
