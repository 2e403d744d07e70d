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

/** Every receiver and outlet under each condition; below a row, what its worst condition takes. */
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
      linesBelow={(place) => worstLines(place, table)}
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
      {marginOf(cell) === null ? word : <span className="unseen">{word}, </span>}
      {marginOf(cell)}
      {isWorst ? <span className="unseen">, the worst</span> : null}
    </span>
  );
}

/** "4.2 dB"; null where nothing is to spare, or nothing is judged. */
function marginOf({ idle, marginDb }: ConditionCell): string | null {
  return idle || marginDb === undefined || !Number.isFinite(marginDb) ? null : `${decimal(marginDb)} dB`;
}

/** What is said of a place under its worst condition, where that is worse than a sound state. */
function worstLines(place: ConditionPlace, { columns }: Told): readonly string[] {
  const cell = place.worst === null ? undefined : cellOf(place, place.worst);
  const name = columns.find(({ column }) => column === place.worst)?.name;
  return cell && name !== undefined && cell.state !== "works" ? [`${name}: ${cell.sentence}`] : [];
}
