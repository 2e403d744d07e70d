/** From parsed JSON to a document: everything is checked, and the first fault is named with its place. */
import { kindOf } from "../parts/catalogue.ts";
import type { Design, Part, Wire } from "./design.ts";
import { LIMITS } from "./limits.ts";
import { portOf, portsOf } from "./lookup.ts";
import { checkOptions } from "./options.ts";
import { type FileV1, fileV1, MIGRATIONS, VERSION } from "./schema.ts";

export type Reading =
  | {
      readonly ok: true;
      readonly design: Design;
      /** What was in the file but is not in the design, one sentence each. */
      readonly notes: readonly string[];
    }
  | {
      readonly ok: false;
      /** What is wrong and where, in one sentence. */
      readonly problem: string;
    };

const MOST_NOTES = 20;

/** Checks the value of a design file. */
export function checkFile(value: unknown): Reading {
  const problem = notADesign(value) ?? tooLarge(value);
  if (problem !== null) return { ok: false, problem };
  const parsed = fileV1.safeParse(migrated(value));
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return fault(value, issue?.path ?? [], issue?.message ?? "not a design");
  }
  return checkDesign(parsed.data);
}

type Fields = Readonly<Record<string, unknown>>;

function isObject(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function notADesign(value: unknown): string | null {
  if (!isObject(value)) return "This is not a design: expected one object in braces.";
  if (value.format !== "downlead") return 'This is not a design: "format" should be "downlead".';
  const version = value.version;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return `This is not a design: "version" should be a whole number from 1 to ${VERSION}.`;
  }
  if (version > VERSION) {
    return `"version" is ${version}: the file was written by a newer edition; this one reads up to version ${VERSION}.`;
  }
  return null;
}

/** Counts before anything is looked at one by one. */
function tooLarge(file: unknown): string | null {
  if (!isObject(file)) return null;
  for (const list of ["parts", "wires"] as const) {
    const entries = file[list];
    if (Array.isArray(entries) && entries.length > LIMITS[list]) {
      return `${list}: ${entries.length} are too many; a design holds at most ${LIMITS[list]}.`;
    }
  }
  const parts = Array.isArray(file.parts) ? file.parts : [];
  for (const [i, part] of parts.entries()) {
    if (!isObject(part) || !isObject(part.options)) continue;
    for (const [key, list] of Object.entries(part.options)) {
      if (Array.isArray(list) && list.length > LIMITS.listLength) {
        return `${placeOf(file, ["parts", i])}: options.${shortened(key)}: ${list.length} entries are too many, at most ${LIMITS.listLength}.`;
      }
    }
  }
  return null;
}

function migrated(file: unknown): unknown {
  let current = file;
  while (isObject(current)) {
    const step = MIGRATIONS.get(Number(current.version));
    if (!step) return current;
    current = step(current);
  }
  return current;
}

function checkDesign(file: FileV1): Reading {
  const notes: string[] = [];
  const parts = new Map<string, Part>();
  for (const [i, entry] of file.parts.entries()) {
    const here = ["parts", i];
    if (parts.has(entry.id)) return fault(file, here, "another part has the same id");
    const kind = kindOf(entry.kind);
    if (!kind) return fault(file, here, `unknown kind ${JSON.stringify(shortened(entry.kind))}`);
    const checked = checkOptions(kind, entry.options);
    if (!checked.ok) return fault(file, [...here, "options", ...checked.path], checked.message);
    for (const key of Object.keys(entry.options)) {
      if (Object.hasOwn(kind.options.shape, key)) continue;
      notes.push(`${placeOf(file, here)}: option "${shortened(key)}" is not known and was left out.`);
    }
    const { id, label = id } = entry;
    parts.set(id, { id, kind: entry.kind, label, options: checked.options, at: entry.at ?? cell(i) });
  }
  const problem = wireProblem(file, parts);
  if (problem) return problem;
  const { title, lesson, settings } = file;
  const design: Design = {
    title,
    ...(lesson === undefined ? {} : { lesson }),
    ...(settings === undefined ? {} : { settings }),
    parts: [...parts.values()],
    wires: file.wires,
  };
  return { ok: true, design, notes: shortList(notes) };
}

function shortList(notes: readonly string[]): readonly string[] {
  if (notes.length <= MOST_NOTES) return notes;
  const more = notes.length - MOST_NOTES;
  return [...notes.slice(0, MOST_NOTES), `${more} more options are not known and were left out.`];
}

function wireProblem(file: FileV1, parts: ReadonlyMap<string, Part>): Reading | null {
  const taken = new Map<string, number>();
  for (const [i, wire] of file.wires.entries()) {
    for (const end of ["from", "to"] as const) {
      const problem = endProblem(wire, end, parts);
      if (problem !== null) return fault(file, ["wires", i, end], problem);
      const port = wire[end].join("/");
      const other = taken.get(port);
      if (other !== undefined) {
        return fault(
          file,
          ["wires", i, end],
          `port "${port}" is taken by wires[${other}]; a port takes one wire`,
        );
      }
      taken.set(port, i);
    }
    const [source, target] = [mediumOf(wire.from, parts), mediumOf(wire.to, parts)];
    if (source !== target) {
      return fault(file, ["wires", i], `joins a ${source} port to a ${target} port`);
    }
  }
  return null;
}

function endProblem(wire: Wire, end: "from" | "to", parts: ReadonlyMap<string, Part>): string | null {
  const [id, portId] = wire[end];
  const part = parts.get(id);
  if (!part) return `there is no part "${id}"`;
  const port = portOf(part, portId);
  if (!port) {
    const known = portsOf(part).map((each) => each.id);
    const some = known.length > 12 ? [...known.slice(0, 12), "…"] : known;
    return `part "${id}" has no port ${JSON.stringify(portId)}; it has ${some.join(", ")}`;
  }
  if (end === "from" && port.side === "in")
    return `"${id}/${portId}" is an input; a wire starts at an output`;
  if (end === "to" && port.side === "out") return `"${id}/${portId}" is an output; a wire ends at an input`;
  return null;
}

function mediumOf([id, port]: Wire["from"], parts: ReadonlyMap<string, Part>): string {
  const part = parts.get(id);
  return (part && portOf(part, port)?.medium) ?? "missing";
}

/** Where a part goes that came without a place: rows of eight [px]. */
function cell(index: number): readonly [number, number] {
  return [(index % 8) * 240, Math.floor(index / 8) * 160];
}

function fault(file: unknown, path: readonly PropertyKey[], message: string): Reading {
  const place = placeOf(file, path);
  return { ok: false, problem: `${place === "" ? "" : `${place}: `}${message}.` };
}

/** `parts[3] "lnb9": options.lengthM`: the path, with the id of the part it lies in. */
function placeOf(file: unknown, path: readonly PropertyKey[]): string {
  const [list, index, ...rest] = path;
  const step = (key: PropertyKey) => (typeof key === "number" ? `[${key}]` : `.${shortened(String(key))}`);
  if (list !== "parts" || typeof index !== "number") {
    return path.map(step).join("").replace(/^\./, "");
  }
  const entries = isObject(file) ? file.parts : undefined;
  const entry: unknown = Array.isArray(entries) ? entries[index] : undefined;
  const id = isObject(entry) && typeof entry.id === "string" ? ` "${shortened(entry.id)}"` : "";
  const inner = rest.map(step).join("").replace(/^\./, "");
  return `parts[${index}]${id}${inner === "" ? "" : `: ${inner}`}`;
}

/** Foreign text in a message stays short. */
function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
