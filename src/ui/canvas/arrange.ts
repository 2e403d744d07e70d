/**
 * Lays out a design, or what of it is selected, from the roof to the sockets. The layout library is fetched when first
 * asked for and works beside the page: a thousand parts take it seconds.
 */
import type { ELK } from "elkjs/lib/elk-api.js";
import { moveParts } from "../../design/edits/parts.ts";
import { useApp } from "../../store/app.ts";
import { layoutWorker } from "../../store/workers.ts";
import { arranged, arrangedAmong, arrangedAround, type Places } from "./arrangement.ts";
import { canvasView } from "./view.ts";

/** Arranges the open design as one undo step and shows it. */
export async function arrange(): Promise<void> {
  const { design } = useApp.getState();
  if (await movedTo((elk) => arranged(design, elk))) canvasView()?.fit();
}

/** Arranges the selected parts as one undo step, where they are; all others stay. */
export async function arrangeSelected(): Promise<void> {
  const { design, selection } = useApp.getState();
  await movedTo((elk) => arrangedAmong(design, new Set(selection.parts), elk));
}

/** Arranges everything but the selected parts, which stay where they were put by hand, as one undo step and shows it. */
export async function arrangeRest(): Promise<void> {
  const { design, selection } = useApp.getState();
  if (await movedTo((elk) => arrangedAround(design, new Set(selection.parts), elk))) canvasView()?.fit();
}

async function movedTo(placesBy: (elk: Pick<ELK, "layout">) => Promise<Places>): Promise<boolean> {
  const { opened } = useApp.getState();
  try {
    const places = await beside(placesBy);
    const { design, change, opened: openedNow } = useApp.getState();
    // Another design has been opened meanwhile: its parts may bear the same names.
    if (openedNow !== opened) return false;
    return change(moveParts(design, places));
  } catch {
    const { notify } = useApp.getState();
    notify("The arrangement could not be calculated. Everything stays where it was.", "error");
    return false;
  }
}

async function beside(placesBy: (elk: Pick<ELK, "layout">) => Promise<Places>): Promise<Places> {
  const { default: Elk } = await import("elkjs/lib/elk-api.js");
  const elk = new Elk({ workerFactory: layoutWorker });
  try {
    return await placesBy(elk);
  } finally {
    elk.terminateWorker();
  }
}
