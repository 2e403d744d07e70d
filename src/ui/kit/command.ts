/** What a command is: something that can be done without pointing, by a key, a button or a menu. */

export type CommandGroup = "Edit" | "Select" | "Connect" | "Arrange" | "View";

export type Command = {
  readonly id: string;
  readonly label: string;
  readonly group: CommandGroup;
  /**
   * In the notation of tinykeys; several are alternatives. Those without a modifier work only while the
   * canvas has the focus, so that they never get in the way of typing or of assistive keys.
   */
  readonly shortcuts: readonly string[];
  /** The browser has an event of its own for these keys, which the page listens to. */
  readonly isNative?: true;
  /** Its keys work wherever the focus is on the page, also in a field. */
  readonly isAnywhere?: boolean;
  readonly run: () => void;
  readonly enabled: () => boolean;
};

/** Runs a command if it makes sense now. */
export function runIfEnabled(command: Command | undefined): void {
  if (command?.enabled()) command.run();
}

const KEY_WORDS: Readonly<Record<string, string>> = {
  ArrowLeft: "←",
  ArrowRight: "→",
  ArrowUp: "↑",
  ArrowDown: "↓",
  Escape: "Esc",
  Delete: "Del",
};

/** Keys as `aria-keyshortcuts` has them (WAI-ARIA 1.2): "Control+Z"; undefined for a command without any. */
export function spokenKeys(command: Command | undefined): string | undefined {
  const keys = command?.shortcuts.map((keys) => keys.replace("$mod", isApple() ? "Meta" : "Control"));
  return keys?.length ? keys.join(" ") : undefined;
}

function isApple(): boolean {
  return typeof navigator !== "undefined" && /Mac|iPhone|iPad/.test(navigator.platform);
}

/** The first shortcut of a command as it is printed: "Ctrl+Shift+Z"; undefined for a command without one. */
export function shortcutWords(command: Command): string | undefined {
  const [first] = command.shortcuts;
  if (first === undefined) return undefined;
  // "+" is a key and a separator: split only where a name stands before it.
  return first
    .split(/(?<=\w)\+/)
    .map((key) => {
      if (key === "$mod") return isApple() ? "⌘" : "Ctrl";
      return KEY_WORDS[key] ?? (key.length === 1 ? key.toUpperCase() : key);
    })
    .join("+");
}
