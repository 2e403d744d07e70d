/**
 * A wire with its strip. Each wire watches its own spectrum only, so a change redraws the wires it reaches
 * and no others. From afar it is another, much simpler component: hiding a strip would save nothing.
 */
import type { EdgeProps } from "@xyflow/react";
import { memo, useMemo } from "react";
import { useApp } from "../../store/app.ts";
import { useRecord, useSpectrum } from "../../store/hooks.ts";
import { useIsWireHighlighted } from "../features/walk/highlight.ts";
import { boxesOf } from "./boxes.ts";
import { type Route, routePath, routeWire } from "./route.ts";
import { STRIP_HEIGHT_PX, Strip } from "./Strip.tsx";
import { useCanvas } from "./state.ts";
import { stripPlace } from "./stripPlace.ts";
import { type WireSummary, wireSummary } from "./wireSummary.ts";
import { spectrumWords } from "./words.ts";

export const CanvasWire = memo(function CanvasWire(props: EdgeProps) {
  const { id, source, target, selected } = props;
  const detail = useCanvas((s) => s.detail);
  const dropping = useCanvas((s) => s.dropWire === id);
  const isLit = useIsWireHighlighted(id);
  const spectrum = useSpectrum(id);
  const from = useRecord(source);
  const to = useRecord(target);
  const route = useRoute(props, from?.ports);
  if (!from || !to) return null;

  const port = from.ports.find((p) => p.id === props.sourceHandleId);
  const medium = port?.medium ?? "coax";
  const path = routePath(route.points);
  const summary = wireSummary(spectrum);
  const isLine = detail === "far" || detail === "plan";
  const ends = `From ${from.part.label} to ${to.part.label}`;
  return (
    <g
      className="wire"
      data-medium={medium}
      data-worst={summary.worst}
      data-selected={selected ?? false}
      data-drop={dropping}
      data-walk={isLit}
    >
      <title id={`wire-${id}-words`}>{isLine ? ends : `${ends}: ${spectrumWords(spectrum)}`}</title>
      {isLit && <path className="wire-lit" d={path} />}
      <path className="wire-reach" d={path} />
      {isLine ? (
        <FarWire path={path} route={route} summary={summary} />
      ) : (
        <>
          <path className="wire-line" d={path} />
          <PlacedStrip route={route} worst={summary.worst} isSmall={detail === "small"}>
            {(width) => <Strip spectrum={spectrum} medium={medium} width={width} detail={detail} />}
          </PlacedStrip>
        </>
      )}
    </g>
  );
});

function useRoute(props: EdgeProps, ports: readonly { id: string; side: string }[] | undefined): Route {
  const { sourceX, sourceY, targetX, targetY, sourceHandleId } = props;
  // The same array until a card moves for good: while one is dragged, only its own wires look for a way.
  const boxes = useApp((s) => boxesOf(s.evaluation.design));
  return useMemo(() => {
    const outputs = ports?.filter((p) => p.side === "out") ?? [];
    const index = Math.max(
      0,
      outputs.findIndex((p) => p.id === sourceHandleId),
    );
    return routeWire({
      from: { x: sourceX, y: sourceY },
      to: { x: targetX, y: targetY },
      lane: { index, count: outputs.length },
      boxes,
    });
  }, [sourceX, sourceY, targetX, targetY, sourceHandleId, ports, boxes]);
}

function PlacedStrip(props: {
  readonly route: Route;
  readonly worst: WireSummary["worst"];
  readonly isSmall: boolean;
  readonly children: (width: number) => React.ReactNode;
}) {
  const place = stripPlace(props.route);
  return (
    <g className="strip" transform={`translate(${place.x} ${place.y})`}>
      {props.children(place.width)}
      {props.worst !== "clear" && (
        <WarningMark x={place.width} y={0} worst={props.worst} radius={props.isSmall ? 13 : 6.5} />
      )}
    </g>
  );
}

function FarWire(props: { readonly path: string; readonly route: Route; readonly summary: WireSummary }) {
  const { colour, worst } = props.summary;
  const place = stripPlace(props.route);
  return (
    <>
      <path
        className="wire-line wire-far"
        d={props.path}
        style={{ stroke: colour ?? "var(--line-strong)" }}
        data-silent={colour === null}
      />
      {worst !== "clear" && (
        <WarningMark
          x={place.x + place.width / 2}
          y={place.y + STRIP_HEIGHT_PX / 2}
          worst={worst}
          radius={16}
        />
      )}
    </>
  );
}

/** A cross in red for carriers lost, a stroke in amber for margin lost: told apart by shape too. */
function WarningMark(props: {
  readonly x: number;
  readonly y: number;
  readonly worst: "touched" | "hit";
  readonly radius: number;
}) {
  const r = props.radius;
  const arm = r * 0.42;
  return (
    <g className="wire-mark" data-worst={props.worst} transform={`translate(${props.x} ${props.y})`}>
      <circle r={r} />
      <path
        d={
          props.worst === "hit"
            ? `M${-arm} ${-arm}L${arm} ${arm}M${-arm} ${arm}L${arm} ${-arm}`
            : `M0 ${-arm * 1.3}V${arm * 0.3}M0 ${arm * 1.2}V${arm * 1.3}`
        }
        strokeWidth={r * 0.3}
      />
    </g>
  );
}
