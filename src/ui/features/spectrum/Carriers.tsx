import type { ScaleLinear } from "d3-scale";
import { memo, useId } from "react";
import { bandLook } from "../../canvas/bandLook.ts";
import { bandSpans, type LevelScale, limitLines, MARGIN } from "./plot.ts";
import type { CarrierRow } from "./rows.ts";

type Props = {
  readonly rows: readonly CarrierRow[];
  readonly x: ScaleLinear<number, number>;
  readonly y: LevelScale;
  readonly width: number;
  readonly height: number;
};

const LABEL_LINE_PX = 14;
/** Narrower than this, a band's label would only cover its neighbours'. */
const LEAST_LABEL_PX = 14;

/** The carriers themselves: live ones filled, cut ones and other settings as outlines, hit ones hatched in red. */
export const Carriers = memo(function Carriers({ rows, x, y, width, height }: Props) {
  const id = useId();
  const bottom = height - MARGIN.bottom;
  const [lowest = 0, highest = 0] = y.domain();
  const seen = rows.filter((r) => {
    const at = x(r.hereMHz);
    return at > MARGIN.left - 40 && at < width - MARGIN.right + 40;
  });
  // Outlines first, so that what is there now lies over what could be.
  const ordered = [...seen].sort((a, b) => LAYER[a.state] - LAYER[b.state]);
  return (
    <g aria-hidden>
      <defs>
        <clipPath id={`${id}-clip`}>
          <rect
            x={MARGIN.left}
            y={0}
            width={Math.max(0, width - MARGIN.left - MARGIN.right)}
            height={bottom + 1}
          />
        </clipPath>
        <Hatch id={`${id}-hit`} className="hatch-hit" />
        <Hatch id={`${id}-touched`} className="hatch-touched" />
      </defs>
      <g clipPath={`url(#${id}-clip)`}>
        {ordered.map((row) => {
          const { left, right } = edges(row, x);
          const shape = outline({ left, right, top: y(row.level), bottom });
          const isCollided = row.state === "hit" || row.state === "touched";
          return (
            <g key={row.key}>
              <path d={shape} className={`mark ${row.state}`} style={{ color: bandLook(row.band).colour }} />
              {isCollided ? <path d={shape} fill={`url(#${id}-${row.state})`} /> : null}
            </g>
          );
        })}
        {seen
          // What is gone or not there now suffers from nothing.
          .filter((r) => r.state !== "idle" && r.state !== "cut")
          .map((row) => {
            const { left, right } = edges(row, x);
            return (
              <g key={row.key}>
                {Number.isFinite(row.noise) ? (
                  <line className="noise" x1={left} x2={right} y1={y(row.noise)} y2={y(row.noise)} />
                ) : null}
                {Number.isFinite(row.interference) ? (
                  <line
                    className="interference"
                    x1={left}
                    x2={right}
                    y1={y(row.interference)}
                    y2={y(row.interference)}
                  />
                ) : null}
              </g>
            );
          })}
        {limitLines(rows).flatMap((limit) =>
          [limit.minDbuv, limit.maxDbuv]
            // Held at the edge of the plot, a limit would seem to lie there.
            .filter((level) => level >= lowest && level <= highest)
            .map((level) => (
              <line
                key={`${limit.fromMHz} ${level}`}
                className="limit"
                x1={x(limit.fromMHz)}
                x2={x(limit.toMHz)}
                y1={y(level)}
                y2={y(level)}
              />
            )),
        )}
        {bandSpans(rows).map((span) => {
          const left = Math.max(x(span.fromMHz), MARGIN.left);
          const right = Math.min(x(span.toMHz), width - MARGIN.right);
          if (right <= left) return null;
          const top = MARGIN.top - 3 - span.line * LABEL_LINE_PX;
          const look = bandLook(span.band);
          return (
            <g
              key={`${span.band.origin.key} ${span.fromMHz} ${span.toMHz}`}
              className={span.isGone ? "band-label gone" : "band-label"}
              style={{ color: look.colour }}
            >
              <line x1={left} x2={right} y1={top} y2={top} />
              {right - left >= LEAST_LABEL_PX ? (
                <text x={(left + right) / 2} y={top - 2} textAnchor="middle">
                  {right - left > look.tag.length * 7 ? look.tag : look.shortTag}
                </text>
              ) : null}
            </g>
          );
        })}
      </g>
    </g>
  );
});

const LAYER: Readonly<Record<CarrierRow["state"], number>> = {
  idle: 0,
  cut: 1,
  live: 2,
  weak: 3,
  touched: 4,
  hit: 5,
};

/** At least a pixel and a half wide, so that an FM station on a wide axis can be seen at all. */
function edges(row: CarrierRow, x: Props["x"]): { readonly left: number; readonly right: number } {
  const left = x(row.hereMHz - row.widthMHz / 2);
  const right = x(row.hereMHz + row.widthMHz / 2);
  const lack = Math.max(0, 1.5 - (right - left)) / 2;
  return { left: left - lack, right: right + lack };
}

/** A carrier with slightly sloping flanks, as a meter draws it. */
function outline(o: { left: number; right: number; top: number; bottom: number }): string {
  const slope = Math.min(4, (o.right - o.left) / 6);
  return `M${o.left} ${o.bottom}L${o.left + slope} ${o.top}L${o.right - slope} ${o.top}L${o.right} ${o.bottom}`;
}

function Hatch({ id, className }: { readonly id: string; readonly className: string }) {
  return (
    <pattern id={id} className={className} width={6} height={6} patternUnits="userSpaceOnUse">
      <path d="M-1 1L1 -1M0 6L6 0M5 7L7 5" />
    </pattern>
  );
}
