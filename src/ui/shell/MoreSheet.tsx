import { useApp } from "../../store/app.ts";
import { type Command, type CommandGroup, spokenKeys } from "../kit/command.ts";
import { Keys } from "../kit/Keys.tsx";
import { showPane, showPhoneView } from "../kit/panes.ts";
import { COMMANDS } from "./commands.ts";
import styles from "./MoreSheet.module.css";
import { PANES } from "./paneTable.ts";
import { TABBED } from "./phonePanes.ts";

/** On a phone: panes without a button of their own, and every command that keys and bars have elsewhere. */
export function MoreSheet() {
  // What can be done depends on all of it.
  useApp();
  const groups = new Map<CommandGroup, Command[]>();
  for (const command of COMMANDS) {
    const group = groups.get(command.group) ?? [];
    groups.set(command.group, group);
    group.push(command);
  }
  return (
    <div className={styles.more}>
      <div className={styles.choices}>
        {PANES.filter((pane) => !TABBED.has(pane.id)).map((pane) => (
          <button key={pane.id} type="button" className="button" onClick={() => showPane(pane.id)}>
            <pane.icon size={16} aria-hidden />
            {pane.id === "chain" ? "Parts and wires" : pane.name}
          </button>
        ))}
      </div>
      {[...groups].map(([group, commands]) => (
        <section key={group} aria-label={group}>
          <h3>{group}</h3>
          <div className={styles.choices}>
            {commands.map((command) => (
              <button
                key={command.id}
                type="button"
                className="button"
                disabled={!command.enabled()}
                aria-keyshortcuts={spokenKeys(command)}
                onClick={() => run(command)}
              >
                {command.label}
                <Keys command={command} />
              </button>
            ))}
          </div>
        </section>
      ))}
    </div>
  );
}

/** What moves the drawing needs it to be there. */
const MOVES_DRAWING: ReadonlySet<string> = new Set([
  "fit",
  "look",
  "nearer",
  "farther",
  "map",
  "select-many",
]);

function run(command: Command): void {
  if (!MOVES_DRAWING.has(command.id)) {
    command.run();
    return;
  }
  showPhoneView("drawing");
  requestAnimationFrame(() => command.run());
}
