/**
 * The short form of a design inside a link: arrays instead of names, tables for what repeats, and options
 * only where they differ from the kind's defaults. So a released default never changes its value: a better
 * one needs a new mark. `[title, lesson, kinds, ports, parts, wires, settings, variant, variants]`, the last three only where there are any.
 */
import { z } from "zod";
import { kindOf } from "../parts/catalogue.ts";
import type { PartKind } from "../parts/contract.ts";
import type { Design, Part } from "./design.ts";
import { LIMITS } from "./limits.ts";
import { changedOptions } from "./options.ts";

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

/** Four numbers a wire: part, port, part, port. */
const wireEnds = z.array(index);

const compactVariant = z.tuple([z.string(), z.array(compactPart), wireEnds]);

const compactDesign = z.tuple([
  z.string(),
  z.union([z.literal(0), z.string()]),
  z.array(z.string()),
  z.array(z.string()),
  z.array(compactPart),
  wireEnds,
  z.union([z.literal(0), z.record(z.string(), z.unknown())]).optional(),
  /** Name of the variant at work. */
  z.union([z.literal(0), z.string()]).optional(),
  z.array(compactVariant).optional(),
]);

type CompactPart = z.output<typeof compactPart>;
type CompactVariant = z.output<typeof compactVariant>;
type CompactDesign = z.output<typeof compactDesign>;

export function compact(design: Design): CompactDesign {
  const kinds = new Map<string, number>();
  const ports = new Map<string, number>();
  const { title, lesson = 0, settings, variant, variants = [] } = design;
  const [parts, wires] = compactContent(design, kinds, ports);
  const resting = variants.map((v): CompactVariant => [v.name, ...compactContent(v, kinds, ports)]);
  const short: CompactDesign = [title, lesson, [...kinds.keys()], [...ports.keys()], parts, wires];
  const isNamed = variant !== undefined || resting.length > 0;
  if (settings || isNamed) short.push(settings ? { ...settings } : 0);
  if (isNamed) short.push(variant ?? 0);
  if (resting.length > 0) short.push(resting);
  return short;
}

type Content = Pick<Design, "parts" | "wires">;

function compactContent(
  { parts, wires }: Content,
  kinds: Map<string, number>,
  ports: Map<string, number>,
): [CompactPart[], number[]] {
  const places = new Map(parts.map((part, i) => [part.id, i]));
  return [
    parts.map((part) => compactPartOf(part, entry(kinds, part.kind))),
    wires.flatMap(({ from, to }) => [
      places.get(from[0]) ?? 0,
      entry(ports, from[1]),
      places.get(to[0]) ?? 0,
      entry(ports, to[1]),
    ]),
  ];
}

/** The value of a design file of version 1, from a short form that may be anything. */
export function expand(
  value: unknown,
): { ok: true; value: unknown } | { ok: false; why: "too much" | "no design" } {
  if (isTooLong(value)) return { ok: false, why: "too much" };
  const parsed = compactDesign.safeParse(value);
  if (!parsed.success) return { ok: false, why: "no design" };
  const [title, lesson, kinds, ports, parts, wires, settings = 0, variant = 0, variants] = parsed.data;
  const content = (entries: readonly CompactPart[], ends: readonly number[]) =>
    expandedContent({ entries, ends, kinds, ports });
  return {
    ok: true,
    value: {
      format: "downlead",
      version: 1,
      title,
      ...(lesson === 0 ? {} : { lesson }),
      ...(settings === 0 ? {} : { settings }),
      ...content(parts, wires),
      ...(variant === 0 ? {} : { variant }),
      ...(variants ? { variants: variants.map(([name, ...rest]) => ({ name, ...content(...rest) })) } : {}),
    },
  };
}

function expandedContent(o: {
  readonly entries: readonly CompactPart[];
  readonly ends: readonly number[];
  readonly kinds: readonly string[];
  readonly ports: readonly string[];
}) {
  const { entries, ends, kinds, ports } = o;
  const parts = entries.map((part) => expandedPart(part, kinds[part[0]] ?? ""));
  const end = (at: number) => [parts[ends[at] ?? -1]?.id ?? "", ports[ends[at + 1] ?? -1] ?? ""];
  const wires = Array.from({ length: Math.ceil(ends.length / 4) }, (_, i) => ({
    from: end(i * 4),
    to: end(i * 4 + 2),
  }));
  return { parts, wires };
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
  const label = kind && part.label === defaultLabel(linkName(kind), id) ? 0 : part.label;
  const options = changedOptions(part);
  const start = [kindIndex, id, part.at[0], part.at[1]] as const;
  if (Object.keys(options).length > 0) return [...start, label, options];
  return label === 0 ? [...start] : [...start, label];
}

function expandedPart([, id, x, y, label = 0, options = {}]: CompactPart, kindKey: string) {
  const kind = kindOf(kindKey);
  return {
    id: typeof id === "string" ? id : `${kind?.prefix ?? ""}${id}`,
    kind: kindKey,
    label: label === 0 ? defaultLabel(kind ? linkName(kind) : kindKey, id) : label,
    options,
    at: [x, y],
  };
}

/** A label that a link leaves out is made of the name that the kind had when links were first made. */
function linkName({ firstName, name }: PartKind): string {
  return firstName ?? name;
}

function defaultLabel(name: string, id: number | string): string {
  return `${name} ${id}`;
}

function isTooLong(value: unknown): boolean {
  if (!Array.isArray(value)) return false;
  const limits = [0, 0, LIMITS.parts, LIMITS.wires, LIMITS.parts, 4 * LIMITS.wires, 0, 0, LIMITS.variants];
  if (isAnyLonger(value, limits)) return true;
  const variants: unknown = value[8];
  return (
    Array.isArray(variants) &&
    variants.some((v) => Array.isArray(v) && isAnyLonger(v, [0, LIMITS.parts, 4 * LIMITS.wires]))
  );
}

function isAnyLonger(lists: readonly unknown[], limits: readonly number[]): boolean {
  return lists.some((list, i) => Array.isArray(list) && list.length > (limits[i] ?? 0));
}
