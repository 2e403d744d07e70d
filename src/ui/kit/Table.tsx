import { moveByArrows } from "./gridKeys.ts";
import { ScrollBox } from "./ScrollBox.tsx";
import styles from "./Table.module.css";
import { RowGroupBody, TableRows } from "./TableRows.tsx";
import { type Column, classNames, type TableProps } from "./tableShape.ts";

/** Figures in rows and columns; wider than its pane, it scrolls by itself. */
export function Table<Row>(props: TableProps<Row>) {
  const { label, columns, fits = false, isOnPaper = false, isGrid = false, children } = props;
  const scrolls = !fits && !isOnPaper;
  const table = (
    <table
      className={classNames(styles.table, fits && styles.fits, isGrid && styles.grid)}
      aria-label={scrolls ? undefined : label}
      onKeyDown={isGrid ? moveByArrows : undefined}
    >
      <thead>
        <tr>
          {columns.map((column) => (
            <Heading key={column.key ?? column.head} column={column} />
          ))}
        </tr>
      </thead>
      {"rows" in props ? (
        <tbody>
          <TableRows table={props} rows={props.rows} />
        </tbody>
      ) : (
        props.groups.map((group) => <RowGroupBody key={group.key} table={props} group={group} />)
      )}
    </table>
  );
  if (!scrolls)
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
  const { head, sign, unit, help, share, isNumber, order } = column;
  const words = (
    <>
      {sign === undefined ? (
        head
      ) : (
        <>
          <span className="unseen">{head}</span>
          <span aria-hidden>{sign}</span>
        </>
      )}
      {unit === undefined ? null : <span className="quiet"> {unit}</span>}
    </>
  );
  return (
    <th
      scope="col"
      className={isNumber && unit !== undefined ? styles.figures : undefined}
      title={help}
      style={share === undefined ? undefined : { width: `${share}%` }}
      aria-sort={order?.now ?? undefined}
    >
      {order ? (
        <button type="button" className={styles.order} onClick={order.onPress}>
          {words}
          <span aria-hidden>{order.now ? ORDER_SIGNS[order.now] : ""}</span>
        </button>
      ) : (
        words
      )}
    </th>
  );
}

const ORDER_SIGNS = { ascending: " ▴", descending: " ▾" } as const;
