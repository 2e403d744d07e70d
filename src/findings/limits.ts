/** What an outlet or a receiver should find, per service and modulation. */
import type { Service } from "../signal/carrier.ts";

export type Limits = { readonly minDbuv: number; readonly maxDbuv: number; readonly source: string };

const EN = "EN 60728-1 outlet levels, as quoted in a public table";

/** Rows are tried in order; the first whose service fits and whose prefix starts the mode decides. */
const ROWS: readonly { service: Service; mode: string; limits: Limits }[] = [
  { service: "fm", mode: "fm-mono", limits: { minDbuv: 40, maxDbuv: 70, source: EN } },
  { service: "fm", mode: "", limits: { minDbuv: 50, maxDbuv: 70, source: EN } },
  { service: "dab", mode: "", limits: { minDbuv: 28, maxDbuv: 94, source: EN } },
  {
    service: "tv",
    mode: "dvbt2-256qam",
    limits: {
      minDbuv: 44,
      maxDbuv: 74,
      source: `${EN}; 256 QAM minimum estimated from its C/N beside 64 QAM`,
    },
  },
  { service: "tv", mode: "dvbt2-64qam", limits: { minDbuv: 39, maxDbuv: 74, source: EN } },
  { service: "tv", mode: "dvbt2", limits: { minDbuv: 35, maxDbuv: 74, source: EN } },
  { service: "tv", mode: "dvbt-64qam", limits: { minDbuv: 45, maxDbuv: 74, source: EN } },
  { service: "tv", mode: "", limits: { minDbuv: 36, maxDbuv: 74, source: EN } },
  { service: "satellite", mode: "", limits: { minDbuv: 47, maxDbuv: 77, source: EN } },
];

/** Limits for a carrier; undefined for what nobody wants to receive. */
export function limitsFor(service: Service, mode: string): Limits | undefined {
  return ROWS.find((row) => row.service === service && mode.startsWith(row.mode))?.limits;
}
