/** Limits of one's own as a small file, to carry from one design to another and to colleagues. */
import type { Design } from "./design.ts";
import type { Edit } from "./edits/edit.ts";
import { setOwnProfile } from "./edits/settings.ts";
import { parseJson } from "./json.ts";
import { prettyJson } from "./prettyJson.ts";
import { isObject } from "./raw.ts";
import type { Settings } from "./settings.ts";
import { quotedText, shownNumber } from "./shown.ts";

const FORMAT = "downlead-limits";
const VERSION = 1;

/** Longer than any such file is [characters]; its lists are bounded by the settings. */
const MOST_LENGTH = 100_000;
const MOST_VALUES = 2000;
const MOST_DEPTH = 6;

/** What stands in the file, under which name of the settings. */
const FIELDS = {
  name: "ownName",
  source: "ownSource",
  limits: "ownLimits",
  isolation: "ownIsolation",
  reserveDb: "ownReserveDb",
} as const satisfies Readonly<Record<string, keyof Settings>>;

/** Every value by its name; the same limits always give the same text. */
export function writeProfileFile(settings: Settings): string {
  const values = Object.entries(FIELDS).map(([name, key]) => [name, settings[key]]);
  return `${prettyJson({ format: FORMAT, version: VERSION, ...Object.fromEntries(values) })}\n`;
}

/**
 * Takes the limits of a file into a design, which is then judged by them; a refusal says what is wrong with the file.
 * What the file leaves out stands at its typical value, and what this edition does not know is a fault.
 */
export function takeProfileFile(design: Design, text: string): Edit {
  if (text.length > MOST_LENGTH) return refused("it is too large");
  const parsed = parseJson(text.replace(/^\uFEFF/, ""), { depth: MOST_DEPTH, values: MOST_VALUES });
  if (!parsed.ok) {
    const { fault } = parsed;
    return refused(
      fault.type === "syntax"
        ? `its text is damaged at line ${shownNumber(fault.line)}, column ${shownNumber(fault.column)}`
        : "it is too large",
    );
  }
  const file = parsed.value;
  if (!isObject(file) || file.format !== FORMAT) return refused("another program may have written it");
  const { format: _format, version, ...values } = file;
  if (typeof version === "number" && Number.isInteger(version) && version > VERSION)
    return refused(`a newer edition wrote it, as version ${shownNumber(version)}`);
  if (version !== VERSION) return refused(`its version should be ${shownNumber(VERSION)}`);
  const unknown = Object.keys(values).find((name) => !Object.hasOwn(FIELDS, name));
  if (unknown !== undefined) return refused(`this edition does not know its value ${quotedText(unknown)}`);
  const known = Object.entries(FIELDS).map(([name, key]) => [key, values[name]]);
  return setOwnProfile(design, Object.fromEntries(known));
}

function refused(why: string): Edit {
  return { ok: false, reason: `These limits cannot be read: ${why}.` };
}
