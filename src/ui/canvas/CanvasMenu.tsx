/** The menu at the pointer: the commands that make sense for what lies there. The same ones as in the list of keys. */
import { ContextMenu } from "radix-ui";
import { type ReactElement, type SyntheticEvent, useRef, useState } from "react";
import { wireId } from "../../design/design.ts";
import { partById, quoted } from "../../design/lookup.ts";
import { useApp } from "../../store/app.ts";
import { afterLayout } from "../kit/afterLayout.ts";
import { type Command, spokenKeys } from "../kit/command.ts";
import { Keys } from "../kit/Keys.tsx";
import { canvasCommand } from "./commands.ts";
import { focusSelected } from "./selectedFocus.ts";
import { selectionWords } from "./words.ts";

const PART = [
  "add-connected",
  "edit-cable",
  "edit-values",
  "rename",
  "join",
  "-",
  "copy",
  "cut",
  "duplicate",
  "delete",
  "-",
  "arrange-selection",
  "arrange-rest",
  "look",
];
const WIRE = ["insert", "delete", "-", "look"];
const CANVAS = ["add-connected", "paste", "select-all", "-", "arrange", "fit", "-", "undo", "redo"];

export function CanvasMenu({ children }: { readonly children: ReactElement }) {
  const [isOpen, setIsOpen] = useState(false);
  /** What was pressed last, or asked about by a key: a finger that stays opens the menu without an event of its own. */
  const pressed = useRef<Element | null>(null);
  /** A finger that stayed until the menu came: what it does until it leaves is no drag and no tap. */
  const finger = useRef<"none" | "down" | "held">("none");
  const press = ({ target }: { readonly target: EventTarget }) => {
    pressed.current = target instanceof Element ? target : null;
  };
  const stopIfHeld = (event: SyntheticEvent) => {
    if (finger.current === "held") event.stopPropagation();
  };
  const leave = () => {
    if (finger.current === "down") finger.current = "none";
  };
  return (
    <ContextMenu.Root
      open={isOpen}
      onOpenChange={(open) => {
        if (open && !isDrawing(pressed.current)) return;
        if (open) selectUnder(pressed.current);
        finger.current = open && finger.current === "down" ? "held" : "none";
        setIsOpen(open);
      }}
    >
      <ContextMenu.Trigger
        asChild
        onPointerDown={(event) => {
          press(event);
          finger.current = event.pointerType === "mouse" ? "none" : "down";
        }}
        onPointerUp={leave}
        onPointerCancel={leave}
        onTouchMoveCapture={stopIfHeld}
        onClickCapture={stopIfHeld}
        onContextMenu={(event) => {
          press(event);
          if (!isDrawing(pressed.current)) event.preventDefault();
        }}
      >
        {children}
      </ContextMenu.Trigger>
      <ContextMenu.Portal>
        <ContextMenu.Content
          className="menu canvas-menu"
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
        {headingFor(parts, wires)}
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

function headingFor(parts: readonly string[], wires: readonly string[]): string {
  const { design } = useApp.getState().evaluation;
  const items = parts.length + wires.length;
  const wire = design.wires.find((each) => wireId(each) === wires[0]);
  if (parts.length === 1 && items === 1) return quoted(partById(design, parts[0] ?? ""));
  if (wire && items === 1) {
    return `Wire from ${quoted(partById(design, wire.from[0]))} to ${quoted(partById(design, wire.to[0]))}`;
  }
  return items > 0 ? selectionWords(parts.length, wires.length) : "Canvas";
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

/** Once the menu has gone and given the focus back: it would take it from the list or the field that the command opens. */
function laterRun(command: Command): void {
  afterLayout(command.run);
}

/** Bars and lists over the canvas have no menu; the canvas has one by key, while nothing on it has the focus. */
function isDrawing(element: Element | null): element is Element {
  return element !== null && (element.matches(".canvas") || element.closest(".react-flow") !== null);
}

/**
 * The part or wire that was pressed is what the menu is about, unless it is one of several that are selected. A strip
 * belongs to its card, as for a press, until its wire is selected.
 */
function selectUnder(element: Element | null): void {
  if (!element || element.matches(".canvas")) return;
  const { selection, select } = useApp.getState();
  const part = element.closest(".react-flow__node")?.getAttribute("data-id");
  const strip = element.closest("[data-wire]")?.getAttribute("data-wire");
  const wire = element.closest(".react-flow__edge")?.getAttribute("data-id") ?? strip;
  if (wire && selection.wires.includes(wire)) return;
  if (part && !selection.parts.includes(part)) select({ parts: [part] });
  else if (wire && !part) select({ wires: [wire] });
  else if (!part && !wire && !element.closest(".react-flow__nodesselection")) select({});
}
