/**
 * The short form of a design inside a link: arrays instead of names, tables for what repeats, and options
 * only where they differ from the kind's defaults. So a released default never changes its value: a better
 * one needs a new mark. `[title, lesson, kinds, ports, parts, wires, settings]`, the last only where there are any.
 */
import { z } from "zod";
import { defaultOptions, kindOf } from "../parts/catalogue.ts";
import type { AnyOptions, PartKind } from "../parts/contract.ts";
import type { Design, Part } from "./design.ts";
import { LIMITS } from "./limits.ts";
import { isSameValue } from "./options.ts";

const index = z.int().min(0);

/**
 * Kind; id (a number counts from the kind's prefix: 3 is "lnb3"); x; y; label (0: the default one, which
 * has the same number); options that differ from the defaults.
 */
const compactPart = z.tuple([
  index,
  z.union([index, z.string()]),
  z.number(),
  z.number(),
  z.union([z.literal(0), z.string()]).optional(),
  z.record(z.string(), z.unknown()).optional(),
]);

const compactDesign = z.tuple([
  z.string(),
  z.union([z.literal(0), z.string()]),
  z.array(z.string()),
  z.array(z.string()),
  z.array(compactPart),
  /** Four numbers a wire: part, port, part, port. */
  z.array(index),
  z.record(z.string(), z.unknown()).optional(),
]);

type CompactPart = z.output<typeof compactPart>;
type CompactDesign = z.output<typeof compactDesign>;

export function compact(design: Design): CompactDesign {
  const kinds = new Map<string, number>();
  const ports = new Map<string, number>();
  const places = new Map(design.parts.map((part, i) => [part.id, i]));
  const parts = design.parts.map((part) => compactPartOf(part, entry(kinds, part.kind)));
  const wires = design.wires.flatMap(({ from, to }) => [
    places.get(from[0]) ?? 0,
    entry(ports, from[1]),
    places.get(to[0]) ?? 0,
    entry(ports, to[1]),
  ]);
  const [kindNames, portNames] = [[...kinds.keys()], [...ports.keys()]];
  const settings = design.settings ? { ...design.settings } : undefined;
  const short: CompactDesign = [design.title, design.lesson ?? 0, kindNames, portNames, parts, wires];
  if (settings) short.push(settings);
  return short;
}

/** The value of a design file of version 1, from a short form that may be anything. */
export function expand(value: unknown): { ok: true; value: unknown } | { ok: false; problem: string } {
  if (isTooLong(value)) return { ok: false, problem: "more parts or wires than a design can hold" };
  const parsed = compactDesign.safeParse(value);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return { ok: false, problem: `entry [${issue?.path.map(String).join("][")}]: ${issue?.message}` };
  }
  const [title, lesson, kinds, ports, entries, ends, settings] = parsed.data;
  const parts = entries.map((part) => expandedPart(part, kinds[part[0]] ?? ""));
  const end = (at: number) => [parts[ends[at] ?? -1]?.id ?? "", ports[ends[at + 1] ?? -1] ?? ""];
  const wires = Array.from({ length: Math.ceil(ends.length / 4) }, (_, i) => ({
    from: end(i * 4),
    to: end(i * 4 + 2),
  }));
  const named = lesson === 0 ? {} : { lesson };
  const set = settings === undefined ? {} : { settings };
  return { ok: true, value: { format: "downlead", version: 1, title, ...named, ...set, parts, wires } };
}

/** Place of a text in a table that grows as it is asked. */
function entry(table: Map<string, number>, text: string): number {
  const place = table.get(text) ?? table.size;
  table.set(text, place);
  return place;
}

function compactPartOf(part: Part, kindIndex: number): CompactPart {
  const kind = kindOf(part.kind);
  const prefix = kind?.prefix ?? "";
  const digits = part.id.startsWith(prefix) ? part.id.slice(prefix.length) : "";
  const id = /^(?:0|[1-9]\d{0,8})$/.test(digits) ? Number(digits) : part.id;
  const label = kind && part.label === defaultLabel(kind.name, id) ? 0 : part.label;
  const defaults = kind ? defaultsOf(kind) : {};
  const changed = Object.entries(part.options).filter(([key, value]) => !isSameValue(value, defaults[key]));
  const start = [kindIndex, id, part.at[0], part.at[1]] as const;
  if (changed.length > 0) return [...start, label, Object.fromEntries(changed)];
  return label === 0 ? [...start] : [...start, label];
}

// Worked out once for each kind: a dish alone brings a plan of 80 rows.
const known = new WeakMap<PartKind, AnyOptions>();

function defaultsOf(kind: PartKind): AnyOptions {
  const defaults = known.get(kind) ?? defaultOptions(kind);
  known.set(kind, defaults);
  return defaults;
}

function expandedPart([, id, x, y, label = 0, options = {}]: CompactPart, kindKey: string) {
  const kind = kindOf(kindKey);
  return {
    id: typeof id === "string" ? id : `${kind?.prefix ?? ""}${id}`,
    kind: kindKey,
    label: label === 0 ? defaultLabel(kind?.name ?? kindKey, id) : label,
    options,
    at: [x, y],
  };
}

function defaultLabel(name: string, id: number | string): string {
  return `${name} ${id}`;
}

function isTooLong(value: unknown): boolean {
  if (!Array.isArray(value)) return false;
  const limits = [0, 0, LIMITS.parts, LIMITS.wires, LIMITS.parts, 4 * LIMITS.wires];
  return value.some((list: unknown, i) => Array.isArray(list) && list.length > (limits[i] ?? 0));
}
