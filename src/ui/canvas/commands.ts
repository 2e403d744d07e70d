/** What can be done to the drawing and to the view of it. */
import type { Design } from "../../design/design.ts";
import { align, distribute } from "../../design/edits/arrange.ts";
import type { Edit } from "../../design/edits/edit.ts";
import { useApp } from "../../store/app.ts";
import { redoStep, undoStep } from "../../store/steps.ts";
import { type Command, runIfEnabled } from "../kit/command.ts";
import { askForConnected } from "./adding.ts";
import { arrange, arrangeRest, arrangeSelected } from "./arrange.ts";
import { focusValues } from "./focusValues.ts";
import { isCableSelected, openFormAt } from "./forms.ts";
import { GO_COMMANDS } from "./goAlong.ts";
import { roomy } from "./place.ts";
import {
  copySelection,
  cutSelection,
  deleteSelection,
  duplicateSelection,
  hasSelectedParts,
  hasSelection,
  nudge,
  paste,
  selectAll,
} from "./selectionEdits.ts";
import { setCanvas, useCanvas } from "./state.ts";
import { VIEW_COMMANDS } from "./viewCommands.ts";

const always = () => true;
const hasParts = () => useApp.getState().design.parts.length > 0;
const severalSelected = (least: number) => () => useApp.getState().selection.parts.length >= least;
const oneWireSelected = () => useApp.getState().selection.wires.length === 1;

const STEP_PX = 8;
const LEAP_PX = 40;

