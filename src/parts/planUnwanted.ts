/** Signals that nobody wants on a TV cable: mobile phone masts and handsets, cordless phones. */
import type { Carrier } from "../signal/carrier.ts";

/** Width of a 10 MHz LTE carrier that is really occupied [MHz]: 50 resource blocks of 180 kHz (3GPP TS 36.101). */
const LTE_WIDTH_MHZ = 9;

/** A mobile band, filled with carriers of 10 MHz from its lower edge. */
function lteCarriers(o: { label: string; fromMHz: number; toMHz: number }): readonly Carrier[] {
  const count = Math.round((o.toMHz - o.fromMHz) / 10);
  return Array.from({ length: count }, (_, i) => {
    const airMHz = o.fromMHz + 5 + 10 * i;
    return {
      name: `${o.label} ${airMHz}`,
      airMHz,
      widthMHz: LTE_WIDTH_MHZ,
      noiseMHz: LTE_WIDTH_MHZ,
      mode: "mobile",
    };
  });
}

/** Band edges from 3GPP TS 36.101 (bands 28, 20 and 3, as used in Europe), from memory. */
export const MAST_700 = lteCarriers({ label: "mast", fromMHz: 758, toMHz: 788 });
export const HANDSET_700 = lteCarriers({ label: "handset", fromMHz: 703, toMHz: 733 });
export const MAST_800 = lteCarriers({ label: "mast", fromMHz: 791, toMHz: 821 });
export const HANDSET_800 = lteCarriers({ label: "handset", fromMHz: 832, toMHz: 862 });
export const MAST_1800 = lteCarriers({ label: "mast", fromMHz: 1805, toMHz: 1875 });

/** Whether a mobile carrier comes from handsets, which send in bursts. */
export function isHandset(airMHz: number): boolean {
  return [...HANDSET_700, ...HANDSET_800].some((carrier) => carrier.airMHz === airMHz);
}

const DECT_SPACING_MHZ = 1.728;

/** The ten DECT carriers, 1897.344 MHz − n · 1.728 MHz (EN 300 175-2, from memory). */
export const CORDLESS: readonly Carrier[] = Array.from({ length: 10 }, (_, n) => ({
  name: `DECT ${9 - n}`,
  airMHz: 1897.344 - DECT_SPACING_MHZ * (9 - n),
  widthMHz: DECT_SPACING_MHZ,
  noiseMHz: DECT_SPACING_MHZ,
  mode: "dect",
}));
