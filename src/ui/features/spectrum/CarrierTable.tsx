import { useState } from "react";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import { useApp } from "../../../store/app.ts";
import { decimal, megahertz } from "../../kit/format.ts";
import { Table } from "../../kit/Table.tsx";
import { type CarrierRow, type SortKey, sortRows, stateWords } from "./rows.ts";

const PAGE_SIZE = 50;

/** Every carrier of the wire, sortable, fifty to a page. */
export function CarrierTable({
  rows,
  cursor,
  onCursor,
  onAsk,
}: {
  readonly rows: readonly CarrierRow[];
  readonly cursor: string | null;
  readonly onCursor: (key: string) => void;
  /** How the level of a carrier came about is asked. */
  readonly onAsk: (row: CarrierRow) => void;
}) {
  const [by, setBy] = useState<SortKey>("hereMHz");
  const [isDescending, setDescending] = useState(false);
  const [page, setPage] = useState(0);
  const evaluation = useApp((s) => s.evaluation);
  const label = (part: string) => plainLabelOf(evaluation, part);
  const order = (key: SortKey) => ({
    now: by !== key ? null : isDescending ? ("descending" as const) : ("ascending" as const),
    onPress: () => {
      setDescending(by === key && !isDescending);
      setBy(key);
      setPage(0);
    },
  });

  const sorted = sortRows(rows, by, isDescending);
  const pages = Math.max(1, Math.ceil(sorted.length / PAGE_SIZE));
  const at = Math.min(page, pages - 1);
  const shown = sorted.slice(at * PAGE_SIZE, (at + 1) * PAGE_SIZE);
  return (
    <section className="carrier-table" aria-label="Carriers">
      <Table
        label="Table of carriers"
        rows={shown}
        keyOf={({ key }) => key}
        isCurrent={({ key }) => key === cursor}
        isAsleep={({ state }) => state === "cut" || state === "idle"}
        onPress={({ key }) => onCursor(key)}
        onDoublePress={onAsk}
        columns={[
          {
            head: "Carrier",
            order: order("name"),
            cell: (row) => (
              <>
                {row.name} <span className="quiet">{row.bandName}</span>
              </>
            ),
          },
          {
            head: "On air",
            unit: "MHz",
            isNumber: true,
            order: order("airMHz"),
            cell: (row) => (row.userBand === undefined ? megahertz(row.airMHz) : "any"),
          },
          {
            head: "Here",
            unit: "MHz",
            isNumber: true,
            order: order("hereMHz"),
            cell: (row) => megahertz(row.hereMHz),
          },
          {
            head: "Level",
            unit: "dBµV",
            isNumber: true,
            order: order("level"),
            cell: (row) => <AskedLevel row={row} onAsk={onAsk} />,
          },
          { head: "C/N", unit: "dB", isNumber: true, order: order("cnDb"), cell: (row) => decimal(row.cnDb) },
          {
            head: "C/(N+I)",
            unit: "dB",
            isNumber: true,
            order: order("cniDb"),
            cell: (row) => decimal(row.cniDb),
          },
          {
            head: "State",
            order: order("state"),
            isShort: ({ state }) => state === "hit" || state === "weak",
            cell: (row) => <span className={`carrier-${row.state}`}>{stateWords(row, label)}</span>,
          },
        ]}
      />
      {pages > 1 ? (
        <p className="button-row">
          <button type="button" className="button" disabled={at === 0} onClick={() => setPage(at - 1)}>
            Back
          </button>
          <span className="page-count">
            {at * PAGE_SIZE + 1}–{at * PAGE_SIZE + shown.length} of {sorted.length}
          </span>
          <button type="button" className="button" disabled={at >= pages - 1} onClick={() => setPage(at + 1)}>
            On
          </button>
        </p>
      ) : null}
    </section>
  );
}

type LevelProps = { readonly row: CarrierRow; readonly onAsk: (row: CarrierRow) => void };

function AskedLevel({ row, onAsk }: LevelProps) {
  return (
    <button
      type="button"
      className="figure-press number"
      title="How this level came about"
      onClick={() => onAsk(row)}
    >
      {decimal(row.level)}
      <span className="unseen"> dBµV, how it came about</span>
    </button>
  );
}
