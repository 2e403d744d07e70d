import { useApp } from "../../store/app.ts";
import type { Command, CommandGroup } from "../kit/command.ts";
import { type SheetPane, showPane } from "../kit/panes.ts";
import { showPhoneView } from "../kit/phoneView.ts";
import { COMMANDS } from "./commands.ts";

const PANES: readonly { readonly key: SheetPane; readonly name: string }[] = [
  { key: "cures", name: "Cures" },
  { key: "faults", name: "Faults" },
  { key: "spectrum", name: "Spectrum" },
  { key: "chain", name: "Parts and wires" },
];

/** On a phone: panes without a tab of their own, and every command that keys and bars have elsewhere. */
export function MoreSheet() {
  // Commands depend on all of it; none of them watches anything itself.
  useApp();
  const groups = new Map<CommandGroup, Command[]>();
  for (const command of COMMANDS) groups.set(command.group, [...(groups.get(command.group) ?? []), command]);
  return (
    <div className="more-sheet">
      <div className="more-choices">
        {PANES.map(({ key, name }) => (
          <button key={key} type="button" className="button" onClick={() => showPane(key)}>
            {name}
          </button>
        ))}
      </div>
      {[...groups].map(([group, commands]) => (
        <section key={group} aria-label={group}>
          <h3>{group}</h3>
          <div className="more-choices">
            {commands.map((command) => (
              <button
                key={command.id}
                type="button"
                className="button"
                disabled={!command.enabled()}
                onClick={() => run(command)}
              >
                {command.label}
              </button>
            ))}
          </div>
        </section>
      ))}
    </div>
  );
}

/** What moves the view needs the drawing to be there. */
const NEEDS_DRAWING: ReadonlySet<string> = new Set([
  "fit",
  "look",
  "nearer",
  "farther",
  "map",
  "select-many",
]);

function run(command: Command): void {
  if (!NEEDS_DRAWING.has(command.id)) {
    command.run();
    return;
  }
  showPhoneView("drawing");
  requestAnimationFrame(() => command.run());
}
