/** Screening of cables, plates, joints, splitters and amplifiers, and what gets in through it where a transmitter is near. */

import { DIPOLE_DBI, fieldToLevelDbuv } from "../rf/field.ts";
import { REFERENCE_KELVIN } from "../rf/noise.ts";
import type { Band, Grid } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { gainDbAt } from "../signal/gain.ts";
import { makeGrid } from "../signal/grid.ts";
import { type Response, series } from "../signal/response.ts";
import { sourceBand } from "../signal/treat.ts";
import type { Path, SignalContext, SignalTreatment } from "./contract.ts";
import { choice } from "./fields.ts";
import type { OutsideField } from "./outsideField.ts";
import { CORDLESS, MAST_700, MAST_800, MAST_1800 } from "./planUnwanted.ts";

/** Screening [dB] up to a frequency [MHz], rising in frequency; the last holds beyond. */
type Steps = readonly (readonly [number, number])[];

/** What no class is stated for: order of magnitude of a plain plug and lead, from memory. */
const UNCLASSED: Steps = [[3000, 40]];

/** Cables: EN 50117, from memory. */
const OF_CABLES = {
  "A++": [
    [1000, 105],
    [2000, 95],
    [3000, 85],
  ],
  "A+": [
    [1000, 95],
    [2000, 85],
    [3000, 75],
  ],
  A: [
    [1000, 85],
    [2000, 75],
    [3000, 65],
  ],
  B: [
    [1000, 75],
    [2000, 65],
    [3000, 55],
  ],
  none: UNCLASSED,
} as const satisfies Record<string, Steps>;

/** Plates, connectors, splitters and amplifiers: EN 50083-2/A1, as quoted in a catalogue. */
const OF_EQUIPMENT = {
  A: [
    [300, 85],
    [470, 80],
    [1000, 75],
    [3000, 55],
  ],
  B: [
    [470, 75],
    [1000, 65],
    [3000, 55],
  ],
  none: UNCLASSED,
} as const satisfies Record<string, Steps>;

export type CableClass = keyof typeof OF_CABLES;
export type EquipmentClass = keyof typeof OF_EQUIPMENT;

/** Screening of a cable of a class [dB]. */
export function cableScreeningDb(of: CableClass, frequencyMHz: number): number {
  return stepAt(OF_CABLES[of], frequencyMHz);
}

/** Screening of a plate or a connector of a class [dB]. */
export function equipmentScreeningDb(of: EquipmentClass, frequencyMHz: number): number {
  return stepAt(OF_EQUIPMENT[of], frequencyMHz);
}

function stepAt(steps: Steps, f: number): number {
  return (steps.find(([upTo]) => f <= upTo) ?? steps[steps.length - 1])?.[1] ?? 0;
}

/** Field for a screening class, of one list of classes as of the other. */
function screeningField<C extends string>(
  classes: readonly C[],
  o: { readonly default: C; readonly source: string },
) {
  return choice({
    label: "Screening class",
    choices: classes.map((value) => ({ value, label: value === "none" ? "None stated" : value })),
    ...o,
    help: "Counts where the settings name a phone mast or a cordless phone near by.",
    means: "screening",
    advanced: true,
  });
}

/** Field for the class of a cable. */
export const cableScreening = () =>
  screeningField<CableClass>(["A++", "A+", "A", "B", "none"], {
    default: "A",
    source: "EN 50117, from memory: 105, 95, 85 and 75 dB up to 1000 MHz; none stated: about 40 dB",
  });

/** Field for the class of a plate, a joint, a splitter or an amplifier. */
export const equipmentScreening = (value: EquipmentClass = "A") =>
  screeningField<EquipmentClass>(["A", "B", "none"], {
    default: value,
    source: "EN 50083-2/A1, as quoted: 75 and 65 dB at 470 to 1000 MHz, 55 above; none stated: about 40 dB",
  });

/** What comes in below this is lost beside any wanted carrier [dBµV]: 22 dB below the least that an outlet should have. */
const LEAST_DBUV = 25;

type Transmitter = { readonly key: string; readonly service: Service; readonly grid: Grid };

const MASTS: Readonly<Record<"700" | "800" | "1800", Transmitter>> = {
  "700": { key: "mast700", service: "mobile", grid: makeGrid(MAST_700) },
  "800": { key: "mast800", service: "mobile", grid: makeGrid(MAST_800) },
  "1800": { key: "mast1800", service: "mobile", grid: makeGrid(MAST_1800) },
};
const PHONE: Transmitter = { key: "cordless", service: "cordless", grid: makeGrid(CORDLESS) };

/**
 * What gets into a part through its screen, by output: the voltage of a half-wave dipole in the field less the screening.
 * A rough model (medium confidence, from memory): how long and how the cable lies in the field does not count.
 * `through`: what the part does to it on the way to that output.
 */
export function ingress(
  { id, field }: SignalContext,
  screeningDb: (frequencyMHz: number) => number,
  outputs: readonly { readonly port: string; readonly through?: Response }[],
): Pick<SignalTreatment, "ingress"> {
  if (!field) return {};
  const found = outputs.flatMap(({ port, through }) => {
    const bands = transmittersOf(field).flatMap(({ of, fieldDbuvPerM }): readonly Band[] => {
      const levelAt = (frequencyMHz: number) =>
        fieldToLevelDbuv({ fieldDbuvPerM, gainDbi: DIPOLE_DBI, frequencyMHz }) -
        screeningDb(frequencyMHz) +
        (through ? gainDbAt(through, frequencyMHz) : 0);
      const { key, service, grid } = of;
      if (!grid.centre.some((f) => levelAt(f) >= LEAST_DBUV)) return [];
      const origin = { key: `${id}/${key}`, service, part: id };
      return [
        sourceBand({
          origin,
          grid,
          levelDbuv: ({ airMHz }) => levelAt(airMHz),
          noiseKelvin: REFERENCE_KELVIN,
        }),
      ];
    });
    return bands.length > 0 ? [{ port, bands }] : [];
  });
  return found.length > 0 ? { ingress: found } : {};
}

/**
 * What a closed part does, and what gets in at its input connectors: that runs through it like any signal, amplified or divided.
 * Where it has several inputs it is counted once, at the first that leads to an output.
 */
export function screened(
  context: SignalContext,
  { screening }: { readonly screening: EquipmentClass },
  treatment: SignalTreatment,
): SignalTreatment {
  if (!context.field) return treatment;
  const { paths = [] } = treatment;
  const ports = [...new Set(paths.map((path) => path.to))].filter((port) => !port.startsWith("#"));
  const outputs = ports.map((port) => ({ port, through: wayTo(paths, port) }));
  return { ...treatment, ...ingress(context, (f) => equipmentScreeningDb(screening, f), outputs) };
}

function wayTo(paths: readonly Path[], port: string): Response {
  const way: Response[] = [];
  let node: string | undefined = port;
  // Inner nodes lie in a row: never more of them than paths.
  for (let guard = paths.length; node !== undefined && guard > 0; guard--) {
    const last: Path | undefined = paths.find((path) => path.to === node);
    if (last) way.unshift(last.response);
    node = last?.from.startsWith("#") ? last.from : undefined;
  }
  return series(...way);
}

function transmittersOf({ mast, cordlessDbuvPerM }: OutsideField) {
  return [
    ...(mast ? [{ of: MASTS[mast.band], fieldDbuvPerM: mast.dbuvPerM }] : []),
    ...(cordlessDbuvPerM === undefined ? [] : [{ of: PHONE, fieldDbuvPerM: cordlessDbuvPerM }]),
  ];
}
