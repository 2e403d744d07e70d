/** Follows a part's own declaration from an input to an output, through its inner nodes. */
import { defaultOptions, kindOf } from "../../src/parts/catalogue.ts";
import type { AnyOptions, PartKind, Path, SignalTreatment } from "../../src/parts/contract.ts";
import type { Band } from "../../src/signal/band.ts";
import type { Carrier } from "../../src/signal/carrier.ts";
import { gainDbAt } from "../../src/signal/gain.ts";
import { makeGrid } from "../../src/signal/grid.ts";
import { amplifyBand, sourceBand } from "../../src/signal/treat.ts";

export function kindNamed(key: string): PartKind {
  const kind = kindOf(key);
  if (!kind) throw new Error(`no kind ${key}`);
  return kind;
}

export function optionsOf(key: string, changes: AnyOptions = {}): AnyOptions {
  const kind = kindNamed(key);
  return kind.options.parse({ ...defaultOptions(kind), ...changes });
}

export function signalOf(key: string, changes: AnyOptions = {}, powered = true): SignalTreatment {
  return kindNamed(key).signal(optionsOf(key, changes), { id: "x", powered });
}

/** All ways from one port to another. */
export function waysBetween(
  treatment: SignalTreatment,
  from: string,
  to: string,
): readonly (readonly Path[])[] {
  return (treatment.paths ?? [])
    .filter((path) => path.from === from)
    .flatMap((path) =>
      path.to === to ? [[path]] : waysBetween(treatment, path.to, to).map((rest) => [path, ...rest]),
    );
}

/** Gain from port to port at one frequency [dB]; fails where there isn't exactly one way. */
export function gainBetween(
  treatment: SignalTreatment,
  from: string,
  to: string,
  frequencyMHz: number,
): number {
  const ways = waysBetween(treatment, from, to).filter((way) =>
    way.every(
      ({ takes }) =>
        frequencyMHz >= (takes?.fromMHz ?? 0) && frequencyMHz < (takes?.toMHz ?? Number.POSITIVE_INFINITY),
    ),
  );
  const [way] = ways;
  if (!way || ways.length > 1) throw new Error(`${ways.length} ways from ${from} to ${to}`);
  return way.reduce((sum, path) => sum + gainDbAt(path.response, frequencyMHz), 0);
}

/** One carrier as a matched source at 290 K puts it on the wire. */
export function carrierAt(centreMHz: number, widthMHz = 8, levelDbuv = 60): Band {
  const carrier: Carrier = {
    name: String(centreMHz),
    airMHz: centreMHz,
    widthMHz,
    noiseMHz: widthMHz,
    mode: "dvbt-64qam-2/3",
  };
  return sourceBand({
    origin: { key: "test", service: "tv", part: "test" },
    grid: makeGrid([carrier]),
    levelDbuv: () => levelDbuv,
    noiseKelvin: 290,
  });
}

/** A band led through a part. */
export function led(band: Band, treatment: SignalTreatment, from: string, to: string): Band {
  const [way] = waysBetween(treatment, from, to);
  if (!way) throw new Error(`no way from ${from} to ${to}`);
  return way.reduce((b, path) => {
    const { noiseFigureDb } = path;
    return amplifyBand(b, path.response, {
      part: "x",
      ...(noiseFigureDb === undefined ? {} : { noiseFigureDb }),
    });
  }, band);
}

/** Whether the band's only carrier is still receivable. */
export const isLive = (band: Band): boolean => band.cut[0] === 0;

/** Level over noise of the only carrier [dB]. */
export function carrierToNoiseDb(band: Band): number {
  return (band.level[0] ?? 0) - 10 * Math.log10(band.noise[0] ?? 0);
}
