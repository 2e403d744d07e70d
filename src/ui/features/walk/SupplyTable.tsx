import type { SupplyStep } from "../../../findings/walk/supply.ts";
import { decimal } from "../../kit/format.ts";
import { Table } from "../../kit/Table.tsx";
import type { Column } from "../../kit/tableShape.ts";
import type { WalkStop } from "./stops.ts";

type Props = {
  readonly branch: readonly SupplyStep[];
  readonly stops: readonly WalkStop[];
  readonly stop: number;
  /** Absent on paper. */
  readonly onStop?: (stop: number) => void;
};

const END_WORDS: Readonly<Record<NonNullable<SupplyStep["end"]>, string>> = {
  feeds: "feeds it",
  "too low": "✕ too low",
  heard: "hears the commands",
  blocked: "✕ blocked",
  shorted: "✕ shorted",
  "nothing above": "nothing above",
  "met before": "as listed before",
  loop: "✕ on a loop",
};

/** Every part on the way up: the volts that arrive, the current, and what it takes of them. */
export function SupplyTable({ branch, stops, stop, onStop }: Props) {
  const part: Column<SupplyStep> = {
    head: "Part",
    cell: (step, n) => (
      <>
        {onStop ? (
          <button type="button" className="link" onClick={() => onStop(n)}>
            {stops[n]?.label}
          </button>
        ) : (
          stops[n]?.label
        )}
        {step.dormant ? <span className="quiet"> (asleep)</span> : null}
      </>
    ),
  };
  return (
    <Table
      label="Supply, step by step"
      isOnPaper={!onStop}
      nameAt={1}
      columns={[{ head: "Step", sign: "#", isNumber: true, cell: (_, n) => n + 1 }, part, ...FIGURES]}
      rows={branch}
      // A step is its place on the way.
      keyOf={(_, n) => n}
      isCurrent={(_, n) => onStop !== undefined && stop === n && "step"}
    />
  );
}

const FIGURES: readonly Column<SupplyStep>[] = [
  { head: "Vertical", unit: "V", isNumber: true, cell: (step) => decimal(step.volts13) },
  { head: "Horizontal", unit: "V", isNumber: true, cell: (step) => decimal(step.volts18) },
  { head: "Now", unit: "V", isNumber: true, cell: (step) => decimal(step.volts) },
  { head: "Current", unit: "mA", isNumber: true, cell: (step) => decimal(step.milliamps, 0) },
  {
    head: "Takes",
    unit: "V",
    isNumber: true,
    cell: (step) => (step.dropVolts > 0 ? decimal(step.dropVolts) : "–"),
  },
  {
    head: "Of its own",
    unit: "Ω",
    isNumber: true,
    cell: (step) => (step.ohms > 0 ? decimal(step.ohms) : "–"),
  },
  { head: "Tone", cell: toneWords },
  { head: "End", cell: (step) => (step.end ? END_WORDS[step.end] : "") },
];

function toneWords({ before, toneArrives }: SupplyStep): string {
  if (before === null) return "";
  return toneArrives ? "arrives" : "lost";
}
