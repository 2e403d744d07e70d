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

type Props<Row> = Rows<Row> & {
  /** What the table holds, for a screen reader. */
  readonly label: string;
  readonly columns: readonly Column<Row>[];
  readonly keyOf: (row: Row, at: number) => string | number;
  /** The first column names the rows, unless only their groups have names. */
  readonly isUnnamed?: boolean;
  /** It is never wider than its pane: nothing to scroll, and its heading stays in view. */
  readonly fits?: boolean;
  /** What is there, but does not count now. */
  readonly isAsleep?: (row: Row) => boolean;
  readonly isCurrent?: (row: Row) => boolean;
  readonly onPress?: (row: Row) => void;
  readonly onDoublePress?: (row: Row) => void;
  /** Words that belong to the figures and scroll with them. */
  readonly children?: ReactNode;
};

/** Figures in rows and columns; wider than its pane, it scrolls by itself. */
export function Table<Row>(props: Props<Row>) {
  const { label, columns, fits = false, children } = props;
  const table = (
    <table
      className={fits ? `${styles.table} ${styles.fits}` : styles.table}
      aria-label={fits ? label : undefined}
    >
      <thead>
        <tr>
          {columns.map((column) => (
            <Heading key={column.head} column={column} />
          ))}
        </tr>
      </thead>
      {"rows" in props ? (
        <tbody>
          <TableRows table={props} rows={props.rows} />
        </tbody>
      ) : (
        props.groups.map((group) => <Group key={group.key} table={props} group={group} />)
      )}
    </table>
  );
  if (fits)
    return (
      <>
        {table}
        {children}
      </>
    );
  return (
    <ScrollBox className={styles.scroll ?? ""} label={label}>
      {table}
      {children}
    </ScrollBox>
  );
}

function Heading<Row>({ column }: { readonly column: Column<Row> }) {
  const { head, unit, order } = column;
  const words = (
    <>
      {head}
      {unit === undefined ? null : <span className="quiet"> {unit}</span>}
    </>
  );
  if (!order) return <th scope="col">{words}</th>;
  return (
    <th scope="col" aria-sort={order.now ?? undefined}>
      <button type="button" className={styles.order} onClick={order.onPress}>
        {words}
        <span aria-hidden>{order.now ? ORDER_SIGNS[order.now] : ""}</span>
      </button>
    </th>
  );
}

const ORDER_SIGNS = { ascending: " ▴", descending: " ▾" } as const;

type GroupProps<Row> = { readonly table: Props<Row>; readonly group: RowGroup<Row> };

function Group<Row>({ table, group }: GroupProps<Row>) {
  const { head, cells, rows, isAsleep } = group;
  return (
    <tbody>
      <tr className={isAsleep ? `${styles.group} ${styles.asleep}` : styles.group}>
        <th scope="rowgroup" colSpan={cells ? undefined : table.columns.length}>
          {head}
        </th>
        {cells?.map((cell, n) => (
          <td key={table.columns[n + 1]?.head}>{cell}</td>
        ))}
      </tr>
      <TableRows table={table} rows={rows} />
    </tbody>
  );
}

type RowsProps<Row> = { readonly table: Props<Row>; readonly rows: readonly Row[] };

function TableRows<Row>({ table, rows }: RowsProps<Row>) {
  const { columns, keyOf, isUnnamed, isAsleep, isCurrent, onPress, onDoublePress } = table;
  return rows.map((row, at) => (
    <tr
      key={keyOf(row, at)}
      className={namesOf(isAsleep?.(row) && styles.asleep, isCurrent?.(row) && styles.current)}
      aria-current={isCurrent?.(row) || undefined}
      onClick={onPress && (() => onPress(row))}
      onDoubleClick={onDoublePress && (() => onDoublePress(row))}
    >
      {columns.map(({ head, cell, isNumber, isShort }, n) => {
        const isName = n === 0 && !isUnnamed;
        const Cell = isName ? "th" : "td";
        return (
          <Cell
            key={head}
            scope={isName ? "row" : undefined}
            className={namesOf(isNumber && "number", isShort?.(row) && styles.short)}
          >
            {cell(row, at)}
          </Cell>
        );
      })}
    </tr>
  ));
}

function namesOf(...names: readonly (string | false | undefined)[]): string | undefined {
  return names.filter(Boolean).join(" ") || undefined;
}
