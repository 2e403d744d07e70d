import { Handle, type NodeProps, Position } from "@xyflow/react";
import { memo } from "react";
import { partById, portsOf } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import type { Port } from "../../../parts/contract.ts";
import { isClosed } from "../../../remedies/training/progress.ts";
import { progressOf, useTraining } from "../../../store/training.ts";
import { usePractice } from "../../../store/trainingSession.ts";
import { hasRows, portPlaces } from "../../canvas/layout.ts";
import { PartSymbol } from "../../canvas/PartSymbol.tsx";
import { connectMeter } from "./picking.ts";

/** A part of the plan: what it is and its ports. Only a closed case marks the part that was at fault. */
export const PlanCard = memo(function PlanCard({ id, selected }: NodeProps) {
  const part = usePractice((s) => s.session && partById(s.session.opened.design, id));
  const isCulprit = useIsCulprit(id);
  const kind = part && kindOf(part.kind);
  if (!part || !kind) return null;
  const ports = portsOf(part);
  const inRows = hasRows(ports);
  const places = portPlaces(ports);
  return (
    <div
      className="node-card"
      data-family={kind.family}
      data-selected={selected}
      data-rows={inRows}
      data-culprit={isCulprit}
    >
      <div className="node-card-head">
        <PartSymbol name={kind.symbol(part.options)} />
        <div className="node-card-words">
          <span className="node-card-name" id={`card-${id}-name`} title={part.label}>
            {part.label}
          </span>
          <span className="node-card-caption" id={`card-${id}-caption`}>
            {kind.caption(part.options)}
          </span>
        </div>
      </div>
      {isCulprit ? (
        <span className="node-card-mark" id={`card-${id}-mark`}>
          Here it was
        </span>
      ) : null}
      {ports.map((port) => (
        <PlanPort
          key={port.side + port.id}
          part={id}
          port={port}
          y={places.get(port.id)?.y ?? 0}
          inRows={inRows}
        />
      ))}
    </div>
  );
});

function useIsCulprit(id: string): boolean {
  const session = usePractice((s) => s.session);
  const isDone = useTraining((s) => session !== null && isClosed(progressOf(s.progress, session.key)));
  return isDone && session !== null && session.opened.fault.part === id;
}

type PortProps = {
  readonly part: string;
  readonly port: Port;
  readonly y: number;
  readonly inRows: boolean;
};

function PlanPort({ part, port, y, inRows }: PortProps) {
  const isHung = usePractice((s) => s.place?.[0] === part && s.place[1] === port.id);
  const isInput = port.side === "in";
  const name = `Meter at ${isInput ? "input" : "output"} ${port.label}`;
  return (
    <>
      <Handle
        id={port.id}
        type={isInput ? "target" : "source"}
        position={isInput ? Position.Left : Position.Right}
        isConnectable={false}
        style={{ top: y }}
        className="port"
        data-medium={port.medium}
        data-joined
        data-role={isHung ? "start" : "idle"}
        role="button"
        aria-pressed={isHung}
        aria-label={name}
        title={name}
        onClick={(event) => {
          event.stopPropagation();
          connectMeter([part, port.id]);
        }}
      />
      {inRows ? (
        <span className="port-label" data-side={port.side} style={{ top: y }} aria-hidden="true">
          {port.label}
        </span>
      ) : null}
    </>
  );
}
