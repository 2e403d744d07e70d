import { useRef } from "react";
import { Separator } from "react-resizable-panels";
import styles from "./Divider.module.css";

type Props = {
  /** What it changes: "Width of the side pane". */
  readonly name: string;
  readonly orientation: "upright" | "level";
  /** A press that is no drag: the next of a few usual sizes, for whoever cannot drag. */
  readonly onPress: () => void;
};

/** A press that moves less than this is none to drag by [px]. */
const STILL_PX = 4;

/** The line between two panes: dragged, moved by the arrow keys, or pressed for the next usual size. */
export function Divider({ name, orientation, onPress }: Props) {
  const start = useRef<{ readonly x: number; readonly y: number } | null>(null);
  return (
    <Separator
      className={orientation === "upright" ? styles.upright : styles.level}
      aria-label={name}
      title={`${name}: drag it, press it for the next size, or use the arrow keys`}
      disableDoubleClick
      onPointerDown={({ clientX, clientY }) => {
        start.current = { x: clientX, y: clientY };
      }}
      onClick={({ clientX, clientY }) => {
        const from = start.current;
        if (from && Math.hypot(clientX - from.x, clientY - from.y) < STILL_PX) onPress();
      }}
    />
  );
}
