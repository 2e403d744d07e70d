import { useMemo, useState } from "react";
import type { PartRecord } from "../../../evaluate/evaluation.ts";
import { MOST_RECEIVERS, type OnState, whoIsOn } from "../../../findings/whoIsOn.ts";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import { useApp } from "../../../store/app.ts";
import { decimal } from "../format.ts";
import { Table } from "../Table.tsx";
import type { Column } from "../tableShape.ts";

type Props = {
  readonly record: PartRecord;
  /** Where several parts are shown it says which one it is about. */
  readonly isNamed?: boolean;
};

/** For a part that lives on receivers: what it gets with each combination of them on; worked out once it is opened. */
export function WhoIsOnTable({ record, isNamed = false }: Props) {
  const evaluation = useApp((s) => s.evaluation);
  const [isOpen, setOpen] = useState(false);
  const part = record.part.id;
  const { design } = evaluation;
  const table = useMemo(() => (isOpen ? whoIsOn(design, part) : undefined), [isOpen, design, part]);
  const name = (id: string) => plainLabelOf(evaluation, id);
  const columns: readonly Column<OnState>[] = [
    { head: "On", cell: ({ on }) => (on.length > 0 ? on.map(name).join(", ") : "nobody") },
    { head: "V", isNumber: true, cell: ({ volts }) => decimal(volts) },
    { head: "mA", isNumber: true, cell: ({ milliamps }) => decimal(milliamps, 0) },
    { head: "Given", cell: ({ gives }) => gives.map((g) => givenWords(name(g.part), g)).join(", ") || "–" },
    { head: "State", cell: stateWords },
  ];
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{isNamed ? `Who is on, for “${name(part)}”` : "Who is on"}</summary>
      {table ? (
        <Table label="Supply by who is on" columns={columns} rows={table.states} keyOf={(_, i) => i} />
      ) : isOpen ? (
        <p className="small">No receiver feeds this part, or more than {MOST_RECEIVERS} do.</p>
      ) : null}
    </details>
  );
}

function stateWords({ works, isElsewhere }: OnState): string {
  if (!works) return "dead";
  return isElsewhere ? "works once chosen" : "works";
}

function givenWords(name: string, { milliamps, isDown }: OnState["gives"][number]): string {
  return isDown ? `${name} shuts down` : `${name} ${decimal(milliamps, 0)} mA`;
}
