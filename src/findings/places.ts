/** Where limits apply: the sockets of outlets and the inputs of receivers, and what can be received there. */

import { partName } from "../sentences/phrases.ts";
import { type Band, SILENCE, type Spectrum } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { cniDb, isLive } from "../signal/readout.ts";
import { type Limits, limitsFor, type Profile } from "./limits.ts";
import type { RuleView } from "./rule.ts";
import { isOfUse, userBandsBehind } from "./userBandsBehind.ts";

export type Place = {
  readonly port: string;
  readonly services: readonly Service[];
  readonly spectrum: Spectrum;
  /** User bands that count there. */
  readonly userBands: ReadonlySet<number>;
  /** "the TV socket of ⟦plate⟧" */
  readonly where: string;
};

/** A receiver behind an outlet is judged at the outlet's socket: the same level is not reported twice. */
export function placesOf({ record, kindAt }: Pick<RuleView, "record" | "kindAt">): Place[] {
  const name = partName(record.part.id);
  const label = (port: string) => record.ports.find((p) => p.id === port)?.label ?? port;
  const sockets = record.kind.delivery?.(record.options).sockets ?? [];
  const inputs = record.kind.reception?.(record.options).inputs ?? [];
  return [
    ...sockets.map(({ port, services }) => ({
      port,
      services,
      spectrum: record.outputs[port] ?? SILENCE,
      userBands: userBandsBehind(record, port),
      where: `the ${label(port)} socket of ${name}`,
    })),
    ...inputs
      .filter(({ port }) => !kindAt(port)?.delivery)
      .map(({ port, services }) => ({
        port,
        services,
        spectrum: record.inputs[port] ?? SILENCE,
        userBands: userBandsBehind(record, port),
        where: inputs.length > 1 ? `the input ${label(port)} of ${name}` : `the input of ${name}`,
      })),
  ];
}

export type Heard = {
  readonly name: string;
  readonly centreMHz: number;
  readonly levelDbuv: number;
  readonly cnDb: number;
  readonly limits: Limits;
};

/**
 * Live carriers of one service at a place that the profile has limits for. One that several alternatives
 * offer counts once; of a stacked feed only the user bands of the receivers behind it count.
 */
export function heardAt(place: Place, service: Service, profile: Profile): readonly Heard[] {
  const found = new Map<string, Heard>();
  for (const band of place.spectrum.bands) {
    if (band.origin.service !== service) continue;
    for (let i = 0; i < band.level.length; i++) {
      const carrier = carrierOf(band, i);
      const limits = limitsFor(profile, service, carrier?.mode ?? "");
      if (!limits || !carrier || !isLive(band, i)) continue;
      if (!isOfUse(band, i, place.userBands)) continue;
      const id = `${band.origin.key}#${band.grid.index[i]}`;
      if (found.has(id)) continue;
      found.set(id, {
        name: carrier.name,
        centreMHz: band.grid.centre[i] ?? 0,
        levelDbuv: band.level[i] ?? 0,
        cnDb: cniDb(band, i),
        limits,
      });
    }
  }
  return [...found.values()];
}

function carrierOf(band: Band, i: number) {
  return band.grid.plan[band.grid.index[i] ?? 0];
}
