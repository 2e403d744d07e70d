import type { Wire } from "../../../design/design.ts";
import { wireId } from "../../../design/design.ts";
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import { boxesOf, boxOf, portPoint } from "../../canvas/boxes.ts";
import { type Box, boundsOf } from "../../canvas/layout.ts";
import { PartSymbol } from "../../canvas/PartSymbol.tsx";
import { routePath, routeWire } from "../../canvas/route.ts";
import { Strip } from "../../canvas/Strip.tsx";
import { stripPlace } from "../../canvas/stripPlace.ts";

const AIR_PX = 16;

/** The whole design as one drawing, cropped to its content: what the canvas shows, without its tools. */
export function PrintDrawing({ evaluation }: { readonly evaluation: Evaluation }) {
  const { design } = evaluation;
  const boxes = boxesOf(design);
  const bounds = boundsOf(boxes);
  if (!bounds) return null;
  const viewBox = [
    bounds.x - AIR_PX,
    bounds.y - AIR_PX,
    bounds.width + 2 * AIR_PX,
    bounds.height + 2 * AIR_PX,
  ].join(" ");
  return (
    <svg className="print-drawing" viewBox={viewBox} role="img" aria-label={design.title}>
      {design.wires.map((wire) => (
        <PrintWire key={wireId(wire)} wire={wire} evaluation={evaluation} boxes={boxes} />
      ))}
      {evaluation.records.map(({ part, kind, options, ports }) => {
        const { x, y, width, height } = boxOf(part);
        return (
          <g key={part.id} transform={`translate(${x} ${y})`}>
            <rect className="print-card" width={width} height={height} rx={6} />
            <svg x={6} y={8} width={40} height={32} aria-hidden="true">
              <PartSymbol name={kind.symbol(options)} />
            </svg>
            <text className="print-label" x={52} y={22}>
              {shortened(part.label, 20)}
            </text>
            <text className="print-caption" x={52} y={37}>
              {shortened(kind.caption(options), 24)}
            </text>
            {ports.map((port) => {
              const at = portPoint(part, port.id);
              return at ? (
                <circle key={port.id} className="print-port" cx={at.x - x} cy={at.y - y} r={3} />
              ) : null;
            })}
          </g>
        );
      })}
    </svg>
  );
}

function PrintWire({
  wire,
  evaluation,
  boxes,
}: {
  readonly wire: Wire;
  readonly evaluation: Evaluation;
  readonly boxes: readonly Box[];
}) {
  const source = evaluation.record(wire.from[0]);
  const target = evaluation.record(wire.to[0]);
  const from = source && portPoint(source.part, wire.from[1]);
  const to = target && portPoint(target.part, wire.to[1]);
  if (!source || !from || !to) return null;
  const outputs = source.ports.filter((p) => p.side === "out");
  const index = Math.max(
    0,
    outputs.findIndex((p) => p.id === wire.from[1]),
  );
  const route = routeWire({ from, to, lane: { index, count: outputs.length }, boxes });
  const place = stripPlace(route);
  const medium = outputs[index]?.medium ?? "coax";
  return (
    <g className="wire" data-medium={medium}>
      <path className="wire-line" d={routePath(route.points)} />
      <g transform={`translate(${place.x} ${place.y})`}>
        <Strip spectrum={evaluation.spectrum(wire)} medium={medium} width={place.width} detail="near" />
      </g>
    </g>
  );
}

function shortened(text: string, length: number): string {
  return text.length > length ? `${text.slice(0, length - 1)}…` : text;
}
