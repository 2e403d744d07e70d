/** What is left of every signal behind a part that dies while vertical is asked for. */
import type { Band } from "../signal/band.ts";
import type { DiesAtVertical } from "../signal/control.ts";
import { isLive } from "../signal/readout.ts";
import { conditionsKey } from "../signal/treat.ts";
import type { SignalResult } from "./signals.ts";

/** Less than this is lost by no dead part [dB]: trunks that lead through one unharmed differ in nothing. */
const LEAST_LOSS_DB = 0.1;

/** The results of the living part, each signal marked with what it loses once the part is dead. */
export function weakerAtVertical(alive: SignalResult, dead: SignalResult, at: DiesAtVertical): SignalResult {
  return Object.fromEntries(
    Object.entries(alive).map(([port, result]) => {
      const left = dead[port]?.spectrum.bands ?? [];
      const bands = result.spectrum.bands.map((band) => {
        const twin = left.find((one) => isSameSignal(one, band));
        const lossDb = twin ? leastLossDb(band, twin) : Number.POSITIVE_INFINITY;
        return lossDb < LEAST_LOSS_DB
          ? band
          : { ...band, failing: [...(band.failing ?? []), { at, lossDb }] };
      });
      return [port, { ...result, spectrum: { ...result.spectrum, bands } }];
    }),
  );
}

function isSameSignal(a: Band, b: Band): boolean {
  return (
    a.origin.key === b.origin.key &&
    a.half === b.half &&
    (a.stack === undefined) === (b.stack === undefined) &&
    a.shifts.join() === b.shifts.join() &&
    conditionsKey(a) === conditionsKey(b)
  );
}

/** By how much the carrier that loses least gets weaker; without end where none is left [dB]. */
function leastLossDb(band: Band, twin: Band): number {
  const positions = new Map([...twin.grid.index].map((entry, i) => [entry, i]));
  let least = Number.POSITIVE_INFINITY;
  band.grid.index.forEach((entry, i) => {
    const k = positions.get(entry);
    if (k === undefined || !isLive(twin, k)) return;
    // Of two that are silent both ways nothing is lost; one that falls silent is lost without end.
    const lossDb = (band.level[i] ?? 0) - (twin.level[k] ?? 0);
    if (!Number.isNaN(lossDb)) least = Math.min(least, lossDb);
  });
  return least;
}
