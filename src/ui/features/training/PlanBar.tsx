import { useReactFlow } from "@xyflow/react";
import { Maximize, ZoomIn, ZoomOut } from "lucide-react";
import { useEffect } from "react";
import type { Design } from "../../../design/design.ts";
import { partById } from "../../../design/lookup.ts";
import { usePractice } from "../../../store/trainingSession.ts";
import { boxOf } from "../../canvas/boxes.ts";
import { IconButton } from "../../kit/IconButton.tsx";

/** The view of the plan: nearer, farther, all of it. What is chosen from a list is brought into view. */
export function PlanBar({ plan }: { readonly plan: Design }) {
  const flow = useReactFlow();
  const at = usePractice((s) => s.place?.[0]);
  const suspect = usePractice((s) => s.suspect);
  useEffect(() => bringIntoView(flow, plan, at), [flow, plan, at]);
  useEffect(() => bringIntoView(flow, plan, suspect), [flow, plan, suspect]);
  return (
    <div className="plan-bar" role="toolbar" aria-label="View">
      <IconButton bordered icon={ZoomOut} name="Zoom out" onPress={() => void flow.zoomOut()} />
      <IconButton bordered icon={ZoomIn} name="Zoom in" onPress={() => void flow.zoomIn()} />
      <IconButton
        bordered
        icon={Maximize}
        name="Show the whole plan"
        onPress={() => void flow.fitView({ maxZoom: 1 })}
      />
    </div>
  );
}

/** Whoever can see it already should not lose their bearings. */
function bringIntoView(
  flow: ReturnType<typeof useReactFlow>,
  plan: Design,
  id: string | null | undefined,
): void {
  const part = id ? partById(plan, id) : undefined;
  const pane = document.querySelector(".practice-plan")?.getBoundingClientRect();
  if (!part || !pane) return;
  const box = boxOf(plan, part);
  const start = flow.flowToScreenPosition(box);
  const end = flow.flowToScreenPosition({ x: box.x + box.width, y: box.y + box.height });
  const isSeen = start.x >= pane.left && end.x <= pane.right && start.y >= pane.top && end.y <= pane.bottom;
  if (isSeen) return;
  void flow.setCenter(box.x + box.width / 2, box.y + box.height / 2, { zoom: flow.getZoom() });
}
