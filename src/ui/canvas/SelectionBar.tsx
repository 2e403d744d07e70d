/** What can be done to the selection, within reach of a thumb; and what a joint that was begun waits for. */
import { Copy, Crosshair, SquarePlus, Trash2, X } from "lucide-react";
import { quoted } from "../../design/lookup.ts";
import { useApp } from "../../store/app.ts";
import { counted } from "../kit/format.ts";
import { barClass, CommandButton } from "./CanvasBar.tsx";
import { runCanvasCommand } from "./commands.ts";
import { useCanvas } from "./state.ts";

export function SelectionBar({ isDocked = false }: { readonly isDocked?: boolean }) {
  const selection = useApp((s) => s.selection);
  const isJoining = useApp((s) => s.connecting !== null);
  const parts = selection.parts.length;
  const wires = selection.wires.length;
  const isOverview = useCanvas((s) => s.showing === "overview");
  if (isOverview) return null;
  if (isJoining) return <JoiningBar />;
  if (parts + wires === 0) return null;
  return (
    <div className={barClass(isDocked)} role="toolbar" aria-label="Selection">
      <span className="canvas-bar-words">{wordsFor(parts, wires)}</span>
      {wires === 1 && parts === 0 && <CommandButton id="insert" icon={SquarePlus} />}
      {parts > 0 && <CommandButton id="duplicate" icon={Copy} />}
      <CommandButton id="look" icon={Crosshair} />
      <CommandButton id="delete" icon={Trash2} />
    </div>
  );
}

function wordsFor(parts: number, wires: number): string {
  const words = [];
  if (parts > 0) words.push(counted(parts, "part"));
  if (wires > 0) words.push(counted(wires, "wire"));
  return words.join(", ");
}

function JoiningBar() {
  const part = useApp((s) => (s.connecting ? s.evaluation.record(s.connecting[0])?.part : undefined));
  return (
    <div className="canvas-bar joining-bar" role="status">
      <span className="canvas-bar-words">
        Connecting {quoted(part)}: tap a marked port, a part, or an empty place for a new one
      </span>
      <button type="button" className="button bare" onClick={() => runCanvasCommand("select-none")}>
        <X size={16} aria-hidden /> Cancel
      </button>
    </div>
  );
}
