import type { FieldMeta } from "../../../parts/fields.ts";

/** What every kind of field is given. */
export type FieldProps = {
  /** Id of the input, so that a label can point at it. */
  readonly id: string;
  readonly meta: FieldMeta;
  readonly value: unknown;
  /**
   * Tries a value; null when it was taken, else the reason why not, and the old value stays. Tries of one visit to
   * a text field come under one key.
   */
  readonly onTry: (value: unknown, visit?: string) => string | null;
  /** Takes back what a visit has changed; false: it cannot. */
  readonly onTakeBack: (visit: string) => boolean;
  /** Ids of help and error texts. */
  readonly describedBy?: string | undefined;
  /** A compact cell of a table: the column header is the label. */
  readonly inTable?: boolean;
};
