/**
 * The file format: the shape that is read, and the steps from each older version. It is kept apart from the
 * document's own types, which may change. Its complaints are put into words by `fileFault.ts`, not here.
 *
 * Version 1 names every option. Version 2 leaves out what stands at its typical value, under the number of the
 * set of typical values ("defaults").
 */
import { z } from "zod";
import { isUsableId, LIMITS } from "./limits.ts";
import { type Fields, isObject } from "./raw.ts";
import { SETTINGS } from "./settings.ts";

/** The version that is written today. */
export const VERSION = 2;

/** The version that names every value: written on request, and readable by every edition. */
export const FULL_VERSION = 1;

const id = z.string().refine(isUsableId);

const coordinate = z
  .number()
  .min(-LIMITS.reach)
  .max(LIMITS.reach)
  // Minus zero is zero: JSON.stringify does not tell them apart.
  .transform((value) => value + 0);

const end = z.tuple([id, z.string().max(LIMITS.idLength)]);

/** Parts and wires: of the design itself, and of each variant. */
const content = {
  parts: z.array(
    z.object({
      id,
      kind: z.string(),
      // What a file written by hand may leave out is filled in by the reader.
      label: z.string().max(LIMITS.labelLength).optional(),
      // The kind looks at its own options; what else there may be is not gone through one by one.
      options: z.custom<Fields>(isObject).default({}),
      at: z.tuple([coordinate, coordinate]).optional(),
    }),
  ),
  wires: z.array(z.object({ from: end, to: end })),
};

const variantName = z
  .string()
  .max(LIMITS.variantNameLength)
  .refine((name) => name.trim() !== "");

export const designFile = z.object({
  title: z.string().max(LIMITS.titleLength).default("Untitled design"),
  lesson: z.string().max(LIMITS.lessonLength).optional(),
  settings: SETTINGS.optional(),
  ...content,
  variant: variantName.optional(),
  variants: z.array(z.object({ name: variantName, ...content })).optional(),
});

export type DesignFile = z.output<typeof designFile>;

/**
 * Steps from an old version to the one after it, by the version they start from. A step takes the parsed
 * JSON of its version and returns that of the next; it is never changed once released.
 */
export const MIGRATIONS: ReadonlyMap<
  number,
  (file: Readonly<Record<string, unknown>>) => Record<string, unknown>
> = new Map([
  // What a file of version 1 leaves out means the first set of typical values, for it knew no other.
  [1, (file) => ({ ...file, version: 2, defaults: 1 })],
]);
