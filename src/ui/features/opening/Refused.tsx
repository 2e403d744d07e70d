import { History, Link } from "lucide-react";
import { useId, useState } from "react";
import { useApp } from "../../../store/app.ts";
import type { OpeningProblem, RefusedSource } from "../../../store/opening.ts";
import { openLast, openPasted } from "../documents/actions.ts";
import { ProblemFrame } from "./ProblemFrame.tsx";

const TITLES: Readonly<Record<RefusedSource, string>> = {
  link: "The link did not open",
  practice: "The practice case did not open",
  example: "The example did not open",
  file: "The file did not open",
};

/** What could not be read, why, and a field for the whole link. */
export function Refused({
  problem,
}: {
  readonly problem: Extract<OpeningProblem, { readonly type: "refused" }>;
}) {
  const { what, reason } = problem;
  const isFirst = useApp((s) => s.opened === 0);
  return (
    <ProblemFrame title={TITLES[what]} about={<p>{reason}</p>}>
      {what === "link" || what === "practice" ? <PasteForm /> : null}
      {isFirst ? (
        <div className="button-row">
          <button type="button" className="button" onClick={() => void openLast()}>
            <History size={16} aria-hidden /> Open what was open last
          </button>
        </div>
      ) : null}
    </ProblemFrame>
  );
}

function PasteForm() {
  const [text, setText] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const id = useId();
  return (
    <form
      className="gate-paste"
      onSubmit={async (event) => {
        event.preventDefault();
        setProblem(await openPasted(text));
      }}
    >
      <label htmlFor={id}>Paste the full link here, to its very end</label>
      <textarea
        id={id}
        className="field-input"
        rows={3}
        value={text}
        spellCheck={false}
        autoComplete="off"
        aria-invalid={problem !== null}
        aria-describedby={problem ? `${id}-problem` : undefined}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={(event) => {
          // A link has no line breaks: Enter opens it.
          if (event.key !== "Enter") return;
          event.preventDefault();
          event.currentTarget.form?.requestSubmit();
        }}
      />
      {problem ? (
        <p id={`${id}-problem`} className="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
      <div className="button-row">
        <button type="submit" className="button main" disabled={text.trim() === ""}>
          <Link size={16} aria-hidden /> Open this link
        </button>
      </div>
      <p className="quiet small">The address of this page still holds the link: reloading tries it again.</p>
    </form>
  );
}
