import styles from "./Table.module.css";
import { classNames, type RowGroup, type TableProps } from "./tableShape.ts";

type RowsProps<Row> = { readonly table: TableProps<Row>; readonly rows: readonly Row[] };

/** The rows of a table, each with the lines that belong below it. */
export function TableRows<Row>({ table, rows }: RowsProps<Row>) {
  return rows.map((row, at) => <OneRow key={table.keyOf(row, at)} table={table} row={row} at={at} />);
}

type GroupProps<Row> = { readonly table: TableProps<Row>; readonly group: RowGroup<Row> };

/** Rows under a heading of their own. */
export function RowGroupBody<Row>({ table, group }: GroupProps<Row>) {
  const { head, cells, rows, isAsleep } = group;
  return (
    <tbody>
      <tr className={classNames(styles.group, isAsleep && styles.asleep)}>
        <th scope="rowgroup" colSpan={cells ? undefined : table.columns.length}>
          {head}
        </th>
        {cells?.map((cell, n) => (
          <td key={keyOfColumn(table, n + 1)}>{cell}</td>
        ))}
      </tr>
      <TableRows table={table} rows={rows} />
    </tbody>
  );
}

function keyOfColumn<Row>({ columns }: TableProps<Row>, n: number): string | undefined {
  const column = columns[n];
  return column?.key ?? column?.head;
}

type RowProps<Row> = { readonly table: TableProps<Row>; readonly row: Row; readonly at: number };

function OneRow<Row>({ table, row, at }: RowProps<Row>) {
  const { columns, isAsleep, isLost, isCurrent, isMarked, linesBelow, onPress, onDoublePress } = table;
  const current = isCurrent?.(row, at) || undefined;
  const lines = linesBelow?.(row) ?? [];
  return (
    <>
      <tr
        className={classNames(
          isAsleep?.(row) && styles.asleep,
          isLost?.(row) && styles.lost,
          lines.length > 0 && styles.continued,
        )}
        aria-current={current}
        data-marked={current !== undefined || isMarked?.(row) || undefined}
        onClick={onPress && (() => onPress(row))}
        onDoubleClick={onDoublePress && (() => onDoublePress(row))}
      >
        {columns.map((_, n) => (
          <Cell key={keyOfColumn(table, n)} table={table} row={row} at={at} n={n} />
        ))}
      </tr>
      {lines.map((line, n) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place below its row.
        <tr key={n} className={classNames(n < lines.length - 1 && styles.continued)}>
          <td className={styles.line} colSpan={columns.length}>
            {line}
          </td>
        </tr>
      ))}
    </>
  );
}

function Cell<Row>({ table, row, at, n }: RowProps<Row> & { readonly n: number }) {
  const column = table.columns[n];
  if (!column) return null;
  const { cell, isNumber, isShort, unit } = column;
  const isName = n === (table.nameAt === undefined ? 0 : table.nameAt);
  const Tag = isName ? "th" : "td";
  return (
    <Tag
      scope={isName ? "row" : undefined}
      className={classNames(
        isNumber && "number",
        isNumber && unit !== undefined && styles.figures,
        isShort?.(row) && styles.short,
      )}
    >
      {cell(row, at)}
    </Tag>
  );
}
