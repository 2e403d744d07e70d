import type { ReactNode } from "react";
import { ScrollBox } from "./ScrollBox.tsx";
import styles from "./Table.module.css";

export type Column<Row> = {
  readonly head: string;
  /** Printed quietly behind the heading. */
  readonly unit?: string;
  /** Figures stand in a face of their own and are not broken. */
  readonly isNumber?: boolean;
  readonly cell: (row: Row, at: number) => ReactNode;
  /** Whether a cell is short of what it should be; its words say so too. */
  readonly isShort?: (row: Row) => boolean;
};

type Props<Row> = {
  /** What the table holds, for a screen reader. */
  readonly label: string;
  /** The first one names the rows. */
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row, at: number) => string | number;
  /** What is there, but does not count now. */
  readonly isAsleep?: (row: Row) => boolean;
  /** Words that belong to the figures and scroll with them. */
  readonly children?: ReactNode;
};

/** Figures in rows and columns; wider than its pane, it scrolls by itself. */
export function Table<Row>({ label, columns, rows, keyOf, isAsleep, children }: Props<Row>) {
  return (
    <ScrollBox className={styles.scroll ?? ""} label={label}>
      <table className={styles.table}>
        <thead>
          <tr>
            {columns.map(({ head, unit }) => (
              <th key={head} scope="col">
                {head}
                {unit === undefined ? null : <span className="quiet"> {unit}</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, at) => (
            <tr key={keyOf(row, at)} className={isAsleep?.(row) ? styles.asleep : undefined}>
              {columns.map((column, n) => {
                const Cell = n === 0 ? "th" : "td";
                return (
                  <Cell
                    key={column.head}
                    scope={n === 0 ? "row" : undefined}
                    className={classOf(column, row)}
                  >
                    {column.cell(row, at)}
                  </Cell>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
      {children}
    </ScrollBox>
  );
}

function classOf<Row>({ isNumber, isShort }: Column<Row>, row: Row): string | undefined {
  const names = [isNumber ? "number" : "", isShort?.(row) ? styles.short : ""].filter((name) => name !== "");
  return names.length > 0 ? names.join(" ") : undefined;
}