/** In the order in which the help lists them. */
export const CANVAS_COMMANDS: readonly Command[] = [
  {
    id: "undo",
    label: "Undo",
    group: "Edit",
    shortcuts: ["$mod+z"],
    run: undoStep,
    enabled: () => useApp.temporal.getState().pastStates.length > 0,
  },
  {
    id: "redo",
    label: "Redo",
    group: "Edit",
    shortcuts: ["$mod+Shift+z", "$mod+y"],
    run: redoStep,
    enabled: () => useApp.temporal.getState().futureStates.length > 0,
  },
  {
    id: "copy",
    label: "Copy",
    group: "Edit",
    shortcuts: ["$mod+c"],
    run: copySelection,
    enabled: hasSelectedParts,
  },
  {
    id: "cut",
    label: "Cut",
    group: "Edit",
    shortcuts: ["$mod+x"],
    run: cutSelection,
    enabled: hasSelectedParts,
  },
  {
    id: "paste",
    label: "Paste",
    group: "Edit",
    shortcuts: ["$mod+v"],
    isNative: true,
    run: () => void paste(),
    enabled: always,
  },
  {
    id: "duplicate",
    label: "Duplicate",
    group: "Edit",
    shortcuts: ["$mod+d"],
    run: duplicateSelection,
    enabled: hasSelectedParts,
  },
  {
    id: "delete",
    label: "Delete",
    group: "Edit",
    shortcuts: ["Delete", "Backspace"],
    run: deleteSelection,
    enabled: hasSelection,
  },
  {
    id: "rename",
    label: "Rename…",
    group: "Edit",
    shortcuts: ["F2"],
    run: () => openFormAt("name"),
    enabled: () => useApp.getState().selection.parts.length === 1 && useApp.getState().preview === null,
  },
  {
    id: "edit-cable",
    label: "Length and grade…",
    group: "Edit",
    shortcuts: ["Enter"],
    run: () => openFormAt("length"),
    enabled: isCableSelected,
  },
  {
    id: "edit-values",
    label: "Edit values",
    group: "Edit",
    shortcuts: ["Alt+Enter"],
    run: focusValues,
    enabled: hasSelectedParts,
  },
  {
    id: "select-all",
    label: "Select all",
    group: "Select",
    shortcuts: ["$mod+a"],
    run: selectAll,
    enabled: hasParts,
  },
  {
    id: "select-none",
    label: "Deselect all",
    group: "Select",
    shortcuts: ["Escape"],
    run: () => {
      useApp.getState().setConnecting(null);
      useApp.getState().select({});
      setCanvas({ selecting: false });
    },
    enabled: () => hasSelection() || useApp.getState().connecting !== null || useCanvas.getState().selecting,
  },
  {
    id: "select-many",
    label: "Select by tapping",
    group: "Select",
    shortcuts: ["s"],
    run: () => setCanvas({ selecting: !useCanvas.getState().selecting }),
    enabled: hasParts,
  },
  ...GO_COMMANDS,
  {
    id: "add-connected",
    label: "Add connected part…",
    group: "Connect",
    shortcuts: ["e"],
    run: askForConnected,
    enabled: () => useApp.getState().preview === null,
  },
  {
    id: "join",
    label: "Connect two parts…",
    group: "Connect",
    shortcuts: ["j"],
    run: () => setCanvas({ dialog: "join" }),
    enabled: () => useApp.getState().design.parts.length > 1,
  },
  {
    id: "insert",
    label: "Insert a part…",
    group: "Connect",
    shortcuts: ["i"],
    run: () => setCanvas({ dialog: "insert" }),
    enabled: oneWireSelected,
  },
  {
    id: "arrange",
    label: "Arrange everything",
    group: "Arrange",
    shortcuts: ["$mod+Shift+l"],
    run: () => void arrange(),
    enabled: hasParts,
  },
  {
    id: "arrange-selection",
    label: "Arrange selection",
    group: "Arrange",
    shortcuts: [],
    run: () => void arrangeSelected(),
    enabled: severalSelected(2),
  },
  {
    id: "arrange-rest",
    label: "Arrange around selection",
    group: "Arrange",
    shortcuts: [],
    run: () => void arrangeRest(),
    enabled: () =>
      hasSelectedParts() && useApp.getState().selection.parts.length < useApp.getState().design.parts.length,
  },
  ...lining("align-left", "Align left", 2, (d, ids) => align(d, ids, "left")),
  ...lining("align-top", "Align top", 2, (d, ids) => align(d, ids, "top")),
  ...lining("spread-across", "Space evenly across", 3, (d, ids) => distribute(d, ids, "across")),
  ...lining("spread-down", "Space evenly down", 3, (d, ids) => distribute(d, ids, "down")),
  ...moving("left", "Left", -1, 0),
  ...moving("right", "Right", 1, 0),
  ...moving("up", "Up", 0, -1),
  ...moving("down", "Down", 0, 1),
  ...VIEW_COMMANDS,
  {
    id: "look",
    label: "Zoom to selection",
    group: "View",
    shortcuts: ["."],
    run: () => useApp.getState().frame(useApp.getState().selection),
    enabled: hasSelection,
  },
  {
    id: "map",
    label: "Show the map",
    group: "View",
    shortcuts: ["m"],
    run: () => setCanvas({ mapOpen: !useCanvas.getState().mapOpen }),
    enabled: hasParts,
  },
];

function lining(
  id: string,
  label: string,
  least: number,
  edit: (design: Design, ids: ReadonlySet<string>) => Edit,
): Command[] {
  const run = () => {
    const { design, selection, change } = useApp.getState();
    change(roomy(design, edit(design, new Set(selection.parts))));
  };
  return [{ id, label, group: "Arrange", shortcuts: [], run, enabled: severalSelected(least) }];
}

function moving(way: string, key: string, dx: number, dy: number): Command[] {
  const move = (id: string, label: string, shortcut: string, px: number): Command => ({
    id,
    label,
    group: "Arrange",
    shortcuts: [shortcut],
    run: () => nudge(dx * px, dy * px),
    enabled: hasSelectedParts,
  });
  return [
    move(`move-${way}`, `Move ${way}`, `Arrow${key}`, STEP_PX),
    move(`leap-${way}`, `Move ${way} further`, `Shift+Arrow${key}`, LEAP_PX),
  ];
}

/** Of the canvas's own commands. */
export function canvasCommand(id: string): Command | undefined {
  return CANVAS_COMMANDS.find((c) => c.id === id);
}

export function runCanvasCommand(id: string): void {
  runIfEnabled(canvasCommand(id));
}
