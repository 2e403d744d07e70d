/** Joining and inserting without a pointer. */
import { useState } from "react";
import type { PortRef } from "../../design/design.ts";
import { joinTargets } from "../../design/edits/join.ts";
import { partById, portOf, portsOf, wireAt } from "../../design/lookup.ts";
import { CATALOGUE } from "../../parts/catalogue.ts";
import { FAMILY_NAMES } from "../../parts/contract.ts";
import { useApp } from "../../store/app.ts";
import { Sheet } from "../kit/Sheet.tsx";
import { addIntoWire } from "./adding.ts";
import { joinPorts } from "./joining.ts";
import { PickList, type PickOption } from "./PickList.tsx";
import { setCanvas, useCanvas } from "./state.ts";

const close = () => setCanvas({ dialog: null });

export function CanvasDialogs() {
  const dialog = useCanvas((s) => s.dialog);
  if (dialog === "join") return <JoinDialog />;
  if (dialog === "insert") return <InsertDialog />;
  return null;
}

/** First a free port, then one that it can be joined to. */
function JoinDialog() {
  const design = useApp((s) => s.design);
  const selected = useApp((s) => s.selection.parts);
  const [from, setFrom] = useState<PortRef | null>(null);
  const name = ([part, port]: PortRef): string => {
    const found = partById(design, part);
    const { side, label } = (found && portOf(found, port)) ?? { side: "in", label: port };
    return `${found?.label ?? part}: ${side === "in" ? "input" : "output"} ${label}`;
  };
  const choices = (from ? joinTargets(design, from) : freePorts(selected)).map((ref) => ({
    key: ref.join("/"),
    words: name(ref),
    value: ref,
  }));
  return (
    <Sheet
      title={from ? `Connect ${name(from)} to…` : "Connect which port?"}
      open
      onClose={close}
      about={from ? "Ports that fit." : "Free ports; those of selected parts come first."}
    >
      <PickList
        key={from?.join("/") ?? "first"}
        label={from ? "Port to connect to" : "Port to connect"}
        choices={choices}
        none={from ? "No free port fits this one." : "Every port is connected."}
        onPick={(ref) => {
          if (!from) {
            setFrom(ref);
            return;
          }
          close();
          joinPorts(from, ref);
        }}
      />
    </Sheet>
  );
}

function freePorts(selected: readonly string[]): readonly PortRef[] {
  const { design } = useApp.getState();
  const first = new Set(selected);
  const refs = [...design.parts]
    .sort((a, b) => Number(first.has(b.id)) - Number(first.has(a.id)))
    .flatMap((part) => portsOf(part).map((port): PortRef => [part.id, port.id]));
  return refs.filter((ref) => !wireAt(design, ref));
}

const INLINE: readonly PickOption<string>[] = CATALOGUE.filter((kind) => kind.inline).map((kind) => ({
  key: kind.kind,
  words: kind.name,
  about: `${FAMILY_NAMES[kind.family]} · ${kind.summary}`,
  also: kind.keywords,
  value: kind.kind,
}));

function InsertDialog() {
  const wire = useApp((s) => s.selection.wires[0]);
  if (wire === undefined) return null;
  return (
    <Sheet title="Insert into this wire" open onClose={close}>
      <PickList
        label="Part to insert"
        choices={INLINE}
        none="No part with a way through matches."
        onPick={(kind) => {
          close();
          addIntoWire(kind, wire);
        }}
      />
    </Sheet>
  );
}
