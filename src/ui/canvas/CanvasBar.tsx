/** Buttons for looking and arranging: in a row below the canvas, or floating in its corner where there is no row. */
import { BoxSelect, Cable, CirclePlus, Map as MapIcon, Maximize, Minus, Plus, Workflow } from "lucide-react";
import { useApp } from "../../store/app.ts";
import { shortcutWords } from "../kit/command.ts";
import { IconButton, type IconType } from "../kit/IconButton.tsx";
import { canvasCommand, runCanvasCommand } from "./commands.ts";
import { useCanvas } from "./state.ts";
import { ViewSwitch } from "./ViewSwitch.tsx";
import "./bars.css";

export function CanvasBar({ isDocked = false }: { readonly isDocked?: boolean }) {
  const mapOpen = useCanvas((s) => s.mapOpen);
  const selecting = useCanvas((s) => s.selecting);
  const isDrawing = useCanvas((s) => s.showing === "drawing");
  // Whatever a joint may be led to must not lie below a bar.
  const isJoining = useApp((s) => s.connecting !== null);
  const parts = useApp((s) => s.evaluation.design.parts.length);
  if (isJoining && !isDocked) return null;
  return (
    <div className={barClass(isDocked)} role="toolbar" aria-label="Canvas">
      <ViewButtons isEmpty={parts === 0} />
      <ViewSwitch />
      {isDrawing && (
        <>
          <CommandButton id="arrange" icon={Workflow} disabled={parts === 0} />
          <CommandButton id="add-connected" icon={CirclePlus} />
          <CommandButton id="join" icon={Cable} disabled={parts < 2} />
          <CommandButton id="select-many" icon={BoxSelect} pressed={selecting} disabled={parts === 0} />
          <CommandButton id="map" icon={MapIcon} pressed={mapOpen} disabled={parts === 0} />
        </>
      )}
    </div>
  );
}

/** Farther, nearer, all of it: of whichever diagram is on the screen. */
export function ViewButtons({ isEmpty = false }: { readonly isEmpty?: boolean }) {
  return (
    <>
      <CommandButton id="farther" icon={Minus} />
      <CommandButton id="nearer" icon={Plus} />
      <CommandButton id="fit" icon={Maximize} disabled={isEmpty} />
    </>
  );
}

/** Floating over the drawing, or docked in the row below it, where it covers nothing. */
export function barClass(isDocked: boolean): string {
  return isDocked ? "canvas-bar docked" : "canvas-bar";
}

export function CommandButton(props: {
  readonly id: string;
  readonly icon: IconType;
  readonly pressed?: boolean;
  readonly disabled?: boolean;
}) {
  const command = canvasCommand(props.id);
  if (!command) return null;
  return (
    <IconButton
      icon={props.icon}
      name={command.label}
      keys={shortcutWords(command)}
      onPress={() => runCanvasCommand(command.id)}
      disabled={props.disabled ?? false}
      {...(props.pressed === undefined ? {} : { pressed: props.pressed })}
    />
  );
}
