import { useMemo } from "react";
import { decimal } from "../format.ts";
import type { Answer } from "./answer.ts";
import { type Bound, diagram, EDGE } from "./diagram.ts";

const BOUND_WORDS: Readonly<Record<Bound["name"], string>> = {
  most: "most",
  least: "least",
  noise: "noise at most",
};

/** Level and noise from source to here, part by part; the figures at the bottom count the steps of the table. */
export function LevelDiagram({
  answer,
  width,
  height,
}: {
  readonly answer: Answer;
  readonly width: number;
  readonly height: number;
}) {
  const { x, y, curves, bounds } = useMemo(() => diagram(answer, { width, height }), [answer, width, height]);
  const { steps } = answer;
  const bottom = height - EDGE.bottom;
  const end = x(steps.length - 1) ?? 0;
  return (
    <svg className="level-diagram" width={width} height={height} role="img" aria-label={spoken(answer)}>
      <g className="axes">
        {y.ticks(Math.max(3, Math.round(height / 44))).map((dbuv) => (
          <g key={dbuv} transform={`translate(0 ${y(dbuv)})`}>
            <line x1={EDGE.left} x2={width - EDGE.right + 8} />
            <text x={EDGE.left - 6} dy="0.32em" textAnchor="end">
              {decimal(dbuv, 0)}
            </text>
          </g>
        ))}
        {steps.map((step, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place on the way.
          <g key={n} transform={`translate(${x(n)} 0)`}>
            <line y1={EDGE.top} y2={bottom} />
            <text y={bottom + 16} textAnchor="middle">
              {n + 1}
              <title>{step.label}</title>
            </text>
          </g>
        ))}
        <text x={4} y={11}>
          dBµV
        </text>
      </g>
      {curves.map((curve) => (
        <path key={curve.name} className={`curve ${curve.name}`} d={curve.path} />
      ))}
      {steps.map((step, n) => (
        <circle
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place on the way.
          key={n}
          className={step.cutHere ? "point gone" : "point"}
          cx={x(n)}
          cy={y(step.levelDbuv)}
          r={3.5}
        >
          <title>{`${step.label}: ${decimal(step.levelDbuv)} dBµV`}</title>
        </circle>
      ))}
      {spread(
        bounds.map((b) => ({ ...b, at: y(b.dbuv) })),
        13,
      ).map(({ name, dbuv, at, labelAt }) => (
        <g key={name} className={`bound ${name}`}>
          <line x1={end - 10} x2={width - EDGE.right + 14} y1={at} y2={at} />
          <text x={width - EDGE.right + 18} y={labelAt} dy="0.32em">
            {decimal(dbuv, 0)} {BOUND_WORDS[name]}
          </text>
        </g>
      ))}
    </svg>
  );
}

/** Labels moved apart until none covers another. */
function spread<T extends { readonly at: number }>(
  items: readonly T[],
  leastPx: number,
): (T & { labelAt: number })[] {
  let last = Number.NEGATIVE_INFINITY;
  return [...items]
    .sort((a, b) => a.at - b.at)
    .map((item) => {
      last = Math.max(item.at, last + leastPx);
      return { ...item, labelAt: last };
    });
}

function spoken({ steps }: Answer): string {
  const first = steps[0];
  const last = steps.at(-1);
  if (!first || !last) return "Level diagram";
  return `Level diagram: from ${decimal(first.levelDbuv)} dBµV at ${first.label} in ${steps.length} steps to ${decimal(last.levelDbuv)} dBµV; the table beside it gives every step.`;
}
