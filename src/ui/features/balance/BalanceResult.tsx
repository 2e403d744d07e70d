import { Check, Eye } from "lucide-react";
import type { Design } from "../../../design/design.ts";
import { done } from "../../../design/edits/edit.ts";
import { partById } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { fieldMeta } from "../../../parts/fields.ts";
import type { Balance, KnobChange } from "../../../remedies/balance/balance.ts";
import { useApp } from "../../../store/app.ts";
import { useBalance } from "../../../store/balance.ts";
import { writeNumeral } from "../../kit/fields/numeral.ts";
import { Table } from "../../kit/Table.tsx";
import { Message } from "../../kit/told/Message.tsx";
import { LevelTable } from "./LevelTable.tsx";

const TITLE = "Balance outlets";

/** The best so far: what to set or fit, and what every outlet would have. */
export function BalanceResult({ onDone }: { readonly onDone: () => void }) {
  const { best, status } = useBalance();
  if (!best) return null;
  const isOver = status === "done" || status === "stopped";
  if (best.changes.length === 0)
    return (
      <>
        {isOver ? <p>{wordsForNothing(best)}</p> : null}
        <LevelTable balance={best} />
      </>
    );
  return (
    <>
      {isOver ? (
        <p className={best.reached ? "state ok" : "state bad"}>
          {best.reached
            ? "Every outlet is inside the limits and within the spread that you asked for."
            : "Better balanced, but not within what you asked. These parts allow no more."}
        </p>
      ) : null}
      <div className="button-row">
        <button
          type="button"
          className="button main"
          onClick={() => {
            useBalance.getState().stop();
            const { change, notify } = useApp.getState();
            if (change(done(best.design))) notify("Outlets balanced.", "info", { undoable: true });
            onDone();
          }}
        >
          <Check size={16} aria-hidden /> Apply
        </button>
        <button
          type="button"
          className="button"
          onClick={() => {
            useBalance.getState().stop();
            useApp.getState().showPreview({ title: TITLE, design: best.design, canApply: true });
            onDone();
          }}
        >
          <Eye size={16} aria-hidden /> Show on the canvas
        </button>
      </div>
      <ChangeTable changes={best.changes} />
      <LevelTable balance={best} />
      {best.caused.length > 0 ? (
        <section>
          <h3>New or graver findings</h3>
          <ul>
            {best.caused.map((f) => (
              <li key={f.id}>
                <Message finding={f} />
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </>
  );
}

function wordsForNothing({ reached, before }: Balance): string {
  if (before.length === 0) return "No outlet gets this service.";
  return reached
    ? "Nothing to change: every outlet is inside the limits and within the spread that you asked for."
    : "Nothing on the way to the outlets that can be set or replaced improves the balance.";
}

function ChangeTable({ changes }: { readonly changes: readonly KnobChange[] }) {
  const design = useApp((s) => s.design);
  const rows = changes.map((change) => ({ change, ...wordsOf(design, change) }));
  return (
    <section>
      <h3>What to set and what to fit</h3>
      <Table
        label="What to set and what to fit"
        rows={rows}
        keyOf={({ change }) => `${change.part} ${change.option}`}
        columns={[
          { head: "Part", cell: ({ part }) => part },
          { head: "What", cell: ({ option }) => option },
          { head: "Before", isNumber: true, cell: ({ change, unit }) => writeNumeral(change.before) + unit },
          { head: "After", isNumber: true, cell: ({ change, unit }) => writeNumeral(change.after) + unit },
          { head: "How", cell: ({ change }) => (change.isSetting ? "set" : "replace") },
        ]}
      />
    </section>
  );
}

function wordsOf(design: Design, change: KnobChange) {
  const part = partById(design, change.part);
  const schema = kindOf(part?.kind ?? "")?.options.shape[change.option];
  const meta = schema && fieldMeta(schema);
  return {
    part: part?.label ?? change.part,
    option: meta?.label ?? change.option,
    unit: meta?.unit ? ` ${meta.unit}` : "",
  };
}
