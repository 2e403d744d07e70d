/** A part on the canvas: symbol, name, caption, ports, and how it stands. */

import { Handle, type NodeProps, Position } from "@xyflow/react";
import {
  Check,
  CircleAlert,
  CircleDashed,
  type LucideIcon,
  RefreshCcw,
  TriangleAlert,
  X,
  ZapOff,
} from "lucide-react";
import { memo } from "react";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Port } from "../../parts/contract.ts";
import { messageOf } from "../../sentences/finding.ts";
import { useApp } from "../../store/app.ts";
import { useCulpritOf, useFindingsFor, usePlainVerdict, useRecord } from "../../store/hooks.ts";
import { type HighlightedPart, useHighlightedPart } from "../features/walk/highlight.ts";
import { WalkMark, walkLook } from "../features/walk/WalkMark.tsx";
import { tapPort } from "./joining.ts";
import { hasRows, portPlaces } from "./layout.ts";
import { PartSymbol } from "./PartSymbol.tsx";
import { type PartState, partState, worstOwn } from "./partState.ts";
import { isFar, joinTargetKeys, useCanvas } from "./state.ts";

export const CanvasPart = memo(function CanvasPart({ id, selected }: NodeProps) {
  const record = useRecord(id);
  const far = useCanvas((s) => isFar(s.detail));
  const state = usePartState(id, record);
  const mark = useApp((s) =>
    s.preview?.added.has(id) ? "New" : s.preview?.changed.has(id) ? "Changed" : null,
  );
  const lit = useHighlightedPart(id);
  if (!record) return null;
  const Card = far ? FarCard : NearCard;
  return <Card record={record} state={state} mark={mark} lit={lit} selected={selected} />;
});

type CardProps = {
  readonly record: PartRecord;
  readonly state: PartState | null;
  /** What a preview does to it. */
  readonly mark: "New" | "Changed" | null;
  /** Its place on the way that is walked, if it lies on it. */
  readonly lit: HighlightedPart | undefined;
  readonly selected: boolean;
};

function usePartState(id: string, record: PartRecord | undefined): PartState | null {
  const verdict = usePlainVerdict(id);
  const findings = useFindingsFor(id);
  const worst = worstOwn(id, findings);
  const message = useApp((s) => (worst ? messageOf(worst, s.evaluation) : ""));
  const culpritOf = useCulpritOf(id);
  if (!record) return null;
  return partState(record, { verdict, worst: worst && { severity: worst.severity, message }, culpritOf });
}

/** Read from a distance: only what can be read there is drawn, which also keeps many of them cheap. */
function FarCard({ record, state, mark, lit, selected }: CardProps) {
  const { part, kind, ports } = record;
  const places = portPlaces(ports);
  return (
    <div
      className="node-card node-card-far"
      data-family={kind.family}
      data-selected={selected}
      data-tone={state?.tone}
      data-culprit={state?.isCulprit}
      data-mark={mark ?? undefined}
      data-walk={lit && walkLook(lit)}
    >
      {lit && <WalkMark part={part.id} lit={lit} />}
      {mark && (
        <span className="node-card-mark" id={`card-${part.id}-mark`}>
          {mark}
        </span>
      )}
      <span className="node-card-far-name" id={`card-${part.id}-name`}>
        {part.label}
      </span>
      {state && (
        <span className="node-card-far-state" id={`card-${part.id}-state`} data-tone={state.tone}>
          <Mark state={state} />
          <span className="unseen">{state.word}</span>
        </span>
      )}
      {ports.map((port) => {
        const place = places.get(port.id);
        // The library measures every card it shows and looks for these.
        return (
          <i
            key={`${port.side}${port.id}`}
            className={`port-place ${port.side === "in" ? "target" : "source"}`}
            data-handleid={port.id}
            data-handlepos={port.side === "in" ? "left" : "right"}
            style={{ left: place?.x, top: place?.y }}
          />
        );
      })}
    </div>
  );
}

function NearCard({ record, state, mark, lit, selected }: CardProps) {
  const { part, kind, options, ports } = record;
  const inRows = hasRows(ports);
  const places = portPlaces(ports);
  return (
    <div
      className="node-card"
      data-family={kind.family}
      data-selected={selected}
      data-tone={state?.tone}
      data-culprit={state?.isCulprit}
      data-rows={inRows}
      data-mark={mark ?? undefined}
      data-walk={lit && walkLook(lit)}
    >
      {lit && <WalkMark part={part.id} lit={lit} />}
      {mark && (
        <span className="node-card-mark" id={`card-${part.id}-mark`}>
          {mark}
        </span>
      )}
      <div className="node-card-head">
        <PartSymbol name={kind.symbol(options)} />
        <div className="node-card-words">
          <span className="node-card-name" id={`card-${part.id}-name`} title={part.label}>
            {part.label}
          </span>
          <span className="node-card-caption" id={`card-${part.id}-caption`}>
            {kind.caption(options)}
          </span>
        </div>
      </div>
      {state && (
        <span
          className="node-card-state"
          id={`card-${part.id}-state`}
          data-tone={state.tone}
          title={state.why}
        >
          <Mark state={state} />
          {state.word}
        </span>
      )}
      {ports.map((port) => (
        <PortHandle
          key={`${port.side}${port.id}`}
          part={part.id}
          port={port}
          y={places.get(port.id)?.y ?? 0}
          joined={record.joined[port.id] !== undefined}
          labelled={inRows}
        />
      ))}
    </div>
  );
}

const MARKS: Readonly<Record<PartState["mark"], LucideIcon>> = {
  tick: Check,
  edge: TriangleAlert,
  idle: CircleDashed,
  cross: X,
  bolt: ZapOff,
  loop: RefreshCcw,
  alert: CircleAlert,
};

function Mark({ state }: { readonly state: PartState }) {
  const Icon = MARKS[state.mark];
  return <Icon size={12} strokeWidth={2.6} aria-hidden="true" />;
}

type PortProps = {
  readonly part: string;
  readonly port: Port;
  readonly y: number;
  readonly joined: boolean;
  readonly labelled: boolean;
};

function PortHandle({ part, port, y, joined, labelled }: PortProps) {
  const role = useApp((s) => {
    if (!s.connecting) return "idle";
    if (s.connecting[0] === part && s.connecting[1] === port.id) return "start";
    return joinTargetKeys(s.design, s.connecting).has(`${part}/${port.id}`) ? "target" : "unfit";
  });
  const isInput = port.side === "in";
  const name = `${isInput ? "Input" : "Output"} ${port.label}, ${joined ? "joined" : "free"}`;
  return (
    <>
      <Handle
        id={port.id}
        type={isInput ? "target" : "source"}
        position={isInput ? Position.Left : Position.Right}
        style={{ top: y }}
        className="port"
        data-medium={port.medium}
        data-joined={joined}
        data-role={role}
        role="button"
        aria-label={name}
        title={name}
        onClick={(event) => {
          event.stopPropagation();
          tapPort([part, port.id]);
        }}
      />
      {labelled && (
        <span className="port-label" data-side={port.side} style={{ top: y }} aria-hidden="true">
          {port.label}
        </span>
      )}
    </>
  );
}
