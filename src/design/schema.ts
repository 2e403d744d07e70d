/** The file format, version by version. It is kept apart from the document's own types, which may change. */
import { z } from "zod";
import { isUsableId, LIMITS } from "./limits.ts";
import { SETTINGS } from "./settings.ts";

/** The version that is written today. */
export const VERSION = 1;

const id = z
  .string("expected a text")
  .refine(isUsableId, `an id has 1 to ${LIMITS.idLength} letters, digits, "-" or "_"`);

const coordinate = z
  .number("expected a number")
  .min(-LIMITS.reach, `at least ${-LIMITS.reach}`)
  .max(LIMITS.reach, `at most ${LIMITS.reach}`)
  // Minus zero is zero: JSON.stringify does not tell them apart.
  .transform((value) => value + 0);

const end = z.tuple([id, z.string("expected a text").max(LIMITS.idLength, "too long for a port")], {
  error: "expected [part, port]",
});

const text = (maxLength: number) =>
  z.string("expected a text").max(maxLength, `at most ${maxLength} characters`);

/** Parts and wires: of the design itself, and of each variant. */
const content = {
  parts: z.array(
    z.object(
      {
        id,
        kind: z.string("expected a text"),
        // What a file written by hand may leave out is filled in by the reader.
        label: text(LIMITS.labelLength).optional(),
        options: z.record(z.string(), z.unknown(), "expected options in braces").default({}),
        at: z.tuple([coordinate, coordinate], { error: "expected [x, y]" }).optional(),
      },
      "expected a part in braces",
    ),
    "expected a list of parts",
  ),
  wires: z.array(z.object({ from: end, to: end }, "expected a wire in braces"), "expected a list of wires"),
};

const variantName = text(LIMITS.variantNameLength).refine(
  (name) => name.trim() !== "",
  "a variant needs a name",
);

export const fileV1 = z.object(
  {
    format: z.literal("downlead"),
    version: z.literal(1),
    title: text(LIMITS.titleLength).default("Untitled design"),
    lesson: text(LIMITS.lessonLength).optional(),
    settings: SETTINGS.optional(),
    ...content,
    variant: variantName.optional(),
    variants: z
      .array(
        z.object({ name: variantName, ...content }, "expected a variant in braces"),
        "expected a list of variants",
      )
      .optional(),
  },
  "expected a design in braces",
);

export type FileV1 = z.output<typeof fileV1>;

/**
 * Steps from an old version to the one after it, by the version they start from. A step takes the parsed
 * JSON of its version and returns that of the next; it is never changed once released.
 */
export const MIGRATIONS: ReadonlyMap<
  number,
  (file: Readonly<Record<string, unknown>>) => Record<string, unknown>
> = new Map();
