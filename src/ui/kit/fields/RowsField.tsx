import { ArrowDown, ArrowUp, ClipboardPaste, Plus, Trash2 } from "lucide-react";
import { useId, useState } from "react";
import type { z } from "zod";
import { fieldMeta } from "../../../parts/fields.ts";
import { counted } from "../format.ts";
import { IconButton } from "../IconButton.tsx";
import { Sheet } from "../Sheet.tsx";
import { AnyField } from "./AnyField.tsx";
import type { FieldProps } from "./field.ts";
import { readPastedRows } from "./pastedRows.ts";

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
        className="button rows-button"
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
      <div className="button-row rows-tools">
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
      <div className="rows-scroll">
        <table className="rows-table">
          <thead>
            <tr>
              <th scope="col">
                <span className="unseen">Row</span>#
              </th>
              {columns.map((c) => (
                <th key={c.key} scope="col" title={c.meta.help}>
                  {c.meta.label}
                  {c.meta.unit ? <span className="quiet"> {c.meta.unit}</span> : null}
                </th>
              ))}
              <th scope="col">
                <span className="unseen">Move and remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((r, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows have no identity but their place in the list.
              <tr key={i}>
                <th scope="row" className="number">
                  {i + 1}
                </th>
                {columns.map((c) => (
                  <td key={c.key}>
                    <AnyField
                      id={`${base}-${i}-${c.key}`}
                      meta={c.meta}
                      value={r[c.key]}
                      inTable
                      onTakeBack={onTakeBack}
                      onTry={(v, visit) =>
                        attempt(
                          rows.map((other, k) => (k === i ? { ...other, [c.key]: v } : other)),
                          visit,
                        )
                      }
                      onProblem={setProblem}
                    />
                  </td>
                ))}
                <td className="rows-moves">
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
                </td>
              </tr>
            ))}
          </tbody>
        </table>
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
    <div className="paste-box">
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
