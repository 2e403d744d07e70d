/** What people use: TV sets, radios and satellite receivers. */

import { z } from "zod";
import type { Service } from "../signal/carrier.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { define, type PartKind } from "./contract.ts";
import { number } from "./fields.ts";
import { coaxIn } from "./passive.ts";
import { SATELLITE_RECEIVERS } from "./receiversSatellite.ts";
import { STACKED_RECEIVERS } from "./receiversStacked.ts";
import { asTelevision } from "./receiverTelevision.ts";
import type { SymbolName } from "./symbols.ts";

/** A receiver with one aerial input that tunes a range and supplies nothing. */
function terrestrial(r: {
  kind: string;
  name: string;
  summary: string;
  keywords: readonly string[];
  prefix: string;
  symbol: SymbolName;
  service: Service;
  fromMHz: number;
  toMHz: number;
  source: string;
}): PartKind {
  return define({
    kind: r.kind,
    family: "use",
    name: r.name,
    summary: r.summary,
    keywords: r.keywords,
    prefix: r.prefix,
    trade: { job: "receiver", price: 150, workMinutes: 10, onSite: "setting" },
    options: z.object({
      fromMHz: number({
        label: "Tunes from",
        unit: "MHz",
        min: 40,
        max: 900,
        default: r.fromMHz,
        source: r.source,
        advanced: true,
      }),
      toMHz: number({
        label: "Tunes to",
        unit: "MHz",
        min: 40,
        max: 1100,
        default: r.toMHz,
        source: r.source,
        advanced: true,
      }),
    }),
    symbol: r.symbol,
    caption: (o) => `tunes ${numeralAsSet(o.fromMHz)}–${numeralAsSet(o.toMHz)} MHz`,
    ports: () => [coaxIn("in", "aerial")],
    signal: () => ({}),
    reception: (o) => ({
      inputs: [
        {
          port: "in",
          feed: "terrestrial",
          services: [r.service],
          tunesFromMHz: Math.min(o.fromMHz, o.toMHz),
          tunesToMHz: Math.max(o.fromMHz, o.toMHz),
          tuners: 1,
        },
      ],
      wants: [r.service],
    }),
  });
}

const tv = asTelevision(
  terrestrial({
    kind: "receiver-tv",
    name: "TV set",
    summary: "Receives terrestrial TV at its aerial input.",
    keywords: ["television", "DVB-T", "DVB-T2", "aerial", "set-top box"],
    prefix: "tv",
    symbol: "receiver-tv",
    service: "tv",
    fromMHz: 174,
    toMHz: 862,
    source: "VHF and UHF TV bands up to the former channel 69, from memory",
  }),
);

const dab = terrestrial({
  kind: "receiver-dab",
  name: "DAB radio",
  summary: "Receives digital radio in Band III.",
  keywords: ["digital radio", "DAB+", "tuner"],
  prefix: "dab",
  symbol: "receiver-radio",
  service: "dab",
  fromMHz: 174,
  toMHz: 240,
  source: "Band III, 174–240 MHz",
});

const fm = terrestrial({
  kind: "receiver-fm",
  name: "FM radio",
  summary: "Receives FM radio in Band II.",
  keywords: ["VHF radio", "tuner", "stereo"],
  prefix: "fm",
  symbol: "receiver-radio",
  service: "fm",
  fromMHz: 87.5,
  toMHz: 108,
  source: "Band II, 87.5–108 MHz, Spanish Royal Decree 346/2011",
});

export const RECEIVERS: readonly PartKind[] = [tv, dab, fm, ...SATELLITE_RECEIVERS, ...STACKED_RECEIVERS];
