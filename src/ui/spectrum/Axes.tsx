import type { ScaleLinear } from "d3-scale";
import { decimal, megahertz } from "../format.ts";
import { type LevelScale, MARGIN } from "./plot.ts";

type Props = {
  readonly x: ScaleLinear<number, number>;
  readonly y: LevelScale;
  readonly ticks: readonly number[];
  readonly width: number;
  readonly height: number;
};

/** Grid and figures: frequency below, level at the left. */
export function Axes({ x, y, ticks, width, height }: Props) {
  const bottom = height - MARGIN.bottom;
  const right = width - MARGIN.right;
  return (
    <g className="axes" aria-hidden>
      {y.ticks(Math.max(3, Math.round(height / 44))).map((level) => (
        <g key={level} transform={`translate(0 ${y(level)})`}>
          <line x1={MARGIN.left} x2={right} />
          <text x={MARGIN.left - 6} dy="0.32em" textAnchor="end">
            {decimal(level, 0)}
          </text>
        </g>
      ))}
      {ticks.map((mhz) => (
        <g key={mhz} transform={`translate(${x(mhz)} 0)`}>
          <line y1={MARGIN.top} y2={bottom} />
          <text y={bottom + 14} textAnchor="middle">
            {megahertz(mhz)}
          </text>
        </g>
      ))}
      <text x={right} y={height - 5} textAnchor="end">
        MHz
      </text>
      <text x={4} y={12}>
        dBµV
      </text>
    </g>
  );
}
