/** Ways of looking at whichever diagram is on the screen. */
import type { Command } from "../kit/command.ts";
import { shownView } from "./view.ts";

const ZOOM_STEP = 1.3;

export const VIEW_COMMANDS: readonly Command[] = [
  {
    id: "fit",
    label: "Show everything",
    group: "View",
    shortcuts: ["f"],
    run: () => shownView()?.fit(),
    enabled: () => shownView()?.hasParts() ?? false,
  },
  {
    id: "nearer",
    label: "Zoom in",
    group: "View",
    shortcuts: ["+", "Shift++", "="],
    run: () => shownView()?.zoomBy(ZOOM_STEP),
    enabled: () => true,
  },
  {
    id: "farther",
    label: "Zoom out",
    group: "View",
    shortcuts: ["-"],
    run: () => shownView()?.zoomBy(1 / ZOOM_STEP),
    enabled: () => true,
  },
];
