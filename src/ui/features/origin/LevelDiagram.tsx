import { useMemo } from "react";
import { plural } from "../../../words/plural.ts";
import { decimal } from "../../kit/format.ts";
import { nearestColumn, shortened } from "./columns.ts";
import {
  type Bound,
  LEVEL_EDGE,
  type LevelDiagramShape,
  levelDiagramShape,
  levelPath,
} from "./levelDiagramShape.ts";
import type { LevelOrigin } from "./levelOrigin.ts";
import { rippleWords } from "./rippleWords.ts";

const BOUND_WORDS: Readonly<Record<Bound["name"], string>> = {
  most: "most",
  least: "least",
  noise: "noise at most",
};

/** What a walk adds: where one stands, where it goes wrong, and other carriers for comparison. */
export type WalkMarks = {
  readonly stop: number;
  readonly trouble: { readonly at: number; readonly kind: "lost" | "doubtful"; readonly mark: string } | null;
  readonly onStop: (stop: number) => void;
  /** Carriers that pass the same parts; `dash` tells them apart without colour. */
  readonly others: readonly Other[];
};

type Other = { readonly name: string; readonly dash: string; readonly levels: readonly number[] };

/** Level and noise from source to here, part by part; the figures at the bottom count the steps of the table. */
export function LevelDiagram({
  answer,
  width,
  height,
  walked,
}: {
  readonly answer: LevelOrigin;
  readonly width: number;
  readonly height: number;
  readonly walked?: WalkMarks;
}) {
  const others = walked?.others;
  const { x, y, bottom, nameLength, curves, bounds, allowed, ripple } = useMemo(
    () =>
      levelDiagramShape(answer, {
        width,
        height,
        further: others?.flatMap((o) => o.levels) ?? [],
        named: others !== undefined,
      }),
    [answer, width, height, others],
  );
  const { steps } = answer;
  const end = x(steps.length - 1) ?? 0;
  return (
    <svg
      className={walked ? "level-diagram walked" : "level-diagram"}
      width={width}
      height={height}
      role="img"
      aria-label={spoken(answer)}
      onPointerDown={
        walked &&
        ((event) => {
          const at = event.clientX - event.currentTarget.getBoundingClientRect().left;
          walked.onStop(nearestColumn(steps.length, (n) => Math.abs((x(n) ?? 0) - at)));
        })
      }
    >
      {walked ? (
        <rect
          className="here"
          x={(x(walked.stop) ?? 0) - 9}
          y={LEVEL_EDGE.top - 4}
          width={18}
          height={bottom - LEVEL_EDGE.top + 24}
          rx={4}
        />
      ) : null}
      {allowed === "" ? null : <path className="allowed" d={allowed} />}
      {ripple === "" ? null : (
        <path className="ripple" d={ripple}>
          <title>{rippleWords(answer)}</title>
        </path>
      )}
      <g className="axes">
        {y.ticks(Math.max(3, Math.round(height / 44))).map((dbuv) => (
          <g key={dbuv} transform={`translate(0 ${y(dbuv)})`}>
            <line x1={LEVEL_EDGE.left} x2={width - LEVEL_EDGE.right + 8} />
            <text x={LEVEL_EDGE.left - 6} dy="0.32em" textAnchor="end">
              {decimal(dbuv, 0)}
            </text>
          </g>
        ))}
        {steps.map((step, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place on the way.
          <g key={n} transform={`translate(${x(n)} 0)`}>
            <line y1={LEVEL_EDGE.top} y2={bottom} />
            <text y={bottom + 16} textAnchor="middle" className={walked?.stop === n ? "at-stop" : undefined}>
              {n + 1}
              <title>{step.label}</title>
            </text>
            {nameLength > 0 ? (
              <text
                y={bottom + 30}
                textAnchor="middle"
                className={walked?.stop === n ? "at-stop" : undefined}
              >
                {shortened(step.label, nameLength)}
              </text>
            ) : null}
          </g>
        ))}
        <text x={4} y={11}>
          dBµV
        </text>
      </g>
      {walked?.others.map((other) => (
        <path
          key={other.name}
          className="curve other"
          d={levelPath(other.levels, x, y)}
          strokeDasharray={other.dash}
        >
          <title>{other.name}</title>
        </path>
      ))}
      {curves.map((curve) => (
        <path key={curve.name} className={`curve ${curve.name}`} d={curve.path} />
      ))}
      {steps.map((step, n) =>
        Number.isFinite(step.levelDbuv) ? (
          <circle
            // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place on the way.
            key={n}
            className={step.cutHere ? "point gone" : "point"}
            cx={x(n)}
            cy={y(step.levelDbuv)}
            r={walked?.stop === n ? 5 : 3.5}
          >
            <title>{`${step.label}: ${decimal(step.levelDbuv)} dBµV`}</title>
          </circle>
        ) : null,
      )}
      {walked?.trouble ? (
        <g
          className={`trouble ${walked.trouble.kind}`}
          transform={`translate(${x(walked.trouble.at) ?? 0} ${troubleY(steps[walked.trouble.at]?.levelDbuv, y)})`}
        >
          <path d="M-6 -6L6 6M-6 6L6 -6" />
          <text y={-11} textAnchor="middle">
            {walked.trouble.mark}
          </text>
        </g>
      ) : null}
      {spreadLabels(
        bounds.map((b) => ({ ...b, y: y(b.dbuv) })),
        13,
      ).map(({ name, dbuv, y: at, labelAt }) => (
        <g key={name} className={`bound ${name}`}>
          <line x1={end - 10} x2={width - LEVEL_EDGE.right + 14} y1={at} y2={at} />
          <text x={width - LEVEL_EDGE.right + 18} y={labelAt} dy="0.32em">
            {decimal(dbuv, 0)} {BOUND_WORDS[name]}
          </text>
        </g>
      ))}
    </svg>
  );
}

/** At the level; where nothing is left of it, on the ground of the diagram. */
function troubleY(levelDbuv: number | undefined, y: LevelDiagramShape["y"]): number {
  const [low = 0] = y.domain();
  return levelDbuv !== undefined && Number.isFinite(levelDbuv) ? y(levelDbuv) : y(low) - 12;
}

/** Labels moved apart until none covers another. */
export function spreadLabels<T extends { readonly y: number }>(
  items: readonly T[],
  leastPx: number,
): (T & { labelAt: number })[] {
  let last = Number.NEGATIVE_INFINITY;
  return [...items]
    .sort((a, b) => a.y - b.y)
    .map((item) => {
      last = Math.max(item.y, last + leastPx);
      return { ...item, labelAt: last };
    });
}

function spoken({ steps }: LevelOrigin): string {
  const first = steps[0];
  const last = steps.at(-1);
  if (!first || !last) return "Level diagram";
  const [from, to] = [first, last].map((step) => `${decimal(step.levelDbuv)} dBµV`);
  return plural(steps.length, {
    one: `Level diagram: ${from} at ${first.label}; the table beside it gives the step.`,
    other: (n) =>
      `Level diagram: from ${from} at ${first.label} in ${n} steps to ${to}; the table beside it gives every step.`,
  });
}
