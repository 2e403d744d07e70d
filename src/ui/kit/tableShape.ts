/** What a table is told: its columns, its rows, and what is particular about them. */
import type { ReactNode } from "react";

export type Column<Row> = {
  readonly head: string;
  /** Tells columns apart whose headings can be alike. */
  readonly key?: string;
  /** Printed where the heading has no room; the heading is still read out. */
  readonly sign?: string;
  /** Printed quietly behind the heading. Figures of one unit stand at the right, one below the other. */
  readonly unit?: string | undefined;
  /** What the heading means, for a pointer that rests on it. */
  readonly help?: string | undefined;
  /** How wide it is [% of the table], so that tables below each other line up. */
  readonly share?: number | undefined;
  /** Figures stand in a face of their own and are not broken. */
  readonly isNumber?: boolean;
  readonly cell: (row: Row, at: number) => ReactNode;
  /** Whether a cell is short of what it should be; its words say so too. */
  readonly isShort?: (row: Row) => boolean;
  /** The heading can be pressed for the order of the rows. */
  readonly order?: ColumnOrder;
};

type ColumnOrder = {
  /** Null: the rows stand in the order of another column. */
  readonly now: "ascending" | "descending" | null;
  readonly onPress: () => void;
};

/** Rows that belong together, under a heading of their own. */
export type RowGroup<Row> = {
  readonly key: string;
  readonly head: ReactNode;
  /** What the heading has under the further columns; without any it takes the whole width. */
  readonly cells?: readonly ReactNode[];
  readonly rows: readonly Row[];
  readonly isAsleep?: boolean;
};

type Rows<Row> = { readonly rows: readonly Row[] } | { readonly groups: readonly RowGroup<Row>[] };

export type TableProps<Row> = Rows<Row> & {
  /** What the table holds, for a screen reader. */
  readonly label: string;
  readonly columns: readonly Column<Row>[];
  readonly keyOf: (row: Row, at: number) => string | number;
  /** Which column names the rows, by default the first; null where only their groups have names. */
  readonly nameAt?: number | null;
  /** It is never wider than its pane: nothing to scroll, and its heading stays in view. */
  readonly fits?: boolean;
  /** Paper has nothing to scroll. */
  readonly isOnPaper?: boolean;
  /** Boxes to be filled in: each has its lines, arrow keys go from one to the next, and the names stay in view. */
  readonly isGrid?: boolean;
  /** What is there, but does not count now. */
  readonly isAsleep?: (row: Row) => boolean;
  /** Where something gets lost; the words of the row say so too. */
  readonly isLost?: (row: Row) => boolean;
  readonly isCurrent?: (row: Row, at: number) => boolean | "step";
  /** Looks like the current row; what it means is told elsewhere. */
  readonly isMarked?: (row: Row) => boolean;
  /** What is to be said about a row, in lines below it. */
  readonly linesBelow?: (row: Row) => readonly ReactNode[];
  readonly onPress?: (row: Row) => void;
  readonly onDoublePress?: (row: Row) => void;
  /** Words that belong to the figures and scroll with them. */
  readonly children?: ReactNode;
};

/** Class names in one attribute; undefined where there are none. */
export function classNames(...names: readonly (string | false | undefined)[]): string | undefined {
  return names.filter(Boolean).join(" ") || undefined;
}
