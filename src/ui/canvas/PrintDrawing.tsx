import { type Design, type Wire, wireId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { type FailingWays, failingWays } from "../../findings/failingWays.ts";
import type { Report, Verdict } from "../../findings/finding.ts";
import { resultWords } from "../../sentences/verdict.ts";
import { boxesOf, boxOf } from "./boxes.ts";
import { FrameStrips } from "./FrameStrips.tsx";
import { CARD_NAME_PX, type Frame, frameOf, NAME_SIZE_PX, TILE_NAME_PX } from "./frames.ts";
import { boundsOf } from "./layout.ts";
import { brokenLines, fittingName } from "./lettering.ts";
import { PartSymbol } from "./PartSymbol.tsx";
import { routePath } from "./route.ts";
import { routesOf } from "./routes.ts";
import { wireSummary } from "./wireSummary.ts";

const AIR_PX = 16;
const LINE_PX = 15;

type Props = { readonly evaluation: Evaluation; readonly report: Report };

/** The whole design as one drawing, cropped to its content: what the canvas shows, without its tools. */
export function PrintDrawing({ evaluation, report }: Props) {
  const { design } = evaluation;
  const bounds = boundsOf(boxesOf(design));
  if (!bounds) return null;
  const ways = failingWays(report, evaluation);
  const verdicts = new Map(report.verdicts.map((v) => [v.part, v]));
  const viewBox = [
    bounds.x - AIR_PX,
    bounds.y - AIR_PX,
    bounds.width + 2 * AIR_PX,
    bounds.height + 2 * AIR_PX,
  ].join(" ");
  return (
    <svg className="print-drawing" viewBox={viewBox} role="img" aria-label={design.title}>
      {design.wires.map((wire) => (
        <PrintWire key={wireId(wire)} {...{ wire, evaluation, ways }} />
      ))}
      {evaluation.records.map((record) => (
        <PrintPart
          key={record.part.id}
          record={record}
          design={design}
          verdict={verdicts.get(record.part.id)}
          isFailing={ways.parts.has(record.part.id)}
        />
      ))}
    </svg>
  );
}

type PartProps = {
  readonly record: PartRecord;
  readonly design: Design;
  readonly verdict: Verdict | undefined;
  readonly isFailing: boolean;
};

function PrintPart({ record, design, verdict, isFailing }: PartProps) {
  const { part, kind, options } = record;
  const { x, y, width, height } = boxOf(design, part);
  const frame = frameOf(design, part);
  return (
    <g transform={`translate(${x} ${y})`}>
      <rect
        className="print-card"
        data-look={frame.look}
        data-state={verdict?.idle ? "idle" : verdict?.state}
        data-failing={isFailing}
        width={width}
        height={height}
        rx={frame.look === "pill" ? height / 2 : 6}
      />
      {frame.look === "pill" ? (
        <text className="print-label" x={width / 2} y={height / 2 + 4.5} textAnchor="middle">
          {kind.onWire?.(options)}
        </text>
      ) : (
        <PrintHead record={record} frame={frame} verdict={verdict} />
      )}
      <FrameStrips record={record} frame={frame} detail="near" />
      {[...frame.ports].map(([port, at]) => (
        <circle key={port} className="print-port" cx={at.x} cy={at.y} r={3} />
      ))}
    </g>
  );
}

function PrintHead(props: Pick<PartProps, "record" | "verdict"> & { readonly frame: Frame }) {
  const { record, frame, verdict } = props;
  const { part, kind, options } = record;
  const isTile = frame.look === "tile";
  const room = { widthPx: isTile ? TILE_NAME_PX + 24 : CARD_NAME_PX, sizePx: NAME_SIZE_PX };
  const lines = brokenLines(fittingName(part.label, isTile ? frame.nameLines : 2, room), room);
  const left = isTile ? 9 : 41;
  const top = isTile ? 20 : lines.length > 1 ? 15 : 23;
  return (
    <>
      {!isTile && (
        <svg x={7} y={9} width={30} height={20} aria-hidden="true">
          <PartSymbol name={kind.symbol(options)} />
        </svg>
      )}
      {lines.map((line, n) => (
        <text key={line} className="print-label" x={left} y={top + n * LINE_PX}>
          {line}
        </text>
      ))}
      {isTile && verdict && (
        <text className="print-result" x={left} y={top + lines.length * LINE_PX}>
          {RESULT_SIGNS[verdict.idle ? "idle" : verdict.state]} {resultWords(verdict)}
        </text>
      )}
    </>
  );
}

/** Paper may be grey: what fails is told by its sign too. */
const RESULT_SIGNS: Readonly<Record<Verdict["state"] | "idle", string>> = {
  works: "✓",
  edge: "!",
  fails: "✗",
  idle: "–",
};

type WireProps = {
  readonly wire: Wire;
  readonly evaluation: Evaluation;
  readonly ways: FailingWays;
};

function PrintWire({ wire, evaluation, ways }: WireProps) {
  const { design, record } = evaluation;
  const source = record(wire.from[0]);
  const route = routesOf(design).get(wireId(wire));
  if (!source || !route) return null;
  const { colour } = wireSummary(evaluation.spectrum(wire));
  return (
    <g
      className="wire"
      data-medium={source.ports.find((p) => p.id === wire.from[1])?.medium ?? "coax"}
      data-failing={ways.wires.has(wireId(wire))}
    >
      <path
        className="wire-line"
        d={routePath(route.points)}
        style={colour === null ? {} : ({ "--carried": colour } as React.CSSProperties)}
      />
    </g>
  );
}
