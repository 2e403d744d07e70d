/** Patches that were written down before: checked as a file is, so that what they lead to is a whole design. */
import { z } from "zod";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "./design.ts";
import { checkOptions } from "./options.ts";
import type { Patch } from "./patch.ts";
import { SETTINGS } from "./settings.ts";

const end = z.tuple([z.string(), z.string()]);
const WIRE = z.object({ from: end, to: end });

/** Options that a later edition added are filled in, as they are for a file. */
const PART = z
  .object({
    id: z.string(),
    kind: z.string(),
    label: z.string(),
    options: z.record(z.string(), z.unknown()),
    at: z.tuple([z.number(), z.number()]),
  })
  .transform((part, context): Part => {
    const kind = kindOf(part.kind);
    const checked = kind && checkOptions(kind, part.options);
    if (checked?.ok) return { ...part, options: checked.options };
    context.addIssue("not a part of the catalogue");
    return z.NEVER;
  });

const changeOf = <T extends z.ZodType>(value: T) => z.tuple([value.nullable(), value.nullable()]);
const index = z.number().int().min(0);

function listOf<T extends z.ZodType>(entry: T) {
  const placed = z.array(z.tuple([index, entry]));
  return z.object({ out: placed, in: placed, changed: z.array(z.tuple([entry, entry])) });
}

const PATCH = z.object({
  title: changeOf(z.string()).exactOptional(),
  lesson: changeOf(z.string()).exactOptional(),
  settings: changeOf(SETTINGS).exactOptional(),
  sheets: z
    .array(
      z.object({
        was: index.nullable(),
        is: index.nullable(),
        name: changeOf(z.string()),
        parts: listOf(PART).exactOptional(),
        wires: listOf(WIRE).exactOptional(),
      }),
    )
    .exactOptional(),
});

/** Null for whatever is no patch. */
export function readPatch(value: unknown): Patch | null {
  const parsed = PATCH.safeParse(value);
  return parsed.success ? parsed.data : null;
}
