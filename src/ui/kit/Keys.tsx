import { type Command, shortcutWords } from "./command.ts";

/** The keys of a command beside its name: seen where there is a keyboard, told to assistive tools by `spokenKeys`. */
export function Keys({ command }: { readonly command: Command | undefined }) {
  const words = command && shortcutWords(command);
  return words ? (
    <kbd className="keys" aria-hidden>
      {words}
    </kbd>
  ) : null;
}
