/** Lines of an overview in the colour of what they carry; a failing one in red and broad. */
import { memo } from "react";
import { useApp } from "../../../store/app.ts";
import { useIsFailingWire, useSpectrum } from "../../../store/hooks.ts";
import { useAreWiresHighlighted } from "../highlight.ts";
import type { Box, Point, Size } from "../layout.ts";
import { routePath } from "../route.ts";
import { wireSummary } from "../wireSummary.ts";
import type { Link } from "./skeleton.ts";

export type DrawnLink = { readonly link: Link; readonly points: readonly Point[]; readonly pill?: Box };

export function Links({ lines, width, height }: Size & { readonly lines: readonly DrawnLink[] }) {
  return (
    <svg className="overview-lines" width={width} height={height} aria-hidden="true">
      {lines.map((line) => (
        <OneLink key={`${line.link.from} ${line.link.fromPort} ${line.link.to}`} {...line} />
      ))}
    </svg>
  );
}

const OneLink = memo(function OneLink({ link, points, pill }: DrawnLink) {
  const [first = ""] = link.wires;
  const { colour } = wireSummary(useSpectrum(first));
  const isFailing = useIsFailingWire(link.wires.at(-1) ?? first);
  const isSky = useApp((s) => {
    const record = s.evaluation.record(link.from);
    return record?.ports.find((port) => port.id === link.fromPort)?.medium === "sky";
  });
  const isWalked = useAreWiresHighlighted(link.wires);
  const path = routePath(points);
  return (
    <g
      className="wire"
      data-failing={isFailing}
      data-silent={colour === null}
      data-walk={isWalked}
      data-medium={isSky ? "sky" : "coax"}
    >
      {isFailing && <path className="wire-halo" d={path} />}
      {isWalked && <path className="wire-lit" d={path} />}
      <path
        className="wire-line"
        d={path}
        style={isFailing || colour === null ? {} : ({ "--carried": colour } as React.CSSProperties)}
      />
      {pill && (
        <>
          <rect className="overview-pill" {...pill} rx={pill.height / 2} />
          <text
            className="overview-pill-words"
            x={pill.x + pill.width / 2}
            y={pill.y + pill.height / 2 + 4.2}
          >
            {Math.round(link.cableM)} m
          </text>
        </>
      )}
    </g>
  );
});
