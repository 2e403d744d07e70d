/** Everything that a part says of itself, in words, without working anything out. */

import { type Design, type Part, type PartId, type PortRef, wireId } from "../../../design/design.ts";
import { portOf } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { type FieldMeta, fieldMeta } from "../../../parts/fields.ts";
import { numeral } from "../../../words/numbers.ts";

export type PlainPart = {
  readonly id: PartId;
  readonly label: string;
  readonly kind: string;
  readonly values: readonly { readonly label: string; readonly value: string }[];
  readonly wires: readonly { readonly id: string; readonly words: string }[];
};

/** All parts of a design, in its order, each with its values and wires. */
export function plainParts(design: Design): readonly PlainPart[] {
  const byId = new Map(design.parts.map((part) => [part.id, part]));
  const wires = new Map<PartId, PlainPart["wires"][number][]>();
  const end = ([id, port]: PortRef) => {
    const part = byId.get(id);
    return `${nameOf(part, id)}, ${(part && portOf(part, port)?.label) ?? port}`;
  };
  const note = (id: PartId, wire: PlainPart["wires"][number]) => {
    const list = wires.get(id);
    if (list) list.push(wire);
    else wires.set(id, [wire]);
  };
  for (const wire of design.wires) {
    const id = wireId(wire);
    note(wire.to[0], { id, words: `from ${end(wire.from)}` });
    note(wire.from[0], { id, words: `to ${end(wire.to)}` });
  }
  return design.parts.map((part) => ({
    id: part.id,
    label: nameOf(part, part.id),
    kind: kindOf(part.kind)?.name ?? part.kind,
    values: valuesOf(part),
    wires: wires.get(part.id) ?? [],
  }));
}

function nameOf(part: Part | undefined, id: PartId): string {
  return `“${part?.label || id}”`;
}

function valuesOf(part: Part): PlainPart["values"] {
  return Object.entries(kindOf(part.kind)?.options.shape ?? {}).flatMap(([key, schema]) => {
    const meta = fieldMeta(schema);
    return meta ? [{ label: meta.label, value: valueWords(part.options[key], meta) }] : [];
  });
}

function valueWords(value: unknown, meta: FieldMeta): string {
  if (Array.isArray(value)) return value.map((row) => rowWords(row, meta)).join("; ") || "none";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return `${numeral(value, 6)}${meta.unit ? ` ${meta.unit}` : ""}`;
  return meta.choices?.find((c) => c.value === value)?.label ?? (String(value ?? "") || "empty");
}

function rowWords(row: unknown, { row: schema }: FieldMeta): string {
  if (typeof row !== "object" || row === null) return String(row);
  const fields = new Map(Object.entries(schema?.shape ?? {}));
  return Object.entries(row)
    .map(([key, value]) => {
      const field = fields.get(key);
      const meta = field && fieldMeta(field);
      return meta ? `${meta.label} ${valueWords(value, meta)}` : String(value);
    })
    .join(", ");
}
