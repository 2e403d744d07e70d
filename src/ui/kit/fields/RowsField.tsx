import { ArrowDown, ArrowUp, ClipboardPaste, Plus, Trash2 } from "lucide-react";
import { useId, useState } from "react";
import type { z } from "zod";
import { fieldMeta } from "../../../parts/fields.ts";
import { counted } from "../format.ts";
import { IconButton } from "../IconButton.tsx";
import { Sheet } from "../Sheet.tsx";
import { Table } from "../Table.tsx";
import { AnyField } from "./AnyField.tsx";
import type { FieldProps } from "./field.ts";
import { readPastedRows } from "./pastedRows.ts";
import styles from "./RowsField.module.css";

type Problem = { readonly onProblem: (problem: string | null) => void };
type Row = Readonly<Record<string, unknown>>;

/** A list of rows (a channel plan, transponders, user bands): its size here, its table in a dialog. */
export function RowsField(props: FieldProps & Problem) {
  const { id, meta, value, onTry, onTakeBack, onProblem, describedBy } = props;
  const [open, setOpen] = useState(false);
  const rows = asRows(value);
  if (!meta.row) return null;
  return (
    <>
      <button
        type="button"
        id={id}
        className={`button ${styles.button}`}
        aria-describedby={describedBy}
        aria-haspopup="dialog"
        aria-label={`${meta.label}: ${counted(rows.length, "row")}, edit`}
        onClick={() => setOpen(true)}
      >
        {counted(rows.length, "row")} <span className="quiet">Edit…</span>
      </button>
      <Sheet isWide title={meta.label} open={open} onClose={() => setOpen(false)}>
        <RowsTable
          meta={meta}
          row={meta.row}
          rows={rows}
          onTakeBack={onTakeBack}
          onTry={(next, visit) => {
            const problem = onTry(next, visit);
            onProblem(problem);
            return problem;
          }}
        />
      </Sheet>
    </>
  );
}

function asRows(value: unknown): readonly Row[] {
  return Array.isArray(value) ? value.filter((r): r is Row => typeof r === "object" && r !== null) : [];
}

function RowsTable({
  meta,
  row,
  rows,
  onTry,
  onTakeBack,
}: {
  readonly meta: FieldProps["meta"];
  readonly row: z.ZodObject;
  readonly rows: readonly Row[];
  /** `undefined` goes back to the typical list. */
  readonly onTry: (rows: readonly unknown[] | undefined, visit?: string) => string | null;
  readonly onTakeBack: FieldProps["onTakeBack"];
}) {
  const base = useId();
  const [problem, setProblem] = useState<string | null>(null);
  const [pasting, setPasting] = useState(false);
  const columns = Object.entries(row.shape).flatMap(([key, schema]) => {
    const column = fieldMeta(schema);
    return column ? [{ key, meta: column }] : [];
  });
  const attempt = (next: readonly unknown[] | undefined, visit?: string) => {
    const refusal = onTry(next, visit);
    setProblem(refusal);
    return refusal;
  };
  const swap = (i: number, j: number) => {
    const a = rows[i];
    const b = rows[j];
    if (a && b) attempt(rows.map((r, k) => (k === i ? b : k === j ? a : r)));
  };
  return (
    <>
      {meta.help ? <p className="quiet">{meta.help}</p> : null}
      <div className={`button-row ${styles.tools}`}>
        <button
          type="button"
          className="button"
          // A further row is mostly like the one before it; the first takes the typical values.
          onClick={() => attempt([...rows, rows.at(-1) ?? {}])}
        >
          <Plus size={16} aria-hidden /> Add a row
        </button>
        <button type="button" className="button" aria-expanded={pasting} onClick={() => setPasting(!pasting)}>
          <ClipboardPaste size={16} aria-hidden /> Paste a list
        </button>
        <button type="button" className="button" onClick={() => attempt(undefined)}>
          Back to the typical list
        </button>
      </div>
      {pasting ? (
        <PasteBox
          row={row}
          headings={columns.map((c) => c.meta.label)}
          onRows={(next) => {
            if (attempt(next) === null) setPasting(false);
          }}
        />
      ) : null}
      <p className="field-problem" role="alert">
        {problem}
      </p>
      <div className={styles.table}>
        <Table
          label={meta.label}
          rows={rows}
          // Rows have no identity but their place in the list.
          keyOf={(_, i) => i}
          columns={[
            { head: "Row", sign: "#", isNumber: true, cell: (_, i) => i + 1 },
            ...columns.map(({ key, meta }) => ({
              key,
              head: meta.label,
              unit: meta.unit,
              help: meta.help,
              cell: (r: Row, i: number) => (
                <AnyField
                  id={`${base}-${i}-${key}`}
                  meta={meta}
                  value={r[key]}
                  inTable
                  onTakeBack={onTakeBack}
                  onTry={(v, visit) =>
                    attempt(
                      rows.map((other, k) => (k === i ? { ...other, [key]: v } : other)),
                      visit,
                    )
                  }
                  onProblem={setProblem}
                />
              ),
            })),
            {
              head: "Move and remove",
              sign: "",
              cell: (_, i) => (
                <span className={styles.moves}>
                  <IconButton
                    icon={ArrowUp}
                    name={`Move row ${i + 1} up`}
                    disabled={i === 0}
                    onPress={() => swap(i, i - 1)}
                  />
                  <IconButton
                    icon={ArrowDown}
                    name={`Move row ${i + 1} down`}
                    disabled={i === rows.length - 1}
                    onPress={() => swap(i, i + 1)}
                  />
                  <IconButton
                    icon={Trash2}
                    name={`Remove row ${i + 1}`}
                    onPress={() => attempt(rows.filter((_, k) => k !== i))}
                  />
                </span>
              ),
            },
          ]}
        />
      </div>
    </>
  );
}

function PasteBox({
  row,
  headings,
  onRows,
}: {
  readonly row: z.ZodObject;
  readonly headings: readonly string[];
  readonly onRows: (rows: readonly unknown[]) => void;
}) {
  const [text, setText] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <div className={styles.paste}>
      <label>
        <span className="small">
          One row to a line, in this order: {headings.join(", ")}; parted by tabs, semicolons or commas.
          Replaces the present list.
        </span>
        <textarea className="field-input" rows={5} value={text} onChange={(e) => setText(e.target.value)} />
      </label>
      <p className="field-problem" role="alert">
        {problem}
      </p>
      <button
        type="button"
        className="button main"
        onClick={() => {
          const read = readPastedRows(text, row);
          setProblem(read.ok ? null : read.problem);
          if (read.ok) onRows(read.rows);
        }}
      >
        Take this list
      </button>
    </div>
  );
}
