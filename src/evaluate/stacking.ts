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
 * A channel-stacked output: one carrier per user band at the level that the gain control holds, or as far as it reaches.
 * Its level, noise and interference are those of the worst carrier that could be put there.
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
  const worst = worstEntry(holds, stack);
  if (!worst) return [];
  const grid = userBandGrid(stack, worst.requiredDb);
  const level = new Float64Array(grid.centre.length).fill(worst.levelDbuv);
  const power = 10 ** (worst.levelDbuv / 10);
  const noise = new Float64Array(level.length).fill(power * worst.noiseRatio);
  const info: Stack = {
    standard: stack.standard,
    standards: Array.from(grid.index, (i) => stack.userBands[i]?.standard ?? stack.standard),
    part,
    port: stack.to,
    numbers: numbersOf(grid, stack),
    holds,
    ...(stack.widebandLoMHz === undefined ? {} : { widebandLoMHz: stack.widebandLoMHz }),
    strays: new Set(
      ofSatellites.flatMap(({ plane, bands }) => bands.filter((b) => plane && !isOf(plane, b))),
    ),
    control,
    stage: { levelDbuv: stack.levelDbuv, leastDbuv: stack.leastDbuv, noiseFigureDb: stack.noiseFigureDb },
    entryLevelDbuv: worst.levelDbuv,
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
      ...(worst.leakShare > 0 ? { leakShare: new Float64Array(level.length).fill(worst.leakShare) } : {}),
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

/** Level on a user band [dBµV] of a carrier that has `levelDbuv` at the stage: below its window the gain is at its end. */
export function stackedLevelDbuv(stage: Stack["stage"], levelDbuv: number): number {
  return stage.levelDbuv - Math.max(0, stage.leastDbuv - levelDbuv);
}

/** Noise of a carrier on a user band, the stage's own included, as a share of its power. */
export function stackedNoiseRatio(stage: Stack["stage"], held: Band, i: number): number {
  const power = 10 ** ((held.level[i] ?? 0) / 10);
  const own = (held.grid.ktb[i] ?? 0) * (noiseFactor(stage.noiseFigureDb) - 1);
  return ((held.noise[i] ?? 0) + own) / power;
}

function worstEntry(holds: readonly Band[], stage: Stack["stage"]) {
  let levelDbuv = stage.levelDbuv;
  let noiseRatio = 0;
  let interferenceRatio = 0;
  let leakShare = 0;
  let requiredDb = 0;
  let found = false;
  for (const band of holds)
    for (let i = 0; i < band.level.length; i++) {
      if (!isLive(band, i)) continue;
      found = true;
      const power = 10 ** ((band.level[i] ?? 0) / 10);
      levelDbuv = Math.min(levelDbuv, stackedLevelDbuv(stage, band.level[i] ?? 0));
      noiseRatio = Math.max(noiseRatio, stackedNoiseRatio(stage, band, i));
      // On a user band a carrier has other neighbours: products from before are in step with none that come after.
      const disturbance = disturbanceUv2(band, i) / power;
      if (disturbance > interferenceRatio) {
        interferenceRatio = disturbance;
        leakShare = band.leakShare?.[i] ?? 0;
      }
      requiredDb = Math.max(requiredDb, band.grid.required[i] ?? 0);
    }
  return found ? { levelDbuv, noiseRatio, interferenceRatio, leakShare, requiredDb } : null;
}
