import type { ScaleLinear } from "d3-scale";
import { decimal, megahertz } from "../../kit/format.ts";
import { type LevelScale, MARGIN } from "./plot.ts";

type Props = {
  readonly x: ScaleLinear<number, number>;
  readonly y: LevelScale;
  readonly ticks: readonly number[];
  readonly width: number;
  readonly height: number;
};

/** Half of the widest figure below the axis, and a little [px]: nearer to the edge it would be cut off. */
const HALF_LABEL = 24;

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
          <text
            {...(x(mhz) > width - HALF_LABEL
              ? { x: width - x(mhz) - 2, textAnchor: "end" }
              : { textAnchor: "middle" })}
            y={bottom + 14}
          >
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
