/** The way to the glossary. */
import { openGlossary } from "../../kit/asked/glossary.ts";
import type { Command } from "../../kit/command.ts";

export const GLOSSARY_COMMANDS: readonly Command[] = [
  {
    id: "glossary",
    label: "Glossary",
    group: "View",
    shortcuts: ["g"],
    run: () => openGlossary(),
    enabled: () => true,
  },
];
