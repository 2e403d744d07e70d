/**
 * A wire in the colour of what it carries; in red and broad where a failure runs along it. Its strip is docked to the
 * card where it begins. A wire that begins at a pill, or at a part with too many outputs for strips, has its own,
 * which opens under the pointer, with the focus, when selected, and from near.
 */
import { type EdgeProps, ViewportPortal } from "@xyflow/react";
import { memo, useMemo } from "react";
import type { Medium } from "../../parts/contract.ts";
import type { Spectrum } from "../../signal/band.ts";
import { useApp } from "../../store/app.ts";
import { useIsFailingWire, useRecord, useSpectrum } from "../../store/hooks.ts";
import { boxesOf } from "./boxes.ts";
import { docksAtOutputs, frameOf, STRIP } from "./frames.ts";
import { useIsWireHighlighted } from "./highlight.ts";
import type { Point } from "./layout.ts";
import { isBetween, type Route, routePath, routeWire } from "./route.ts";
import { routesOf } from "./routes.ts";
import { Strip } from "./Strip.tsx";
import { useCanvas, useCardDetail } from "./state.ts";
import { WireFace } from "./WireFace.tsx";
import { type WireSummary, wireSummary } from "./wireSummary.ts";
import { wireWords } from "./words.ts";

export const CanvasWire = memo(function CanvasWire(props: EdgeProps) {
  const { id, source, target, selected = false } = props;
  const dropping = useCanvas((s) => s.dropWire === id);
  const isLit = useIsWireHighlighted(id);
  const isFailing = useIsFailingWire(id);
  const spectrum = useSpectrum(id);
  const from = useRecord(source);
  const to = useRecord(target);
  const route = useRoute(props);
  const isOpen = useIsStripOpen(id, { source, target, selected });
  if (!from || !to) return null;

  const port = from.ports.find((p) => p.id === props.sourceHandleId);
  const medium = port?.medium ?? "coax";
  const path = routePath(route.points);
  const { colour, worst } = wireSummary(spectrum);
  return (
    <WireFace
      id={id}
      words={wireWords(from.part, to.part, spectrum)}
      path={path}
      medium={medium}
      selected={selected}
      carried={{ worst, colour, isFailing }}
      isDropTarget={dropping}
      isLit={isLit}
    >
      {isOpen && <OpenStrip at={stripCorner(route)} {...{ spectrum, medium, worst, selected }} />}
    </WireFace>
  );
});

/** The settled route; while a card at one of its ends is dragged, a quick one to where that is. */
function useRoute({ id, source, sourceX, sourceY, target, targetX, targetY }: EdgeProps): Route {
  // The same object until a card moves for good: while one is dragged, only its own wires look for a way.
  const settled = useApp((s) => routesOf(s.evaluation.design).get(id));
  const boxes = useApp((s) => boxesOf(s.evaluation.design));
  return useMemo(() => {
    const from = { x: sourceX, y: sourceY };
    const to = { x: targetX, y: targetY };
    if (settled && isBetween(settled, from, to)) return settled;
    return routeWire({
      from,
      to,
      boxes: useApp
        .getState()
        .evaluation.design.parts.flatMap((part, i) =>
          part.id === source || part.id === target ? [] : (boxes[i] ?? []),
        ),
    });
  }, [settled, boxes, source, sourceX, sourceY, target, targetX, targetY]);
}

type Ends = { readonly source: string; readonly target: string; readonly selected: boolean };

/** Whether a wire without a docked strip shows its own now. */
function useIsStripOpen(id: string, { source, target, selected }: Ends): boolean {
  const hasNone = useApp((s) => {
    const { design, record } = s.evaluation;
    const from = record(source)?.part;
    const to = record(target)?.part;
    if (!from || !to || docksAtOutputs(from)) return false;
    // A receiver shows what arrives on its own tile.
    return frameOf(design, to).strips.every((strip) => strip.side !== "in");
  });
  const isNear = useCanvas((s) => hasNone && (s.detail === "close" || s.near === id || s.near === source));
  return hasNone && (isNear || selected);
}

/** Just below the beginning of the wire, and of the pill it begins at. */
function stripCorner({ points }: Route): Point {
  const [first] = points;
  return { x: (first?.x ?? 0) - STRIP.width / 2 - 28, y: (first?.y ?? 0) + 18 };
}

type OpenStripProps = {
  readonly at: Point;
  readonly spectrum: Spectrum;
  readonly medium: Medium;
  readonly worst: WireSummary["worst"];
  readonly selected: boolean;
};

function OpenStrip({ at, spectrum, medium, worst, selected }: OpenStripProps) {
  const detail = useCardDetail();
  return (
    <ViewportPortal>
      <svg
        className="strip open-strip"
        style={{ left: at.x, top: at.y }}
        width={STRIP.width}
        height={STRIP.height}
        data-worst={worst}
        data-selected={selected}
        aria-hidden="true"
      >
        <Strip spectrum={spectrum} medium={medium} {...STRIP} detail={detail} />
      </svg>
    </ViewportPortal>
  );
}
