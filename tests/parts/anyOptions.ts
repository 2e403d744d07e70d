/** Any options that a kind's schema allows, its corners first of all, made from the description of its fields. */
import fc from "fast-check";
import { z } from "zod";
import type { AnyOptions, PartKind } from "../../src/parts/contract.ts";
import { type FieldMeta, fieldMeta } from "../../src/parts/fields.ts";

export function anyOptions(kind: PartKind): fc.Arbitrary<AnyOptions> {
  return fieldsOf(kind.options).map((raw) => kind.options.parse(raw));
}

function fieldsOf(schema: z.ZodObject): fc.Arbitrary<Record<string, unknown>> {
  const fields: Record<string, fc.Arbitrary<unknown>> = {};
  for (const [key, field] of Object.entries(schema.shape)) {
    if (!(field instanceof z.ZodType)) throw new Error(`${key} is not a field`);
    const meta = fieldMeta(field);
    if (!meta) throw new Error(`${key} has no description`);
    fields[key] = anyValue(meta);
  }
  return fc.record(fields);
}

function anyValue(meta: FieldMeta): fc.Arbitrary<unknown> {
  const { min = 0, max = 1 } = meta;
  switch (meta.control) {
    case "number": {
      const corners = fc.constantFrom(min, max);
      if (meta.step === 1 && Number.isInteger(min)) return fc.oneof(corners, fc.integer({ min, max }));
      return fc.oneof(corners, fc.double({ min, max, noNaN: true }));
    }
    case "choice":
      return fc.constantFrom(...(meta.choices ?? []).map((c) => c.value));
    case "switch":
      return fc.boolean();
    case "text":
      return fc.string({ maxLength: 8 });
    case "rows":
      return meta.row
        ? fc.array(fieldsOf(meta.row), { maxLength: Math.min(4, meta.maxRows ?? 4) })
        : fc.constant([]);
  }
}
