import { ArrowDown, ArrowLeft, ArrowRight, ArrowUp } from "lucide-react";
import { canvasCommand, runCanvasCommand } from "../../canvas/commands.ts";
import { shortcutWords } from "../../kit/command.ts";
import { IconButton, type IconType } from "../../kit/IconButton.tsx";

const WAYS: readonly { readonly id: string; readonly name: string; readonly icon: IconType }[] = [
  { id: "leap-left", name: "Move left", icon: ArrowLeft },
  { id: "leap-up", name: "Move up", icon: ArrowUp },
  { id: "leap-down", name: "Move down", icon: ArrowDown },
  { id: "leap-right", name: "Move right", icon: ArrowRight },
];

/** Moves what is selected without dragging, press by press. */
export function MoveButtons() {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for what is filled in.
    <div className="move-buttons" role="group" aria-label="Place on the canvas">
      {WAYS.map(({ id, name, icon }) => {
        const command = canvasCommand(id);
        return (
          <IconButton
            key={id}
            bordered
            icon={icon}
            name={name}
            keys={command && shortcutWords(command)}
            onPress={() => runCanvasCommand(id)}
          />
        );
      })}
    </div>
  );
}
