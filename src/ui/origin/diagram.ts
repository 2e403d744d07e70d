/** Where things lie on the level diagram: one column for each part on the way, levels upwards. */
import { type ScaleLinear, type ScalePoint, scaleLinear, scalePoint } from "d3-scale";
import { line } from "d3-shape";
import type { Answer, Step } from "./answer.ts";

export const EDGE = { left: 46, right: 118, top: 22, bottom: 26 } as const;

export type Curve = { readonly name: "level" | "noise" | "interference"; readonly path: string };
/** A bound at the end of the way; the level should lie above "least" and below "most", the noise below "noise". */
export type Bound = { readonly name: "least" | "most" | "noise"; readonly dbuv: number };

export type Diagram = {
  readonly x: ScalePoint<number>;
  readonly y: ScaleLinear<number, number>;
  readonly curves: readonly Curve[];
  readonly bounds: readonly Bound[];
};

export function diagram(answer: Answer, size: { readonly width: number; readonly height: number }): Diagram {
  const { steps } = answer;
  const bounds = boundsOf(answer);
  const x = scalePoint<number>()
    .domain(steps.map((_, n) => n))
    .range([EDGE.left, size.width - EDGE.right])
    .padding(0.35);
  const y = scaleLinear()
    .domain(levels(steps, bounds))
    .range([size.height - EDGE.bottom, EDGE.top]);
  const curve = (name: Curve["name"], dbuv: (step: Step) => number): Curve => ({
    name,
    path:
      line<Step>()
        .defined((step) => Number.isFinite(dbuv(step)))
        .x((_, n) => x(n) ?? 0)
        .y((step) => y(dbuv(step)))(steps) ?? "",
  });
  return {
    x,
    y,
    bounds,
    curves: [
      curve("noise", noiseDbuv),
      curve("interference", interferenceDbuv),
      curve("level", (step) => step.levelDbuv),
    ].filter((c) => c.path !== ""),
  };
}

/** Noise in the carrier's bandwidth [dBµV]; −Infinity for none. */
export function noiseDbuv(step: Step): number {
  return step.levelDbuv - step.cnDb;
}

/** Interference in the carrier's bandwidth [dBµV]; −Infinity for none. */
export function interferenceDbuv(step: Step): number {
  return step.levelDbuv - step.ciDb;
}

function boundsOf({ steps, limits, requiredDb }: Answer): readonly Bound[] {
  const last = steps.at(-1);
  if (!last) return [];
  return [
    ...(limits ? [{ name: "most" as const, dbuv: limits.maxDbuv }] : []),
    ...(limits ? [{ name: "least" as const, dbuv: limits.minDbuv }] : []),
    { name: "noise", dbuv: last.levelDbuv - requiredDb },
  ];
}

/** The levels shown, on tens with a little air [dBµV]. */
function levels(steps: readonly Step[], bounds: readonly Bound[]): readonly [number, number] {
  const all = [
    ...steps.flatMap((s) => [s.levelDbuv, noiseDbuv(s), interferenceDbuv(s)]),
    ...bounds.map((b) => b.dbuv),
  ].filter(Number.isFinite);
  return [Math.floor((Math.min(...all) - 2) / 10) * 10, Math.ceil((Math.max(...all) + 2) / 10) * 10];
}
