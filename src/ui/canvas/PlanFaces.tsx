/** Symbols and strips on the plan: below the size at which names can be read, and above the one of a speck. */
import { type ReactFlowState, useStore } from "@xyflow/react";
import { useApp } from "../../store/app.ts";
import { boxOf } from "./boxes.ts";
import { MOST_STRIPS } from "./detail.ts";
import { FrameStrips } from "./FrameStrips.tsx";
import { frameOf } from "./frames.ts";
import { PartSymbol } from "./PartSymbol.tsx";

/** A strip of 136 px is then 30 px wide on the screen: the services can still be told apart. */
const LEAST_ZOOM_OF_STRIPS = 0.22;
const SYMBOL_PX = { width: 45, height: 30 } as const;

const isNearEnough = ({ transform }: ReactFlowState) => transform[2] >= LEAST_ZOOM_OF_STRIPS;

export function PlanFaces() {
  const isNear = useStore(isNearEnough);
  const { design, records } = useApp((s) => s.evaluation);
  if (!isNear || design.parts.length > MOST_STRIPS) return null;
  return records.map((record) => {
    const { part, kind, options } = record;
    const box = boxOf(design, part);
    const frame = frameOf(design, part);
    if (frame.look === "pill") return null;
    const top = Math.min(box.height, ...frame.strips.map((strip) => strip.y));
    return (
      <g key={part.id} transform={`translate(${box.x} ${box.y})`}>
        <svg
          className="plan-symbol"
          x={(box.width - SYMBOL_PX.width) / 2}
          y={(top - SYMBOL_PX.height) / 2}
          {...SYMBOL_PX}
          aria-hidden="true"
        >
          <PartSymbol name={kind.symbol(options)} />
        </svg>
        <FrameStrips record={record} frame={frame} detail="small" />
      </g>
    );
  });
}
