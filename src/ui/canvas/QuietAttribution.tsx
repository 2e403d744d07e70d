/**
 * The name of the canvas library stands in its corner, as its makers ask, but is no stop between drawing and tools: the
 * library has no option for that. The help names and links it for the keyboard.
 */
import { useStore } from "@xyflow/react";
import { useEffect } from "react";

export function QuietAttribution() {
  const canvas = useStore((s) => s.domNode);
  useEffect(() => {
    canvas?.querySelector(".react-flow__attribution a")?.setAttribute("tabindex", "-1");
  }, [canvas]);
  return null;
}
