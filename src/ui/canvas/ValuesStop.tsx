/** Right after the one card that is selected, for whoever goes by the Tab key: on to its values. Seen with the focus alone. */
import { type ReactFlowState, useStore } from "@xyflow/react";
import type { KeyboardEvent } from "react";
import { useApp } from "../../store/app.ts";
import { spokenKeys } from "../kit/command.ts";
import { Keys } from "../kit/Keys.tsx";
import { canvasCommand, runCanvasCommand } from "./commands.ts";

const EDIT_VALUES = "edit-values";
const zoomOf = (s: ReactFlowState) => s.transform[2];

export function ValuesStop() {
  const isAlone = useApp(({ selection }) => selection.parts.length + selection.wires.length === 1);
  // As large on the screen from near and from afar.
  const zoom = useStore(zoomOf);
  const command = canvasCommand(EDIT_VALUES);
  if (!isAlone || !command) return null;
  return (
    <button
      type="button"
      className="values-stop"
      style={{ transform: `scale(${1 / zoom})` }}
      aria-keyshortcuts={spokenKeys(command)}
      onKeyDown={onKey}
      onClick={() => runCanvasCommand(EDIT_VALUES)}
    >
      {command.label}
      <Keys command={command} />
    </button>
  );
}

/** Here keys are the button’s; the card would take them for its own. */
function onKey(event: KeyboardEvent<HTMLElement>): void {
  if (!["Enter", " ", "Escape"].includes(event.key) || event.altKey) return;
  event.stopPropagation();
  if (event.key === "Escape") event.currentTarget.closest<HTMLElement>(".react-flow__node")?.focus();
}
