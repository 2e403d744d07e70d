/**
 * Lays a whole design out from the roof to the sockets. The layout library is fetched when first asked for
 * and works beside the page: a thousand parts take it seconds.
 */
import type { Design } from "../../design/design.ts";
import { moveParts } from "../../design/edits/parts.ts";
import { useApp } from "../../store/app.ts";
import { layoutWorker } from "../../store/workers.ts";
import { arranged, type Places } from "./arrangement.ts";
import { canvasView } from "./view.ts";

/** Arranges the open design as one undo step and shows it. */
export async function arrange(): Promise<void> {
  const { design, notify } = useApp.getState();
  try {
    const places = await arrangedBeside(design);
    const { design: now, change } = useApp.getState();
    if (change(moveParts(now, places))) canvasView()?.fit();
  } catch {
    notify("The arrangement could not be calculated. Everything stays where it was.", "error");
  }
}

async function arrangedBeside(design: Design): Promise<Places> {
  const { default: Elk } = await import("elkjs/lib/elk-api.js");
  const elk = new Elk({ workerFactory: layoutWorker });
  try {
    return await arranged(design, elk);
  } finally {
    elk.terminateWorker();
  }
}
