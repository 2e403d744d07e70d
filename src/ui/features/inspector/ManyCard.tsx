import { AlignStartHorizontal, AlignStartVertical, Columns3, Copy, Rows3, Trash2 } from "lucide-react";
import type { Design } from "../../../design/design.ts";
import { align, distribute } from "../../../design/edits/arrange.ts";
import type { Edit } from "../../../design/edits/edit.ts";
import { useApp } from "../../../store/app.ts";
import { deleteSelection, duplicateSelection } from "../../canvas/selectionEdits.ts";
import { counted } from "../../kit/format.ts";
import { ManyFields } from "./ManyFields.tsx";
import { MoveButtons } from "./MoveButtons.tsx";

/** Several parts or wires at once: how many, and what can be done to all of them. */
export function ManyCard({
  parts,
  wires,
}: {
  readonly parts: readonly string[];
  readonly wires: readonly string[];
}) {
  const ids = new Set(parts);
  const apply = (edit: (design: Design) => Edit) => {
    const { design, change } = useApp.getState();
    change(edit(design));
  };
  return (
    <div className="inspector">
      <h2>
        {[
          parts.length > 0 ? counted(parts.length, "part") : "",
          wires.length > 0 ? counted(wires.length, "wire") : "",
        ]
          .filter((words) => words !== "")
          .join(" and ")}{" "}
        selected
      </h2>
      {parts.length > 1 ? (
        <div className="button-row">
          <button type="button" className="button" onClick={() => apply((d) => align(d, ids, "left"))}>
            <AlignStartVertical size={16} aria-hidden /> Align left
          </button>
          <button type="button" className="button" onClick={() => apply((d) => align(d, ids, "top"))}>
            <AlignStartHorizontal size={16} aria-hidden /> Align top
          </button>
          <button
            type="button"
            className="button"
            disabled={parts.length < 3}
            onClick={() => apply((d) => distribute(d, ids, "across"))}
          >
            <Columns3 size={16} aria-hidden /> Space across
          </button>
          <button
            type="button"
            className="button"
            disabled={parts.length < 3}
            onClick={() => apply((d) => distribute(d, ids, "down"))}
          >
            <Rows3 size={16} aria-hidden /> Space down
          </button>
        </div>
      ) : null}
      {parts.length > 0 ? <MoveButtons /> : null}
      <div className="button-row">
        <button type="button" className="button" disabled={parts.length === 0} onClick={duplicateSelection}>
          <Copy size={16} aria-hidden /> Duplicate
        </button>
        <button type="button" className="button danger" onClick={deleteSelection}>
          <Trash2 size={16} aria-hidden /> Delete
        </button>
      </div>
      <ManyFields parts={parts} />
    </div>
  );
}
