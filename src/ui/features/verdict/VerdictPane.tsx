import { Check, CircleHelp, X } from "lucide-react";
import type { Verdict } from "../../../findings/finding.ts";
import { profileOf } from "../../../findings/limits.ts";
import { judgedReceivers, workingSentence } from "../../../sentences/verdict.ts";
import { useApp } from "../../../store/app.ts";
import { useConditions } from "../../../store/conditions.ts";
import { CureAllButton } from "../../kit/asked/CureButton.tsx";
import { openDialog } from "../../kit/panes.ts";
import { CauseList } from "./CauseList.tsx";
import { VerdictRow } from "./VerdictRow.tsx";
import "./verdict.css";

const RANK: readonly Verdict["state"][] = ["fails", "edge", "works"];

/** What every receiver and outlet gets, and what stands in the way. */
export function VerdictPane() {
  const report = useApp((s) => s.report);
  const isEmpty = useApp((s) => s.design.parts.length === 0);
  if (isEmpty) return <EmptyVerdict />;
  // Whatever fails comes first; among equals, the order of the design.
  const verdicts = [...report.verdicts].sort((a, b) => RANK.indexOf(a.state) - RANK.indexOf(b.state));
  const receivers = verdicts.filter((v) => v.role === "receiver");
  const outlets = verdicts.filter((v) => v.role === "outlet");
  return (
    <div className="verdict" data-chooses-parts>
      <VerdictSummary />
      <CureAllButton />
      <CauseList report={report} />
      <Group title="Receivers" verdicts={receivers} />
      <Group title="Outlets" verdicts={outlets} />
      <LimitsLine />
      <ConditionsLine />
      <p className="verdict-foot quiet small">
        An estimate from typical values, not a measurement and not an approval. Work on mains, bonding,
        lightning protection and at height follows local codes and belongs to licensed people.
      </p>
    </div>
  );
}

/** How many receivers work, in one line. */
export function VerdictSummary() {
  const report = useApp((s) => s.report);
  const receivers = report.verdicts.filter((v) => v.role === "receiver");
  const judged = judgedReceivers(receivers);
  const words = workingSentence(receivers);
  if (judged.length === 0)
    return (
      <p className="verdict-summary">
        <CircleHelp size={20} aria-hidden />
        <span>{words}</span>
      </p>
    );
  const all = judged.every((v) => v.state !== "fails");
  return (
    <p className={all ? "verdict-summary ok" : "verdict-summary bad"}>
      {all ? <Check size={20} aria-hidden /> : <X size={20} aria-hidden />}
      <span>{words}</span>
    </p>
  );
}

/** What the findings hold the design to, and the way to change it. */
function LimitsLine() {
  const profile = useApp((s) => profileOf(s.design));
  return (
    <p className="small">
      Limits:{" "}
      <button type="button" className="link" onClick={() => openDialog("settings")}>
        {profile.name}
        <span className="unseen">, change</span>
      </button>
    </p>
  );
}

/** How the design stands in rain, in a lift and so on, once that was asked; and the way there. */
function ConditionsLine() {
  const design = useApp((s) => s.design);
  const headline = useConditions((s) => (s.document === design ? s.progress?.table?.headline : undefined));
  return (
    <p className="small">
      Conditions:{" "}
      <button type="button" className="link" onClick={() => openDialog("conditions")}>
        {headline ?? "judge it in rain, in a lift, with masts, with one receiver on"}
      </button>
    </p>
  );
}

function Group({ title, verdicts }: { readonly title: string; readonly verdicts: readonly Verdict[] }) {
  if (verdicts.length === 0) return null;
  return (
    <section aria-label={title}>
      <h3 className="verdict-heading">{title}</h3>
      <ul className="verdict-list">
        {verdicts.map((verdict) => (
          <VerdictRow key={verdict.part} verdict={verdict} />
        ))}
      </ul>
    </section>
  );
}

function EmptyVerdict() {
  return (
    <div className="empty">
      <h3>No receiver yet</h3>
      <p>What each receiver gets, and why not, is shown here as soon as one is drawn.</p>
    </div>
  );
}
