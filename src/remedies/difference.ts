/** What differs between two designs, part by part and in words. */
import type { Design, Part, Wire } from "../design/design.ts";
import { wireId } from "../design/design.ts";
import { isSameValue } from "../design/options.ts";
import { kindOf } from "../parts/catalogue.ts";
import { type FieldMeta, fieldMeta } from "../parts/fields.ts";
import { plural } from "../words/plural.ts";

export type ChangedPart = {
  readonly before: Part;
  readonly after: Part;
  /** Options that differ, when the kind is the same. */
  readonly options: readonly string[];
};

export type Difference = {
  readonly added: readonly Part[];
  readonly removed: readonly Part[];
  /** Parts of another kind or with other options; moved or renamed ones are not among them. */
  readonly changed: readonly ChangedPart[];
  readonly wiresAdded: readonly Wire[];
  readonly wiresRemoved: readonly Wire[];
};

/** Parts are the same when they bear the same id. */
export function difference(before: Design, after: Design): Difference {
  const old = new Map(before.parts.map((p) => [p.id, p]));
  const now = new Map(after.parts.map((p) => [p.id, p]));
  const oldWires = new Set(before.wires.map(wireId));
  const newWires = new Set(after.wires.map(wireId));
  return {
    added: after.parts.filter((p) => !old.has(p.id)),
    removed: before.parts.filter((p) => !now.has(p.id)),
    changed: after.parts.flatMap((part): ChangedPart[] => {
      const former = old.get(part.id);
      if (!former || former === part) return [];
      if (former.kind !== part.kind) return [{ before: former, after: part, options: [] }];
      const options = Object.keys(part.options).filter(
        (key) => !isSameValue(former.options[key], part.options[key]),
      );
      return options.length > 0 ? [{ before: former, after: part, options }] : [];
    }),
    wiresAdded: after.wires.filter((w) => !oldWires.has(wireId(w))),
    wiresRemoved: before.wires.filter((w) => !newWires.has(wireId(w))),
  };
}

/** One line for each part that comes, goes or changes; new wires alone are said in one line. */
export function inWords(diff: Difference): readonly string[] {
  const lines = [
    ...diff.added.map((p) => `Add ${named(p)}${detail(p)}`),
    ...diff.removed.map((p) => `Take ${named(p)} away`),
    ...diff.changed.map(changeInWords),
  ];
  const rewired = diff.wiresAdded.length;
  if (lines.length === 0 && rewired + diff.wiresRemoved.length > 0)
    lines.push(
      rewired === 0
        ? plural(diff.wiresRemoved.length, {
            one: "Take a wire off",
            other: (n) => `Take ${n} wires off`,
          })
        : plural(rewired, { one: "Lead a wire anew", other: (n) => `Lead ${n} wires anew` }),
    );
  return lines;
}

function named(part: Part): string {
  return `“${part.label || part.id}”`;
}

function detail(part: Part): string {
  const caption = kindOf(part.kind)?.caption(part.options) ?? "";
  return caption ? ` (${caption})` : "";
}

function changeInWords({ before, after, options }: ChangedPart): string {
  const name = kindOf(after.kind)?.name ?? after.kind;
  if (before.kind !== after.kind) return `Replace ${named(before)} by: ${name}${detail(after)}`;
  const each = options.map((key) => {
    const meta = metaOf(after.kind, key);
    return `${meta?.label ?? key}: ${valueInWords(before.options[key], meta)} → ${valueInWords(after.options[key], meta)}`;
  });
  return `${named(after)}: ${each.join("; ")}`;
}

function metaOf(kind: string, key: string): FieldMeta | undefined {
  const schema = kindOf(kind)?.options.shape[key];
  return schema && fieldMeta(schema);
}

function valueInWords(value: unknown, meta: FieldMeta | undefined): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return `${Number(value.toFixed(2))}${meta?.unit ? ` ${meta.unit}` : ""}`;
  if (Array.isArray(value)) return rowsInWords(value);
  return meta?.choices?.find((c) => c.value === value)?.label ?? String(value);
}

/** A list by the first number of each row: user bands 1 and 2, channels 22, 25, 28. */
function rowsInWords(rows: readonly unknown[]): string {
  const firsts = rows.map((row) => {
    const [first] = typeof row === "object" && row !== null ? Object.values(row) : [row];
    return String(first);
  });
  return firsts.join(", ") || "none";
}
