/** A port on the edge of a part: a small dot to see, a large field to hit. */
import { Handle, Position } from "@xyflow/react";
import { memo } from "react";
import type { Port } from "../../parts/contract.ts";
import type { Point } from "./layout.ts";

export type PortHandleProps = {
  readonly port: Port;
  readonly at: Point;
  /** What a screen reader and a tooltip say. */
  readonly name: string;
  readonly joined: boolean;
  /** "start": a wire is being drawn from here; "target": it could end here; "unfit": it could not. */
  readonly role: "idle" | "start" | "target" | "unfit";
  /** Whether its own label stands beside it. */
  readonly labelled: boolean;
  readonly pressed?: boolean;
  readonly onTap: () => void;
};

export const PortHandle = memo(function PortHandle(props: PortHandleProps) {
  const { port, at, name, joined, role, labelled, pressed, onTap } = props;
  const isInput = port.side === "in";
  return (
    <>
      <Handle
        id={port.id}
        type={isInput ? "target" : "source"}
        position={isInput ? Position.Left : Position.Right}
        // The gestures at it are our own.
        isConnectable={false}
        style={{ top: at.y }}
        className="port"
        data-medium={port.medium}
        data-joined={joined}
        data-role={role}
        role="button"
        aria-label={name}
        title={name}
        {...(pressed === undefined ? {} : { "aria-pressed": pressed })}
        onClick={(event) => {
          event.stopPropagation();
          onTap();
        }}
      />
      {labelled && (
        <span className="port-label" data-side={port.side} style={{ top: at.y }} aria-hidden="true">
          {port.label}
        </span>
      )}
    </>
  );
});
