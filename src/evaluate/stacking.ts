/** Channel stacking: from all that a converter could choose to the user bands that it sends. */
import type { PortPlane, StackPath } from "../parts/contract.ts";
import { noiseFactor } from "../rf/noise.ts";
import type { Band, Grid, Stack } from "../signal/band.ts";
import type { Carrier } from "../signal/carrier.ts";
import type { SwitchState } from "../signal/control.ts";
import { makeGrid, uncut, undisturbed } from "../signal/grid.ts";
import { disturbanceUv2, isLive } from "../signal/readout.ts";
import { remembered } from "../signal/remember.ts";

/**
 * A channel-stacked output: one carrier per user band at the level that the gain control holds.
 * Its noise and interference are those of the worst carrier that could be put there.
 */
export function stackBands(
  part: string,
  stack: StackPath,
  o: {
    arrived: readonly { readonly node: string; readonly bands: readonly Band[] }[];
    control: SwitchState | undefined;
  },
): Band[] {
  const { control } = o;
  const ofSatellites = o.arrived.map(({ node, bands }) => ({
    plane: stack.planes?.[node],
    bands: bands.filter((b) => b.origin.service === "satellite"),
  }));
  const holds = ofSatellites.flatMap(({ bands }) => bands);
  if (!control) return [];
  const worst = worstEntry(holds);
  if (!worst) return [];
  const grid = userBandGrid(stack, worst.requiredDb);
  const level = new Float64Array(grid.centre.length).fill(stack.levelDbuv);
  const power = 10 ** (stack.levelDbuv / 10);
  const noise = grid.ktb.map((ktb) => power * worst.noiseRatio + ktb * noiseFactor(stack.noiseFigureDb));
  const info: Stack = {
    standard: stack.standard,
    standards: Array.from(grid.index, (i) => stack.userBands[i]?.standard ?? stack.standard),
    part,
    port: stack.to,
    numbers: numbersOf(grid, stack),
    holds,
    strays: new Set(
      ofSatellites.flatMap(({ plane, bands }) => bands.filter((b) => plane && !isOf(plane, b))),
    ),
    control,
    entryNoiseRatio: worst.noiseRatio,
    entryInterferenceRatio: worst.interferenceRatio,
  };
  return [
    {
      origin: { key: `${part}/${stack.to}`, service: "satellite", part },
      grid,
      level,
      noise,
      interference:
        worst.interferenceRatio > 0
          ? new Float64Array(level.length).fill(power * worst.interferenceRatio)
          : undisturbed(grid),
      cut: uncut(grid),
      cuts: [],
      shifts: [],
      conditions: [],
      selected: control.setting !== null,
      stack: info,
    },
  ];
}

/** Also of another conversion: a whole polarisation lies elsewhere than the halves of one. */
function isOf({ polarisation, half }: Omit<PortPlane, "position">, band: Band): boolean {
  return band.origin.polarisation === polarisation && band.half === half;
}

const userBandGrids = new WeakMap<StackPath["userBands"], Map<number, Grid>>();

/** Grid of the user bands; each needs the C/N of the most demanding carrier that it may hold. */
function userBandGrid(stack: StackPath, requiredDb: number): Grid {
  const known = remembered(userBandGrids, stack.userBands, () => new Map<number, Grid>());
  return remembered(known, requiredDb, () => {
    const grid = makeGrid(userBandPlan(stack));
    return { ...grid, required: grid.required.map(() => requiredDb) };
  });
}

function userBandPlan(stack: StackPath): Carrier[] {
  return stack.userBands.map((ub) => ({
    name: `UB${ub.number}`,
    airMHz: ub.centreMHz,
    widthMHz: ub.widthMHz,
    noiseMHz: ub.widthMHz,
    mode: "",
  }));
}

function numbersOf(grid: Grid, stack: StackPath): number[] {
  return Array.from(grid.index, (i) => stack.userBands[i]?.number ?? 0);
}

function worstEntry(holds: readonly Band[]) {
  let noiseRatio = 0;
  let interferenceRatio = 0;
  let requiredDb = 0;
  let found = false;
  for (const band of holds)
    for (let i = 0; i < band.level.length; i++) {
      if (!isLive(band, i)) continue;
      found = true;
      const power = 10 ** ((band.level[i] ?? 0) / 10);
      noiseRatio = Math.max(noiseRatio, (band.noise[i] ?? 0) / power);
      // On a user band a carrier has other neighbours: products from before are in step with none that come after.
      interferenceRatio = Math.max(interferenceRatio, disturbanceUv2(band, i) / power);
      requiredDb = Math.max(requiredDb, band.grid.required[i] ?? 0);
    }
  return found ? { noiseRatio, interferenceRatio, requiredDb } : null;
}
