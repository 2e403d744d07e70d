import type {
  ConditionCell,
  ConditionPlace,
  JudgedConditions as Told,
} from "../../../store/searchConditions.ts";
import { decimal } from "../../kit/format.ts";
import { Table } from "../../kit/Table.tsx";
import { stateLook } from "../../kit/told/stateLook.ts";
import styles from "./Conditions.module.css";

type Props = {
  readonly table: Told;
  readonly labelOf: (part: string) => string;
  readonly isOnPaper?: boolean;
};

const GROUPS = [
  { role: "receiver", head: "Receivers" },
  { role: "outlet", head: "Outlets" },
] as const;

/** Every receiver and outlet under each condition; below a row, what each poor condition takes. */
export function ConditionsTable({ table, labelOf, isOnPaper = false }: Props) {
  const { columns, places } = table;
  return (
    <Table
      label="Receivers and outlets under each condition"
      isOnPaper={isOnPaper}
      groups={GROUPS.map(({ role, head }) => ({
        key: role,
        head,
        rows: places.filter((place) => place.role === role),
      })).filter(({ rows }) => rows.length > 0)}
      keyOf={({ part }) => part}
      columns={[
        { head: "Place", cell: ({ part }) => labelOf(part) },
        ...columns.map(({ column, name, sentence }) => ({
          head: name,
          key: column,
          help: sentence,
          cell: (place: ConditionPlace) => <Cell place={place} cell={cellOf(place, column)} />,
        })),
      ]}
      linesBelow={(place) => linesOf(place, table)}
    />
  );
}

function cellOf({ cells }: ConditionPlace, column: ConditionCell["column"]): ConditionCell | undefined {
  return cells.find((cell) => cell.column === column);
}

type CellProps = { readonly place: ConditionPlace; readonly cell: ConditionCell | undefined };

function Cell({ place, cell }: CellProps) {
  if (!cell) return <span className="quiet">–</span>;
  const { Icon, word, tone } = stateLook(cell);
  const isWorst = cell.column === place.worst && place.cells.length > 1;
  return (
    <span className={styles.cell} data-tone={tone} data-worst={isWorst || undefined}>
      <Icon size={15} aria-hidden />
      <Margin word={word} margin={marginOf(cell)} />
      {isWorst ? <span className="unseen">, the worst</span> : null}
    </span>
  );
}

/** On a phone the figure stands without its unit, which the note below the table names. */
function Margin({ word, margin }: { readonly word: string; readonly margin: string | null }) {
  if (margin === null) return word;
  return (
    <span>
      <span className="unseen">{word}, </span>
      {margin}
      <span className={styles.unit}> dB</span>
    </span>
  );
}

/** "4.2"; null where nothing is to spare, or nothing is judged. */
function marginOf({ idle, marginDb }: ConditionCell): string | null {
  return idle || marginDb === undefined || !Number.isFinite(marginDb) ? null : decimal(marginDb);
}

/** What is said of a place under each condition that takes something, the worst first; the same words once. */
function linesOf(place: ConditionPlace, { columns }: Told): readonly string[] {
  const { cells, worst } = place;
  const poor = cells.filter(({ state, idle }) => state !== "works" && !idle);
  const ordered = [...poor].sort((a, b) => Number(b.column === worst) - Number(a.column === worst));
  const names = new Map<string, string[]>();
  for (const { column, sentence } of ordered) {
    const name = columns.find((each) => each.column === column)?.name ?? "";
    names.set(sentence, [...(names.get(sentence) ?? []), name]);
  }
  return [...names].map(([sentence, under]) => `${under.join(", ")}: ${sentence}`);
}
