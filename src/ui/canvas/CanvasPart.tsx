/** A part on the canvas of the editor: its face with live strips, its ports, and how it stands. */

import type { NodeProps } from "@xyflow/react";
import { memo } from "react";
import { wireId } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Port } from "../../parts/contract.ts";
import { messageOf } from "../../sentences/finding.ts";
import { captionOf } from "../../sentences/planes.ts";
import { SILENCE } from "../../signal/band.ts";
import { useApp } from "../../store/app.ts";
import {
  useCulpritOf,
  useFindingsFor,
  useIsFailingPart,
  usePlainVerdict,
  useRecord,
} from "../../store/hooks.ts";
import { type DockedStrip, type Frame, frameOf } from "./frames.ts";
import { useHighlightedPart } from "./highlight.ts";
import { tapPort } from "./joining.ts";
import { PartFace } from "./PartFace.tsx";
import { PortHandle } from "./PortHandle.tsx";
import { type PartState, partState, worstOwn } from "./partState.ts";
import { partWords } from "./partWords.ts";
import { Strip, type StripDetail } from "./Strip.tsx";
import { joinTargetKeys, useCardDetail } from "./state.ts";
import { ValuesStop } from "./ValuesStop.tsx";
import { WalkMark, walkLook } from "./WalkMark.tsx";
import { wireSummary } from "./wireSummary.ts";

export const CanvasPart = memo(function CanvasPart({ id, selected }: NodeProps) {
  const record = useRecord(id);
  const frame = useApp((s) => record && frameOf(s.evaluation.design, record.part));
  const detail = useCardDetail();
  const state = usePartState(id, record);
  const mark = useApp((s) =>
    s.preview?.added.has(id) ? "New" : s.preview?.changed.has(id) ? "Changed" : null,
  );
  const lit = useHighlightedPart(id);
  const isFailing = useIsFailingPart(id);
  if (!record || !frame) return null;
  const caption = captionOf(record);
  return (
    <PartFace
      id={id}
      label={record.part.label}
      words={partWords({ label: record.part.label, kind: record.kind, caption }, state, mark)}
      kind={record.kind}
      options={record.options}
      caption={caption}
      frame={frame}
      detail={detail}
      state={state}
      mark={mark}
      isFailing={isFailing}
      selected={selected}
      walk={lit && walkLook(lit)}
      strip={(docked) => <PartStrip record={record} docked={docked} detail={detail} />}
    >
      {lit && <WalkMark part={id} lit={lit} />}
      <Ports record={record} frame={frame} detail={detail} />
      {selected && <ValuesStop />}
    </PartFace>
  );
});

/** How a part stands, as its card says it. */
export function usePartState(id: string, record: PartRecord | undefined): PartState | null {
  const verdict = usePlainVerdict(id);
  const findings = useFindingsFor(id);
  const worst = worstOwn(id, findings);
  const message = useApp((s) => (worst ? messageOf(worst, s.evaluation) : ""));
  const culpritOf = useCulpritOf(id);
  if (!record) return null;
  return partState(record, { verdict, worst: worst && { severity: worst.severity, message }, culpritOf });
}

type StripProps = {
  readonly record: PartRecord;
  readonly docked: DockedStrip;
  readonly detail: StripDetail;
};

/**
 * The strip of the wire at a port. It belongs to its card: a press selects the card, as anywhere on it, and one more
 * goes on to the wire and opens its spectrum.
 */
export function PartStrip({ record, docked, detail }: StripProps) {
  const { port, side } = docked;
  const end = record.joined[port];
  const here = [record.part.id, port] as const;
  const wire = end && wireId(side === "out" ? { from: here, to: end } : { from: end, to: here });
  const isSelected = useApp((s) => wire !== undefined && s.selection.wires.includes(wire));
  const spectrum = (side === "out" ? record.outputs : record.inputs)[port] ?? SILENCE;
  const medium = record.ports.find((p) => p.id === port)?.medium ?? "coax";
  const { worst } = wireSummary(spectrum);
  return (
    // The wire itself is what the keyboard and a screen reader meet; here the strip is only as good a place to press.
    <svg
      className="strip"
      width={docked.width}
      height={docked.height}
      data-worst={worst}
      data-selected={isSelected}
      data-free={wire === undefined}
      data-wire={wire}
      aria-hidden="true"
      onClick={(event) => {
        const { connecting, selection, select } = useApp.getState();
        if (!wire || connecting || !selection.parts.includes(record.part.id)) return;
        event.stopPropagation();
        select({ wires: [wire] });
      }}
    >
      <Strip
        spectrum={spectrum}
        medium={medium}
        width={docked.width}
        height={docked.height}
        detail={detail}
      />
    </svg>
  );
}

function Ports(props: { readonly record: PartRecord; readonly frame: Frame; readonly detail: StripDetail }) {
  const { record, frame, detail } = props;
  const isLabelled = frame.look === "card" && frame.strips.length === 0 && detail !== "small";
  return record.ports.map((port) => (
    <EditorPort
      key={`${port.side}${port.id}`}
      part={record.part.id}
      port={port}
      at={frame.ports.get(port.id) ?? { x: 0, y: 0 }}
      joined={record.joined[port.id] !== undefined}
      labelled={isLabelled}
    />
  ));
}

type PortProps = {
  readonly part: string;
  readonly port: Port;
  readonly at: { readonly x: number; readonly y: number };
  readonly joined: boolean;
  readonly labelled: boolean;
};

function EditorPort({ part, port, at, joined, labelled }: PortProps) {
  const role = useApp((s) => {
    if (!s.connecting) return "idle";
    if (s.connecting[0] === part && s.connecting[1] === port.id) return "start";
    return joinTargetKeys(s.design, s.connecting).has(`${part}/${port.id}`) ? "target" : "unfit";
  });
  const side = port.side === "in" ? "Input" : "Output";
  return (
    <PortHandle
      port={port}
      at={at}
      name={`${side} ${port.label}, ${joined ? "connected" : "free"}`}
      joined={joined}
      role={role}
      labelled={labelled}
      onTap={() => tapPort([part, port.id])}
    />
  );
}
