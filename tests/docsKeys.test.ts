// @vitest-environment happy-dom
/** The README names keys as the commands have them; these know the panes, so this test has a page. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { shortcutWords } from "../src/ui/kit/command.ts";
import { commandOf } from "../src/ui/shell/commands.ts";

const text = readFileSync("README.md", "utf8");

test.each([
  { id: "rules", words: "**rule book** (key R)", key: "R" },
  { id: "walk", words: "(key W)", key: "W" },
  { id: "walk-supply", words: "“Walk the supply” (Shift+W)", key: "Shift+W" },
  { id: "cures", words: "**Find cures** (key C)", key: "C" },
  { id: "conditions", words: "**Conditions** (key U)", key: "U" },
  { id: "find-fault", words: "“Find the fault…” (key X)", key: "X" },
  { id: "revisions", words: "**Revisions** (key V)", key: "V" },
  { id: "practice", words: "“Practice…” (key P)", key: "P" },
])("the README names the key of the command $id", ({ id, words, key }) => {
  const command = commandOf(id);
  expect(text).toContain(words);
  expect(command && shortcutWords(command)).toBe(key);
});
