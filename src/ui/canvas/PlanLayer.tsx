/** The plan drawing in place of cards, under the canvas's own zoom, with what is selected marked on it. */
import { ViewportPortal } from "@xyflow/react";
import { useApp } from "../../store/app.ts";
import { boxOf } from "./boxes.ts";
import { useHighlight } from "./highlight.ts";
import { boxPath, PlanDrawing } from "./PlanDrawing.tsx";
import { PlanFaces } from "./PlanFaces.tsx";
import { PlanFailure } from "./PlanFailure.tsx";
import { useScreenPixel } from "./useScreenPixel.ts";

export function PlanLayer() {
  const style = useScreenPixel();
  const evaluation = useApp((s) => s.evaluation);
  const selection = useApp((s) => s.selection);
  const lit = useHighlight((parts) => parts);
  const outlined = (has: (id: string) => boolean) =>
    evaluation.design.parts
      .filter((p) => has(p.id))
      .map((p) => boxPath(boxOf(evaluation.design, p)))
      .join("");
  const selected = new Set(selection.parts);
  return (
    <ViewportPortal>
      <svg className="plan-layer" style={style} width={1} height={1} aria-hidden="true">
        <PlanDrawing evaluation={evaluation} />
        <PlanFaces />
        <PlanFailure />
        <path className="plan-lit" d={outlined((id) => lit.has(id))} />
        <path className="plan-selected" d={outlined((id) => selected.has(id))} />
      </svg>
    </ViewportPortal>
  );
}
