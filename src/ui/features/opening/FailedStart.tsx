import { Download, List, RotateCw } from "lucide-react";
import { useState } from "react";
import type { OpeningProblem } from "../../../store/opening.ts";
import { downloadStored, listStored, openStored } from "../documents/actions.ts";
import { ProblemFrame } from "./ProblemFrame.tsx";

/** The design that was open last did not come up the last time, and is not simply tried again. */
export function FailedStart({
  failed,
}: {
  readonly failed: Extract<OpeningProblem, { readonly type: "not up" }>;
}) {
  const { id, title } = failed.mark;
  const [problem, setProblem] = useState<string | null>(null);
  const orSay = async (isDone: Promise<boolean>) => {
    if (!(await isDone)) setProblem(`“${title}” could not be read from the browser’s storage.`);
  };
  return (
    <ProblemFrame
      title={`“${title}” did not open last time`}
      about={
        <p>
          The page was closed or stopped before the design was ready. It is kept in this browser as it was.
        </p>
      }
    >
      <div className="button-row">
        <button type="button" className="button main" onClick={() => void openStored(id)}>
          <RotateCw size={16} aria-hidden /> Try again
        </button>
        <button type="button" className="button" onClick={() => void orSay(listStored(id, failed))}>
          <List size={16} aria-hidden /> Open as a list
        </button>
        <button type="button" className="button" onClick={() => void orSay(downloadStored(id, title))}>
          <Download size={16} aria-hidden /> Download the file
        </button>
      </div>
      {problem ? (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
    </ProblemFrame>
  );
}
