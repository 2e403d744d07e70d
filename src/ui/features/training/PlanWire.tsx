import type { EdgeProps } from "@xyflow/react";
import { memo, useMemo } from "react";
import { partById, portsOf } from "../../../design/lookup.ts";
import { usePractice } from "../../../store/trainingSession.ts";
import { routePath } from "../../canvas/route.ts";
import { routesOf } from "../../canvas/routes.ts";
import { WireFace } from "../../canvas/WireFace.tsx";

/** A bare wire, with the meter drawn at the end where it hangs. */
export const PlanWire = memo(function PlanWire(props: EdgeProps) {
  const { id, source, target, sourceHandleId, targetHandleId, sourceX, sourceY, targetX, targetY } = props;
  const design = usePractice((s) => s.session?.opened.design);
  const hung = usePractice((s) => {
    if (s.place?.[0] === source && s.place[1] === sourceHandleId) return "from";
    return s.place?.[0] === target && s.place[1] === targetHandleId ? "to" : null;
  });
  const from = design && partById(design, source);
  const to = design && partById(design, target);
  const route = design && routesOf(design).get(id);
  const path = useMemo(() => (route ? routePath(route.points) : ""), [route]);
  const medium = from && portsOf(from).find((p) => p.id === sourceHandleId)?.medium;
  return (
    <WireFace
      id={id}
      words={`From ${from?.label ?? source} to ${to?.label ?? target}: connect the meter here`}
      path={path}
      medium={medium ?? "coax"}
      selected={props.selected ?? false}
    >
      {hung ? (
        <MeterMark
          x={hung === "from" ? sourceX + 24 : targetX - 24}
          y={hung === "from" ? sourceY : targetY}
        />
      ) : null}
    </WireFace>
  );
});

function MeterMark({ x, y }: { readonly x: number; readonly y: number }) {
  return (
    <g className="meter-mark" transform={`translate(${x} ${y})`}>
      <circle r={13} />
      <path d="M-7 4a7.5 7.5 0 0 1 14 0M0 4l4-6" />
    </g>
  );
}
