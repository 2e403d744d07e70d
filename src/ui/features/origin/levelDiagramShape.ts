/** Where things lie on the level diagram: one column for each part on the way, levels upwards. */
import { type ScaleLinear, type ScalePoint, scaleLinear, scalePoint } from "d3-scale";
import { area, line } from "d3-shape";
import { NAME_LINE_PX, nameLength } from "./columns.ts";
import type { LevelOrigin, OriginStep } from "./levelOrigin.ts";

export const LEVEL_EDGE = { left: 46, right: 118, top: 22, bottom: 26 } as const;

export type Curve = { readonly name: "level" | "noise" | "interference"; readonly path: string };
/** A bound at the end of the way; the level should lie above "least" and below "most", the noise below "noise". */
export type Bound = { readonly name: "least" | "most" | "noise"; readonly dbuv: number };

export type LevelDiagramShape = {
  readonly x: ScalePoint<number>;
  readonly y: ScaleLinear<number, number>;
  /** Where the levels end and the numbers of the parts begin [px]. */
  readonly bottom: number;
  /** Letters of a name that fit under a number; 0 where names are not shown. */
  readonly nameLength: number;
  readonly curves: readonly Curve[];
  readonly bounds: readonly Bound[];
  /** Where the level may lie on the way, as a closed shape; empty where that is not known. */
  readonly allowed: string;
  /** Where mismatch may move the level, as a closed shape around it. */
  readonly ripple: string;
};

type Size = {
  readonly width: number;
  readonly height: number;
  /** Levels of other carriers that must find room, too [dBµV]. */
  readonly further?: readonly number[];
  /** The parts' names find room under their numbers, if they are not too many. */
  readonly named?: boolean;
};

export function levelDiagramShape(answer: LevelOrigin, size: Size): LevelDiagramShape {
  const { steps } = answer;
  const bounds = boundsOf(answer);
  const x = scalePoint<number>()
    .domain(steps.map((_, n) => n))
    .range([LEVEL_EDGE.left, size.width - LEVEL_EDGE.right])
    .padding(0.35);
  const letters = size.named ? nameLength(x.step()) : 0;
  const bottom = size.height - LEVEL_EDGE.bottom - (letters > 0 ? NAME_LINE_PX : 0);
  const y = scaleLinear()
    .domain(levels(steps, bounds, size.further ?? []))
    .range([bottom, LEVEL_EDGE.top]);
  const curve = (name: Curve["name"], dbuv: (step: OriginStep) => number): Curve => ({
    name,
    path:
      line<OriginStep>()
        .defined((step) => Number.isFinite(dbuv(step)))
        .x((_, n) => x(n) ?? 0)
        .y((step) => y(dbuv(step)))(steps) ?? "",
  });
  return {
    x,
    y,
    bottom,
    nameLength: letters,
    bounds,
    allowed:
      area<OriginStep>()
        .defined((step) => step.within !== undefined)
        .x((_, n) => x(n) ?? 0)
        .y0((step) => y(step.within?.minDbuv ?? 0))
        .y1((step) => y(step.within?.maxDbuv ?? 0))(steps) ?? "",
    ripple:
      area<OriginStep>()
        .defined((step) => step.ripple !== undefined && Number.isFinite(step.levelDbuv))
        .x((_, n) => x(n) ?? 0)
        .y0((step) => y(step.levelDbuv - (step.ripple?.downDb ?? 0)))
        .y1((step) => y(step.levelDbuv + (step.ripple?.upDb ?? 0)))(steps) ?? "",
    curves: [
      curve("noise", noiseDbuv),
      curve("interference", interferenceDbuv),
      curve("level", (step) => step.levelDbuv),
    ].filter((c) => c.path !== ""),
  };
}

/** Noise in the carrier's bandwidth [dBµV]; −Infinity for none. */
export function noiseDbuv(step: OriginStep): number {
  return step.levelDbuv - step.cnDb;
}

/** Interference in the carrier's bandwidth [dBµV]; −Infinity for none. */
export function interferenceDbuv(step: OriginStep): number {
  return step.levelDbuv - step.ciDb;
}

function boundsOf({ steps, limits, requiredDb }: LevelOrigin): readonly Bound[] {
  const last = steps.at(-1);
  if (!last) return [];
  return [
    ...(limits ? [{ name: "most" as const, dbuv: limits.maxDbuv }] : []),
    ...(limits ? [{ name: "least" as const, dbuv: limits.minDbuv }] : []),
    ...(Number.isFinite(last.levelDbuv)
      ? [{ name: "noise" as const, dbuv: last.levelDbuv - requiredDb }]
      : []),
  ];
}

/** The levels of another carrier, as a line along the same parts. */
export function levelPath(
  levels: readonly number[],
  x: LevelDiagramShape["x"],
  y: LevelDiagramShape["y"],
): string {
  return (
    line<number>()
      .defined(Number.isFinite)
      .x((_, n) => x(n) ?? 0)
      .y((dbuv) => y(dbuv))([...levels]) ?? ""
  );
}

/** The levels shown, on tens with a little air [dBµV]. */
function levels(
  steps: readonly OriginStep[],
  bounds: readonly Bound[],
  further: readonly number[],
): readonly [number, number] {
  const all = [
    ...further,
    ...steps.flatMap((s) => [s.levelDbuv, noiseDbuv(s), interferenceDbuv(s)]),
    ...bounds.map((b) => b.dbuv),
  ].filter(Number.isFinite);
  return [Math.floor((Math.min(...all) - 2) / 10) * 10, Math.ceil((Math.max(...all) + 2) / 10) * 10];
}
