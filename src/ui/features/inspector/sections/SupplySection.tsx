import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import { useApp } from "../../../../store/app.ts";
import { decimal } from "../../../kit/format.ts";
import { Table } from "../../../kit/Table.tsx";
import type { Column } from "../../../kit/tableShape.ts";
import { WhoIsOnTable } from "../../../kit/told/WhoIsOnTable.tsx";
import { type SupplyRow, supplyRows } from "./supply.ts";

const STATE_WORDS: Readonly<Record<SupplyRow["state"], string>> = {
  feeds: "feeds",
  weaker: "weaker, does not count",
  dormant: "only in another switch position",
};

const COLUMNS: readonly Column<SupplyRow>[] = [
  {
    head: "Port",
    cell: (row) => (
      <>
        {row.port} <span className="quiet">{row.way === "arrives" ? "←" : "→"}</span>
        <span className="unseen">{row.way}</span>
      </>
    ),
  },
  {
    head: "Supply of",
    cell: (row) => (
      <>
        {row.source} <span className="quiet">{row.asks}</span>
      </>
    ),
  },
  { head: "V", isNumber: true, cell: (row) => decimal(row.volts) },
  { head: "mA", isNumber: true, cell: (row) => (row.milliamps > 0 ? decimal(row.milliamps, 0) : "–") },
  { head: "State", cell: (row) => STATE_WORDS[row.state] },
];

/** For a part on a powered line: what arrives at its outputs and what it hands on at its inputs. */
export function SupplySection({ record }: { readonly record: PartRecord }) {
  const evaluation = useApp((s) => s.evaluation);
  const rows = supplyRows(evaluation, record);
  const { load, selfPowered } = record.power;
  if (rows.length === 0 && !load) return null;
  return (
    <section aria-label="Supply">
      <h3>Supply</h3>
      {load ? (
        <p className="small">
          Draws {decimal(selfPowered ? load.milliamps : record.drawsMa, 0)} mA
          {selfPowered ? ", from its own mains unit." : `; needs ${decimal(load.minVolts)} V at least.`}
        </p>
      ) : null}
      {rows.length > 0 ? (
        <Table
          label="Volts and currents"
          columns={COLUMNS}
          rows={rows}
          // Supplies have no identity but their place in the list.
          keyOf={(_, i) => i}
          isAsleep={(row) => row.state !== "feeds"}
        >
          <p className="quiet small">
            Current: what flows through this port now; several supplies share a load.
          </p>
        </Table>
      ) : (
        <p className="small">No supply reaches this part.</p>
      )}
      {load && !selfPowered ? <WhoIsOnTable record={record} /> : null}
    </section>
  );
}
