/** How field strength, gain and frequency make the level at an aerial's terminals. */
import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import { fieldToLevelDbuv } from "../../../../rf/field.ts";
import type { Band } from "../../../../signal/band.ts";

export type AerialLine = {
  readonly port: string;
  readonly band: Band;
  readonly i: number;
  readonly name: string;
  readonly frequencyMHz: number;
  readonly levelDbuv: number;
  /** Gain less the shrinking of the aerial with frequency: level = field + this [dB]. */
  readonly factorDb: number;
  /** How far the carrier lies above or below the common level [dB]. */
  readonly offsetDb: number;
  /** Field strength that is given, or that would give the measured level [dBµV/m]. */
  readonly fieldDbuvPerM: number;
};

export type AerialFigures = {
  /** Whether the level was given as a field, rather than measured at the terminals. */
  readonly fromField: boolean;
  readonly gainDbi: number;
  /** The lowest and the highest carrier; one where there is no more. */
  readonly lines: readonly AerialLine[];
};

/** Null for a part that is no aerial, or has no carrier in its list. */
export function aerialFigures({ options, outputs }: PartRecord): AerialFigures | null {
  const { levelFrom, levelDbuv, fieldDbuvPerM, gainDbi } = options;
  if (typeof levelDbuv !== "number" || typeof fieldDbuvPerM !== "number" || typeof gainDbi !== "number")
    return null;
  const fromField = levelFrom === "field";
  const lines = Object.entries(outputs).flatMap(([port, { bands }]) =>
    bands.flatMap((band) =>
      endsOf(band).flatMap((i): AerialLine[] => {
        const carrier = band.grid.plan[band.grid.index[i] ?? 0];
        if (!carrier) return [];
        const factorDb = fieldToLevelDbuv({ fieldDbuvPerM: 0, gainDbi, frequencyMHz: carrier.airMHz });
        const common = fromField ? fieldDbuvPerM + factorDb : levelDbuv;
        const level = band.level[i] ?? 0;
        return [
          {
            port,
            band,
            i,
            name: carrier.name,
            frequencyMHz: carrier.airMHz,
            levelDbuv: level,
            factorDb,
            offsetDb: level - common,
            fieldDbuvPerM: fromField ? fieldDbuvPerM : level - factorDb,
          },
        ];
      }),
    ),
  );
  return lines.length > 0 ? { fromField, gainDbi, lines } : null;
}

function endsOf(band: Band): readonly number[] {
  const last = band.level.length - 1;
  return last < 0 ? [] : last === 0 ? [0] : [0, last];
}
