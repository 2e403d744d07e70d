import type { NodeProps } from "@xyflow/react";
import { memo } from "react";
import { partById, portsOf } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import type { Port } from "../../../parts/contract.ts";
import { isClosed } from "../../../remedies/training/progress.ts";
import { progressOf, useTraining } from "../../../store/training.ts";
import { usePractice } from "../../../store/trainingSession.ts";
import { frameOf } from "../../canvas/frames.ts";
import { PartFace } from "../../canvas/PartFace.tsx";
import { PortHandle } from "../../canvas/PortHandle.tsx";
import { partWords } from "../../canvas/partWords.ts";
import { useCardDetail } from "../../canvas/state.ts";
import { connectMeter } from "./picking.ts";

/**
 * A part of the plan: what it is and its ports; what would tell of its signal is for the meter. Only a closed case
 * marks the part that was at fault.
 */
export const PlanCard = memo(function PlanCard({ id, selected }: NodeProps) {
  const design = usePractice((s) => s.session?.opened.design);
  const isCulprit = useIsCulprit(id);
  const detail = useCardDetail();
  const part = design && partById(design, id);
  const kind = part && kindOf(part.kind);
  if (!design || !part || !kind) return null;
  const frame = frameOf(design, part);
  const mark = isCulprit ? "Here it was" : null;
  const ports = portsOf(part);
  return (
    <PartFace
      id={id}
      label={part.label}
      words={partWords({ label: part.label, kind, caption: kind.caption(part.options) }, null, mark)}
      kind={kind}
      options={part.options}
      caption={kind.caption(part.options)}
      frame={frame}
      detail={detail}
      state={null}
      mark={mark}
      isFailing={isCulprit}
      selected={selected}
      walk={undefined}
      strip={({ port, outputs }) => (
        <span className="plan-facts">
          {frame.strips[0]?.port === port && frame.look === "card"
            ? kind.caption(part.options)
            : outputs === 1
              ? ports.find((p) => p.id === port)?.label
              : null}
        </span>
      )}
    >
      {ports.map((port) => (
        <PlanPort
          key={port.side + port.id}
          part={id}
          port={port}
          at={frame.ports.get(port.id) ?? { x: 0, y: 0 }}
          labelled={frame.look === "card" && frame.strips.length === 0}
        />
      ))}
    </PartFace>
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
  readonly at: { readonly x: number; readonly y: number };
  readonly labelled: boolean;
};

function PlanPort({ part, port, at, labelled }: PortProps) {
  const isHung = usePractice((s) => s.place?.[0] === part && s.place[1] === port.id);
  return (
    <PortHandle
      port={port}
      at={at}
      name={`Meter at ${port.side === "in" ? "input" : "output"} ${port.label}`}
      joined
      role={isHung ? "start" : "idle"}
      labelled={labelled}
      pressed={isHung}
      onTap={() => connectMeter([part, port.id])}
    />
  );
}
