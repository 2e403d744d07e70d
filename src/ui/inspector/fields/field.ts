import type { FieldMeta } from "../../../parts/fields.ts";

/** What every kind of field is given. */
export type FieldProps = {
  /** Id of the input, so that a label can point at it. */
  readonly id: string;
  readonly meta: FieldMeta;
  readonly value: unknown;
  /** Tries a value; null when it was taken, else the reason why not, and the old value stays. */
  readonly onTry: (value: unknown) => string | null;
  /** Ids of help and error texts. */
  readonly describedBy?: string | undefined;
  /** A compact cell of a table: the column header is the label. */
  readonly inTable?: boolean;
};
