/** How field strength, gain and frequency make the level at an aerial's terminals. */
import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import { optionMeaning } from "../../../../parts/meanings.ts";
import { AS_LISTED } from "../../../../parts/transmitters.ts";
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
  /** What is lost because the aerial looks elsewhere, or its elements lie otherwise [dB, positive]. */
  readonly aimLossDb: number;
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

/** Null for a part that is no aerial or amplifies what it receives, or has no carrier in its list. */
export function aerialFigures(record: PartRecord): AerialFigures | null {
  const { options, outputs } = record;
  const { levelFrom, levelDbuv, fieldDbuvPerM, gainDbi } = options;
  if (typeof levelDbuv !== "number" || typeof fieldDbuvPerM !== "number" || typeof gainDbi !== "number")
    return null;
  if (record.treatment.emits?.some(({ port }) => outputs[port] === undefined)) return null;
  const straight = straightLevels(record);
  const fromField = levelFrom === "field";
  const lines = Object.entries(outputs).flatMap(([port, { bands }]) =>
    bands.flatMap((band) =>
      endsOf(band).flatMap((i): AerialLine[] => {
        const carrier = band.grid.plan[band.grid.index[i] ?? 0];
        if (!carrier) return [];
        const factorDb = fieldToLevelDbuv({ fieldDbuvPerM: 0, gainDbi, frequencyMHz: carrier.airMHz });
        const common = fromField ? fieldDbuvPerM + factorDb : levelDbuv;
        const level = band.level[i] ?? 0;
        const aimLossDb = (straight(band, i) ?? level) - level;
        return [
          {
            port,
            band,
            i,
            name: carrier.name,
            frequencyMHz: carrier.airMHz,
            levelDbuv: level,
            factorDb,
            offsetDb: level + aimLossDb - common,
            aimLossDb,
            fieldDbuvPerM: fromField ? fieldDbuvPerM : level + aimLossDb - factorDb,
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

/** Levels that the aerial would give if it looked at every transmitter. */
function straightLevels({ kind, options, part }: PartRecord): (band: Band, i: number) => number | undefined {
  const aim = optionMeaning(kind, "aim");
  if (aim === undefined || options[aim] === AS_LISTED) return () => undefined;
  const { emits = [] } = kind.signal({ ...options, [aim]: AS_LISTED }, { id: part.id, powered: true });
  const bands = emits.flatMap((e) => e.bands);
  return ({ origin, grid }, i) => bands.find((b) => b.origin.key === origin.key && b.grid === grid)?.level[i];
}
