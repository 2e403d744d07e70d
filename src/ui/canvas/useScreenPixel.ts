import { type ReactFlowState, useStore } from "@xyflow/react";
import type { CSSProperties } from "react";

const zoomOf = (s: ReactFlowState) => s.transform[2];

/** Lines keep their width on the screen: what one pixel there is here, as `--screen-px` for the style sheet. */
export function useScreenPixel(): CSSProperties {
  const zoom = useStore(zoomOf);
  // The type of styles knows no custom properties, the browser does.
  return { "--screen-px": `${1 / zoom}px` } as CSSProperties;
}
