/** Aerial for television in Band III, in channels of 7 MHz. */
import { z } from "zod";
import { numeral } from "../words/numbers.ts";
import { aerialCaption, aerialEmits, levelFields, levelOffset } from "./aerialLevel.ts";
import { AERIAL_OUT, channelCount } from "./aerials.ts";
import { define } from "./contract.ts";
import { choice, rows, wholeNumber } from "./fields.ts";
import { modeChoices } from "./modeChoices.ts";
import { DEFAULT_VHF_ROWS, FIRST_VHF_CHANNEL, LAST_VHF_CHANNEL, tvCarrier } from "./plans.ts";
import { aimFields, transmitterRow } from "./transmitters.ts";

const VHF_OPTIONS = z.object({
  ...levelFields({
    levelDbuv: 60,
    fieldDbuvPerM: 66,
    gainDbi: 9,
    gainHelp: `Over an isotropic aerial; add ${numeral(2.15, 2)} dB to a gain stated over a dipole (dBd).`,
  }),
  ...aimFields(),
  channels: rows({
    label: "Channels",
    help: "TV channels of Band III on air here, 7 MHz apart: 5 is 174 to 181 MHz, 12 is 223 to 230 MHz.",
    row: z.object({
      channel: wholeNumber({
        label: "Channel",
        min: FIRST_VHF_CHANNEL,
        max: LAST_VHF_CHANNEL,
        default: FIRST_VHF_CHANNEL,
      }),
      mode: choice({
        label: "Modulation",
        help: "Decides the C/N that the channel needs.",
        choices: modeChoices("dvbt-", "dvbt2-"),
        default: "dvbt-64qam-2/3",
      }),
      levelOffsetDb: levelOffset(),
      ...transmitterRow(),
    }),
    maxRows: 200,
    default: DEFAULT_VHF_ROWS,
    source: "invented list",
    onSite: "not ours",
  }),
});

export const AERIAL_VHF = define({
  kind: "aerial-vhf",
  family: "receive",
  name: "Band III TV aerial",
  summary: "Receives terrestrial TV in Band III (174–230 MHz); lists the channels on air and their level.",
  keywords: ["antenna", "television", "VHF", "DVB-T", "yagi", "terrestrial"],
  prefix: "vhf",
  trade: { job: "aerial", price: 50, workMinutes: 60, isRare: true },
  options: VHF_OPTIONS,
  symbol: "aerial-vhf",
  caption: (o) => aerialCaption(channelCount(o.channels.length), o),
  ports: () => AERIAL_OUT,
  signal: (o, { id }) => ({
    emits: aerialEmits({
      options: o,
      id,
      service: "tv",
      pattern: "III",
      plan: o.channels,
      carrier: tvCarrier,
      entry: (row) => row.channel,
    }),
  }),
  cautions: ["height", "bonding"],
});
