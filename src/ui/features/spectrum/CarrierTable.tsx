import { useState } from "react";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import { useApp } from "../../../store/app.ts";
import { decimal, megahertz } from "../../kit/format.ts";
import { type CarrierRow, type SortKey, sortRows, stateWords } from "./rows.ts";

const PAGE_SIZE = 50;

const COLUMNS: readonly { readonly key: SortKey; readonly name: string; readonly unit?: string }[] = [
  { key: "name", name: "Carrier" },
  { key: "airMHz", name: "On air", unit: "MHz" },
  { key: "hereMHz", name: "Here", unit: "MHz" },
  { key: "level", name: "Level", unit: "dBµV" },
  { key: "cnDb", name: "C/N", unit: "dB" },
  { key: "cniDb", name: "C/(N+I), about MER", unit: "dB" },
  { key: "state", name: "State" },
];

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

  const sorted = sortRows(rows, by, isDescending);
  const pages = Math.max(1, Math.ceil(sorted.length / PAGE_SIZE));
  const at = Math.min(page, pages - 1);
  const shown = sorted.slice(at * PAGE_SIZE, (at + 1) * PAGE_SIZE);
  return (
    <section className="carrier-table" aria-label="Carriers">
      <table className="rows-table">
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <th
                key={column.key}
                scope="col"
                aria-sort={by === column.key ? (isDescending ? "descending" : "ascending") : undefined}
              >
                <button
                  type="button"
                  className="sort"
                  onClick={() => {
                    setDescending(by === column.key && !isDescending);
                    setBy(column.key);
                    setPage(0);
                  }}
                >
                  {column.name}
                  {column.unit ? <span className="quiet"> {column.unit}</span> : null}
                  <span aria-hidden>{by === column.key ? (isDescending ? " ▾" : " ▴") : ""}</span>
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <tr
              key={row.key}
              className={`carrier ${row.state}${row.key === cursor ? " current" : ""}`}
              onClick={() => onCursor(row.key)}
              onDoubleClick={() => onAsk(row)}
            >
              <th scope="row">
                {row.name} <span className="quiet">{row.bandName}</span>
              </th>
              <td className="number">{row.userBand === undefined ? megahertz(row.airMHz) : "any"}</td>
              <td className="number">{megahertz(row.hereMHz)}</td>
              <td className="number">
                <button
                  type="button"
                  className="figure-press number"
                  title="How this level came about"
                  onClick={() => onAsk(row)}
                >
                  {decimal(row.level)}
                  <span className="unseen"> dBµV, how it came about</span>
                </button>
              </td>
              <td className="number">{decimal(row.cnDb)}</td>
              <td className="number">{decimal(row.cniDb)}</td>
              <td>{stateWords(row, label)}</td>
            </tr>
          ))}
        </tbody>
      </table>
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
