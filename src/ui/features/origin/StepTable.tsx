import { useApp } from "../../../store/app.ts";
import { numeralAsSet } from "../../../words/numbers.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import { decimal } from "../../kit/format.ts";
import { Table } from "../../kit/Table.tsx";
import type { Column } from "../../kit/tableShape.ts";
import type { WalkMarks } from "./LevelDiagram.tsx";
import type { LevelOrigin, OriginStep } from "./levelOrigin.ts";

type Props = {
  readonly answer: LevelOrigin;
  readonly isOnPaper?: boolean;
  /** On a walk: the present stop is marked, and a press on a part goes there. */
  readonly walked?: Pick<WalkMarks, "stop" | "onStop" | "trouble">;
};

/** A part on the way, or behind the last the tuner, of which only C/N is told. */
type Line = { readonly step: OriginStep } | { readonly tuner: NonNullable<LevelOrigin["tuner"]> };

/** Every part on the way, what it did, and what there is behind it. A press on a part shows it on the canvas. */
export function StepTable({ answer, isOnPaper = false, walked }: Props) {
  const chosen = useApp((s) => s.selection.parts);
  const { steps } = answer;
  // Without any interference C/(N+I) is C/N, and two columns less leave room for the words.
  const isDisturbed = steps.some((step) => Number.isFinite(step.ciDb));
  const tuner = answer.tuner ? [{ tuner: answer.tuner }] : [];
  const part: Column<Line> = {
    head: "Part",
    cell: (line, n) => {
      if (!("step" in line)) return "Tuner";
      const { label, part } = line.step;
      if (isOnPaper) return label;
      return (
        <button
          type="button"
          className="link"
          onClick={() => (walked ? walked.onStop(n) : selectFromPane({ parts: [part] }))}
        >
          {label}
        </button>
      );
    },
  };
  const did: Column<Line> = {
    head: "What it does",
    cell: (line, n) => (
      <>
        {didWords(line)}
        {walked?.trouble?.at === n ? (
          <strong className={`trouble-words ${walked.trouble.kind}`}> ✕ {walked.trouble.mark}</strong>
        ) : null}
      </>
    ),
  };
  return (
    <Table
      label="Level, step by step"
      isOnPaper={isOnPaper}
      nameAt={1}
      columns={[STEP, part, did, ...(isDisturbed ? DISTURBED : CLEAN)]}
      rows={[...steps.map((step) => ({ step })), ...tuner]}
      // A step is its place on the way.
      keyOf={(_, n) => n}
      isLost={(line) => "step" in line && line.step.cutHere}
      isCurrent={(_, n) => walked?.stop === n && "step"}
      isMarked={(line) => !walked && !isOnPaper && "step" in line && chosen.includes(line.step.part)}
    />
  );
}

function didWords(line: Line): string {
  if ("step" in line) return line.step.did.join(" · ");
  return `adds its own noise (noise figure ${numeralAsSet(line.tuner.noiseFigureDb)} dB)`;
}

const STEP: Column<Line> = {
  head: "Step",
  sign: "#",
  isNumber: true,
  cell: (line, n) => ("step" in line ? n + 1 : ""),
};

function figures(head: string, unit: string, of: (step: OriginStep) => number): Column<Line> {
  return { head, unit, isNumber: true, cell: (line) => ("step" in line ? decimal(of(line.step)) : "") };
}

/** The last column, which has what is left behind the tuner as well. */
function quality(head: string, of: (step: OriginStep) => number): Column<Line> {
  const cell = (line: Line) => decimal("step" in line ? of(line.step) : line.tuner.cniDb);
  return { head, unit: "dB", isNumber: true, cell };
}

const LEVEL = figures("Level", "dBµV", (step) => step.levelDbuv);
const CLEAN = [LEVEL, quality("C/N", (step) => step.cnDb)];
const DISTURBED = [
  LEVEL,
  figures("C/N", "dB", (step) => step.cnDb),
  figures("C/I", "dB", (step) => step.ciDb),
  quality("C/(N+I)", (step) => step.cniDb),
];
