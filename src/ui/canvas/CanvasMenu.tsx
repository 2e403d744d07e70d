/** The menu at the pointer: the commands that make sense for what lies there. The same ones as in the list of keys. */
import { ContextMenu } from "radix-ui";
import type { MouseEvent, ReactElement } from "react";
import { quoted } from "../../design/lookup.ts";
import { useApp } from "../../store/app.ts";
import { type Command, spokenKeys } from "../kit/command.ts";
import { Keys } from "../kit/Keys.tsx";
import { canvasCommand } from "./commands.ts";
import { focusSelected } from "./selectedFocus.ts";

const PART = [
  "add-connected",
  "edit-cable",
  "rename",
  "join",
  "-",
  "copy",
  "cut",
  "duplicate",
  "delete",
  "-",
  "look",
];
const WIRE = ["insert", "delete", "-", "look"];
const CANVAS = ["add-connected", "paste", "select-all", "-", "arrange", "fit", "-", "undo", "redo"];

export function CanvasMenu({ children }: { readonly children: ReactElement }) {
  return (
    <ContextMenu.Root>
      <ContextMenu.Trigger asChild onContextMenu={selectUnder}>
        {children}
      </ContextMenu.Trigger>
      <ContextMenu.Portal>
        <ContextMenu.Content
          className="menu"
          collisionPadding={8}
          onCloseAutoFocus={(event) => {
            event.preventDefault();
            focusSelected();
          }}
        >
          <Entries />
        </ContextMenu.Content>
      </ContextMenu.Portal>
    </ContextMenu.Root>
  );
}

function Entries() {
  const { parts, wires } = useApp((s) => s.selection);
  const ids = parts.length > 0 ? PART : wires.length > 0 ? WIRE : CANVAS;
  return (
    <>
      <ContextMenu.Label className="menu-heading part-menu-heading">
        {headingFor(parts, wires.length)}
      </ContextMenu.Label>
      {groups(ids).map((group, i) => (
        <ContextMenu.Group key={group[0]?.id ?? i}>
          {i > 0 && <ContextMenu.Separator className="menu-line" />}
          {group.map((command) => (
            <ContextMenu.Item
              key={command.id}
              className="menu-item"
              aria-keyshortcuts={spokenKeys(command)}
              onSelect={() => laterRun(command)}
            >
              {command.label}
              <Keys command={command} />
            </ContextMenu.Item>
          ))}
        </ContextMenu.Group>
      ))}
    </>
  );
}

function headingFor(parts: readonly string[], wires: number): string {
  const [only] = parts;
  if (parts.length === 1) return quoted(useApp.getState().evaluation.record(only ?? "")?.part);
  if (parts.length > 1) return `${parts.length} parts`;
  return wires > 0 ? "Wire" : "Canvas";
}

/** Entries that make sense now, by the lines between them; no group is empty. */
function groups(ids: readonly string[]): readonly (readonly Command[])[] {
  const all: Command[][] = [[]];
  for (const id of ids) {
    const command = id === "-" ? undefined : canvasCommand(id);
    if (id === "-") all.push([]);
    else if (command?.enabled()) all.at(-1)?.push(command);
  }
  return all.filter((group) => group.length > 0);
}

/** Once the menu has gone: it would take the focus from the list or the field that the command opens. */
function laterRun(command: Command): void {
  setTimeout(command.run);
}

/** A part or wire under the pointer is what the menu is about, unless it is one of several that are selected. */
function selectUnder(event: MouseEvent): void {
  const { target } = event;
  const element = target instanceof Element ? target : null;
  if (!element?.closest(".react-flow")) {
    event.preventDefault();
    return;
  }
  const { selection, select } = useApp.getState();
  const part = element.closest(".react-flow__node")?.getAttribute("data-id");
  const wire =
    element.closest("[data-wire]")?.getAttribute("data-wire") ??
    element.closest(".react-flow__edge")?.getAttribute("data-id");
  if (wire && !selection.wires.includes(wire)) select({ wires: [wire] });
  else if (part && !wire && !selection.parts.includes(part)) select({ parts: [part] });
  else if (!part && !wire && !element.closest(".react-flow__nodesselection")) select({});
}
