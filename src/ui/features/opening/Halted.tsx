import { Download, List, RotateCw } from "lucide-react";
import { DEADLINE_MS, type OpeningFailure, type OpeningProblem, useOpening } from "../../../store/opening.ts";
import { numeralAsSet } from "../../../words/numbers.ts";
import { downloadDesign, openRest } from "../documents/actions.ts";
import { ProblemFrame } from "./ProblemFrame.tsx";

const WHY: Readonly<Record<OpeningFailure, string>> = {
  stopped: "You stopped its calculation.",
  late: `Calculating it took longer than ${numeralAsSet(DEADLINE_MS / 1000)} seconds, so it was stopped.`,
  "too large":
    "It is too large to calculate. Its signals meet in too many ways, as where splitters feed combiners again and again.",
  failed: "The calculation stopped. The browser may have run out of memory.",
};

/** A design that can be read, but was not worked out. */
export function Halted({
  problem,
}: {
  readonly problem: Extract<OpeningProblem, { readonly type: "halted" }>;
}) {
  const { design, why } = problem;
  return (
    <ProblemFrame
      title={`“${design.title}” is not open`}
      about={<p>{WHY[why]} The design is unharmed; as a list you can read it and delete parts of it.</p>}
    >
      <div className="button-row">
        <button
          type="button"
          className="button main"
          onClick={() => useOpening.getState().showProblem({ type: "list", design, before: problem })}
        >
          <List size={16} aria-hidden /> Open as a list
        </button>
        <button type="button" className="button" onClick={() => downloadDesign(design)}>
          <Download size={16} aria-hidden /> Download the file
        </button>
        <button type="button" className="button" onClick={() => void openRest(design)}>
          <RotateCw size={16} aria-hidden /> Try again
        </button>
      </div>
    </ProblemFrame>
  );
}
