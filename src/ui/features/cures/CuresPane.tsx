import { GitCompareArrows, LoaderCircle, RefreshCw, Search, Square, Undo2 } from "lucide-react";
import { useMemo } from "react";
import { byRank, type Effort } from "../../../remedies/rank.ts";
import { causesOfSeverity } from "../../../sentences/cause.ts";
import { useApp } from "../../../store/app.ts";
import { useCures } from "../../../store/cures.ts";
import { useDocumentReport } from "../../../store/hooks.ts";
import { usePrices } from "../../../store/prices.ts";
import { compareWithFormer } from "../../kit/asked/compared.ts";
import { findCures } from "../../kit/asked/findCures.ts";
import { counted } from "../../kit/format.ts";
import { openDialog } from "../../kit/panes.ts";
import { Message } from "../../kit/told/Message.tsx";
import { currentCureRequest } from "./currentCureRequest.ts";
import { ProposalCard } from "./ProposalCard.tsx";
import "./cures.css";
import { plural } from "../../../words/plural.ts";

/** Changes that would help, each tried by the evaluator before it is shown. */
export function CuresPane() {
  const status = useCures((s) => s.status);
  const isEmpty = useApp((s) => s.design.parts.length === 0);
  const outdated = useIsOutdated();
  if (isEmpty)
    return (
      <div className="empty">
        <h3>Nothing to cure yet</h3>
        <p>If something is wrong in what you draw, changes that cure it are looked for here.</p>
      </div>
    );
  if (status === "idle") return <Invitation />;
  return (
    <div className="cures">
      {outdated ? (
        <Outdated />
      ) : (
        <>
          <Heading />
          <EffortChoice />
          <Results />
          <PriceNote />
        </>
      )}
    </div>
  );
}

/** Proposals hold for the very document that was searched. */
function useIsOutdated(): boolean {
  const document = useCures((s) => s.document);
  return useApp((s) => document !== null && s.design !== document);
}

function Invitation() {
  const { errors, warnings } = useWrong();
  if (errors + warnings === 0)
    return (
      <div className="empty">
        <h3>Nothing is wrong: there is nothing to cure</h3>
        <p>
          The verdict has no error and no warning. Change something, or ask at an LNB or a receiver what would
          break if you swap it.
        </p>
      </div>
    );
  return (
    <div className="empty">
      <h3>Find cures</h3>
      <p>
        {wrongWords(errors, warnings)} Likely changes are tried one by one and in combinations. Only those
        that cure something and break nothing are shown.
      </p>
      <div className="button-row">
        <button type="button" className="button main" onClick={() => void findCures()}>
          <Search size={16} aria-hidden /> Find cures
        </button>
      </div>
    </div>
  );
}

/** Of the document, also while a preview is shown. */
function useWrong(): { readonly errors: number; readonly warnings: number } {
  const report = useDocumentReport();
  return { errors: causesOfSeverity(report, "error"), warnings: causesOfSeverity(report, "warning") };
}

function wrongWords(errors: number, warnings: number): string {
  const words = [
    ...(errors > 0 ? [counted(errors, "error")] : []),
    ...(warnings > 0 ? [counted(warnings, "warning")] : []),
  ];
  const what = words.join(" and ");
  return plural(errors + warnings, { one: `There is ${what}.`, other: `There are ${what}.` });
}

function Heading() {
  const { complaint, status } = useCures();
  const { target, changed } = complaint;
  return (
    <header className="cures-head">
      <h3>{target ? "Cures for one finding" : "Cures for all that is wrong"}</h3>
      {changed ? <p className="small">With this already done: {changed.title}</p> : null}
      {target ? (
        <p className="small quiet">
          <Message finding={target} />
        </p>
      ) : null}
      <div className="cures-line">
        <Found />
        {status === "running" ? (
          <button type="button" className="button" onClick={() => useCures.getState().stop()}>
            <Square size={14} aria-hidden /> Stop
          </button>
        ) : (
          <button
            type="button"
            className="button"
            onClick={() => void findCures(currentCureRequest(complaint))}
          >
            <RefreshCw size={15} aria-hidden /> Search again
          </button>
        )}
      </div>
    </header>
  );
}

