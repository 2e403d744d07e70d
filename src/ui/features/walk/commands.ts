/** The ways into a walk. */
import { canWalk, walkFromSelection } from "../../kit/asked/walking.ts";
import type { Command } from "../../kit/command.ts";

export const WALK_COMMANDS: readonly Command[] = [
  {
    id: "walk",
    label: "Walk the signal",
    group: "View",
    shortcuts: ["w"],
    run: () => walkFromSelection(),
    enabled: canWalk,
  },
  {
    id: "walk-supply",
    label: "Walk the supply",
    group: "View",
    shortcuts: ["Shift+W"],
    run: () => walkFromSelection("supply"),
    enabled: canWalk,
  },
];
