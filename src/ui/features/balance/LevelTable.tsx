import type { PlaceLevel } from "../../../remedies/balance/aim.ts";
import type { Balance } from "../../../remedies/balance/balance.ts";
import { levelRangeWords } from "../../../sentences/figures.ts";
import { useApp } from "../../../store/app.ts";
import { decimal } from "../../kit/format.ts";
import { Table } from "../../kit/Table.tsx";

/** Level at every outlet before and after, with the distance from the nearer limit. */
export function LevelTable({ balance }: { readonly balance: Balance }) {
  const { before, after } = balance;
  const record = useApp((s) => s.evaluation.record);
  if (before.length === 0) return null;
  return (
    <section>
      <h3>
        Outlets <span className="quiet">· spread {decimal(apart(before))} dB before, </span>
        {decimal(apart(after))} dB after
      </h3>
      <Table
        label="Levels of the outlets"
        columns={[
          { head: "Outlet", cell: (level) => record(level.part)?.part.label ?? level.part },
          {
            head: "Before",
            isNumber: true,
            cell: (level) => {
              const was = before.find((b) => b.part === level.part && b.port === level.port);
              return was ? levelRangeWords(was.minDbuv, was.maxDbuv) : "–";
            },
          },
          {
            head: "After",
            isNumber: true,
            cell: (level) => levelRangeWords(level.minDbuv, level.maxDbuv),
          },
          {
            head: "Margin after",
            isNumber: true,
            isShort: (level) => level.marginDb < 0,
            cell: ({ marginDb }) => `${decimal(marginDb)} dB${marginDb < 0 ? ", outside the limits" : ""}`,
          },
        ]}
        rows={after}
        keyOf={(level) => `${level.part} ${level.port}`}
      />
    </section>
  );
}

function apart(levels: readonly PlaceLevel[]): number {
  const means = levels.map((l) => l.meanDbuv);
  return means.length === 0 ? 0 : Math.max(...means) - Math.min(...means);
}
