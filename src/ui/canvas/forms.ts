/** Small forms that open on a part: its name, and length and grade of a cable. */
import { partById } from "../../design/lookup.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { useApp } from "../../store/app.ts";
import { reveal } from "./adding.ts";
import { cableOffer, openOffer } from "./offer.ts";
import { boxIn } from "./rooms.ts";
import { canvasView } from "./view.ts";

/** Beside the one part that is selected. */
export function openFormAt(about: "name" | "length"): void {
  const { design, selection } = useApp.getState();
  const [part] = selection.parts;
  const box = part === undefined ? undefined : boxIn(design, part);
  const view = canvasView();
  if (part === undefined || !box || !view) return;
  reveal([part]);
  openOffer(
    about === "length" ? cableOffer(part) : { about, part },
    view.toWindow({ x: box.x + box.width, y: box.y }),
  );
}

/** Whether one part is selected, and has a length. */
export function isCableSelected(): boolean {
  const { design, selection, preview } = useApp.getState();
  const [id] = selection.parts;
  const part = id === undefined ? undefined : partById(design, id);
  const kind = part && kindOf(part.kind);
  return (
    selection.parts.length === 1 &&
    !preview &&
    kind !== undefined &&
    optionMeaning(kind, "length") !== undefined
  );
}