function Found() {
  const { status, tried, proposals, problem } = useCures();
  const found = proposals.length === 0 ? "none proved yet" : `${proposals.length} proved`;
  const words =
    status === "running"
      ? `Tried ${tried}, ${found}`
      : status === "stopped"
        ? `Stopped after ${counted(tried, "trial")}, ${proposals.length} proved`
        : `${counted(tried, "change")} tried, ${proposals.length} proved`;
  return (
    <p className="cures-found" role="status">
      {status === "running" ? <LoaderCircle className="turning" size={15} aria-hidden /> : null}
      {status === "failed" ? `The search stopped: ${problem}` : words}
    </p>
  );
}

function Results() {
  const found = useCures((s) => s.proposals);
  const effort = useCures((s) => s.effort);
  const status = useCures((s) => s.status);
  const hasTarget = useCures((s) => s.complaint.target !== undefined);
  const aim = hasTarget ? "one finding" : "errors";
  const proposals = useMemo(() => [...found].sort(byRank(aim, effort)), [found, aim, effort]);
  if (proposals.length === 0) {
    if (status === "running")
      return <p className="quiet">The first proof mostly comes within a second or two.</p>;
    if (status !== "done") return null;
    return (
      <p>
        No change that was tried cures this without breaking something else.{" "}
        {hasTarget
          ? "Other findings may be the cause: try to cure everything together."
          : "A cure may take more than three changes at once. Cure one finding at a time, or change the plan."}
      </p>
    );
  }
  return (
    <ol className="proposals" aria-label="Proved changes, the least trouble first">
      {proposals.map((proposal) => (
        <ProposalCard key={proposal.id} proposal={proposal} />
      ))}
    </ol>
  );
}

const EFFORTS: readonly (readonly [Effort, string])[] = [
  ["all", "Least in all"],
  ["work", "Least work"],
  ["money", "Lowest price"],
  ["cables", "Fewest cables"],
];

/** What the list is sorted by; only where there is something to sort. */
function EffortChoice() {
  const effort = useCures((s) => s.effort);
  const several = useCures((s) => s.proposals.length > 1);
  if (!several) return null;
  return (
    <fieldset className="segments">
      <legend className="unseen">Sort by</legend>
      {EFFORTS.map(([key, label]) => (
        <label key={key} className="segment">
          <input
            className="unseen"
            type="radio"
            name="cures-sort"
            checked={effort === key}
            onChange={() => useCures.getState().sortBy(key)}
          />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** The design went on: by a cure that was taken over, or by hand. */
function Outdated() {
  const { errors, warnings } = useWrong();
  const document = useCures((s) => s.document);
  const isWhole = errors + warnings === 0;
  return (
    <section className={isWhole ? "cures-after ok" : "cures-after"} aria-label="After the change">
      <p>
        <strong>
          {isWhole ? "Nothing is wrong any more." : `The design has changed. ${wrongWords(errors, warnings)}`}
        </strong>
      </p>
      <div className="button-row">
        {isWhole ? null : (
          <button type="button" className="button main" onClick={() => void findCures()}>
            <Search size={16} aria-hidden /> Find cures for what is left
          </button>
        )}
        <button type="button" className="button" onClick={() => useApp.getState().undo()}>
          <Undo2 size={16} aria-hidden /> Undo the last change
        </button>
        {document ? (
          <button type="button" className="button" onClick={() => compareWithFormer(document)}>
            <GitCompareArrows size={16} aria-hidden /> Before and after…
          </button>
        ) : null}
      </div>
    </section>
  );
}

function PriceNote() {
  const trouble = usePrices((s) => s.trouble);
  return (
    <p className="quiet small">
      What cures most comes first, then what takes least of what you sort by. Times and prices are
      placeholders until you put in your own.{" "}
      <button type="button" className="link" onClick={() => openDialog("prices")}>
        Prices and times…
      </button>{" "}
      {trouble}
    </p>
  );
}
