import { useMemo } from "react";
import type { SupplyStep } from "../../../findings/walk/supply.ts";
import { decimal } from "../../kit/format.ts";
import { nearestColumn, shortened } from "../origin/columns.ts";
import { spreadLabels } from "../origin/LevelDiagram.tsx";
import type { WalkStop, WalkTrouble } from "./stops.ts";
import { SUPPLY_EDGE as EDGE, supplyDiagram, type VoltsBound } from "./supplyDiagram.ts";

const BOUND_WORDS: Readonly<Record<VoltsBound["name"], string>> = {
  switch: "H above",
  needs: "needs",
};

type Props = {
  readonly branch: readonly SupplyStep[];
  readonly stops: readonly WalkStop[];
  readonly bounds: readonly VoltsBound[];
  readonly stop: number;
  readonly trouble: WalkTrouble | null;
  readonly width: number;
  readonly height: number;
  readonly onStop?: (stop: number) => void;
};

/** What is left of the voltage at every part, from the receiver at the right up to the roof at the left. */
export function SupplyDiagram({ branch, stops, bounds, stop, trouble, width, height, onStop }: Props) {
  const { x, y, bottom, nameLength, curves } = useMemo(
    () => supplyDiagram(branch, bounds, { width, height }),
    [branch, bounds, width, height],
  );
  const first = branch[0];
  const last = branch.at(-1);
  return (
    <svg
      className={onStop ? "level-diagram walked" : "level-diagram"}
      width={width}
      height={height}
      role="img"
      aria-label={`Voltage diagram: ${decimal(first?.volts18)} V put on the cable, ${decimal(last?.volts18)} V at the end for a horizontal request; the table beside it gives every step.`}
      onPointerDown={
        onStop &&
        ((event) => {
          const at = event.clientX - event.currentTarget.getBoundingClientRect().left;
          onStop(nearestColumn(branch.length, (n) => Math.abs((x(n) ?? 0) - at)));
        })
      }
    >
      {onStop ? (
        <rect
          className="here"
          x={(x(stop) ?? 0) - 9}
          y={EDGE.top - 4}
          width={18}
          height={bottom - EDGE.top + 24}
          rx={4}
        />
      ) : null}
      <g className="axes">
        {y.ticks(Math.max(3, Math.round(height / 44))).map((volts) => (
          <g key={volts} transform={`translate(0 ${y(volts)})`}>
            <line x1={EDGE.left - 8} x2={width - EDGE.right} />
            <text x={width - EDGE.right + 6} dy="0.32em">
              {decimal(volts, 0)}
            </text>
          </g>
        ))}
        {stops.map(({ label }, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place on the way.
          <g key={n} transform={`translate(${x(n)} 0)`}>
            <line y1={EDGE.top} y2={bottom} />
            <text y={bottom + 16} textAnchor="middle" className={stop === n ? "at-stop" : undefined}>
              {n + 1}
              <title>{label}</title>
            </text>
            {nameLength > 0 ? (
              <text y={bottom + 30} textAnchor="middle" className={stop === n ? "at-stop" : undefined}>
                {shortened(label, nameLength)}
              </text>
            ) : null}
          </g>
        ))}
        <text x={width - EDGE.right + 6} y={11}>
          V
        </text>
      </g>
      {curves.map(({ name, path }) => (
        <path key={name} className={`curve volts ${name}`} d={path} />
      ))}
      {branch.map((step, n) => (
        <circle
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place on the way.
          key={n}
          className="point"
          cx={x(n)}
          cy={y(step.volts)}
          r={stop === n ? 5 : 3.5}
        >
          <title>{`${decimal(step.volts)} V now`}</title>
        </circle>
      ))}
      {spreadLabels(
        bounds.map((b) => ({ ...b, y: y(b.volts) })),
        13,
      ).map((bound) => (
        <g key={`${bound.name} ${bound.at}`} className={`bound ${bound.name}`}>
          <line x1={(x(bound.at) ?? 0) - 12} x2={(x(bound.at) ?? 0) + 12} y1={bound.y} y2={bound.y} />
          <text x={(x(bound.at) ?? 0) - 16} y={bound.labelAt} dy="0.32em" textAnchor="end">
            {BOUND_WORDS[bound.name]} {decimal(bound.volts)} V
          </text>
        </g>
      ))}
      {trouble ? (
        <g
          className={`trouble ${trouble.kind}`}
          transform={`translate(${x(trouble.at) ?? 0} ${y(branch[trouble.at]?.volts18 ?? 0)})`}
        >
          <path d="M-6 -6L6 6M-6 6L6 -6" />
          <text y={-11} textAnchor="middle">
            {trouble.mark}
          </text>
        </g>
      ) : null}
    </svg>
  );
}
