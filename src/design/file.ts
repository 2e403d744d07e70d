/** The design file: JSON that people can read, compare and keep. */
import { checkFile, type DesignReading, refusedReading, type TextOrigin } from "./check.ts";
import type { Design, Part } from "./design.ts";
import { parseJson } from "./json.ts";
import { LIMITS } from "./limits.ts";
import { changedOptions, changedValues } from "./options.ts";
import { prettyJson } from "./prettyJson.ts";
import { FULL_VERSION, VERSION } from "./schema.ts";
import { USUAL_SETTINGS } from "./settings.ts";
import { TYPICAL_SET } from "./typical.ts";

/** Reads a design file that comes from outside. Never throws and never takes long, whatever the text is. */
export function readDesign(text: string): DesignReading {
  const [length, most] = [text.length, LIMITS.textLength];
  return length > most ? refusedReading({ type: "too long", length, most }) : readText(text, "outside");
}

/** Reads what the app itself has stored, whatever its size: work that was saved once is never refused for it. */
export function readStoredDesign(text: string): DesignReading {
  return readText(text, "own storage");
}

function readText(text: string, origin: TextOrigin): DesignReading {
  // Some editors put a byte order mark first, which JSON does not know.
  const values = origin === "outside" ? LIMITS.values : Infinity;
  const parsed = parseJson(text.replace(/^\uFEFF/, ""), { depth: LIMITS.depth, values });
  return parsed.ok ? checkFile(parsed.value, origin) : refusedReading(parsed.fault);
}

export type Writing = {
  /** Names every value, the typical ones too. Longer; what it says rests on no set of typical values. */
  readonly full?: boolean;
};

/** Writes a design without its typical values; the same design always gives the same text. */
export function writeDesign(design: Design, { full = false }: Writing = {}): string {
  const { title, lesson, settings, variant, variants } = design;
  const content = full ? contentOf((part) => part.options) : contentOf(changedOptions);
  const file = {
    format: "downlead",
    ...(full ? { version: FULL_VERSION } : { version: VERSION, defaults: TYPICAL_SET }),
    title,
    ...(lesson === undefined ? {} : { lesson }),
    ...(settings === undefined
      ? {}
      : { settings: full ? settings : changedValues(settings, USUAL_SETTINGS) }),
    ...content(design),
    ...(variant === undefined ? {} : { variant }),
    ...(variants === undefined ? {} : { variants: variants.map((v) => ({ name: v.name, ...content(v) })) }),
  };
  return `${prettyJson(file)}\n`;
}

function contentOf(optionsOf: (part: Part) => Part["options"]) {
  return ({ parts, wires }: Pick<Design, "parts" | "wires">) => ({
    parts: parts.map((part) => {
      const { id, kind, label, at } = part;
      const options = optionsOf(part);
      return { id, kind, label, ...(Object.keys(options).length === 0 ? {} : { options }), at };
    }),
    wires: wires.map(({ from, to }) => ({ from, to })),
  });
}
