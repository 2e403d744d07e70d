import { ChevronRight, CircleAlert, Info, TriangleAlert } from "lucide-react";
import { memo } from "react";
import type { Cause, Report, Severity } from "../../../findings/finding.ts";
import { countsOf, followsLine } from "../../../sentences/cause.ts";
import { capital } from "../../../sentences/explain/plainWords.ts";
import { usePart } from "../../../store/hooks.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import { counted } from "../../kit/format.ts";
import { FindingItem } from "./FindingItem.tsx";

const SEVERITIES: readonly {
  readonly severity: Severity;
  readonly icon: typeof Info;
}[] = [
  { severity: "error", icon: CircleAlert },
  { severity: "warning", icon: TriangleAlert },
  { severity: "note", icon: Info },
];

/** Causes by their severity, worst first, each with what follows from it folded beneath. */
export function CauseList({ report }: { readonly report: Report }) {
  const { causes } = report;
  if (causes.length === 0) return <p className="quiet verdict-heading">{countsOf(report)}.</p>;
  const groups = SEVERITIES.flatMap(({ severity, icon }) => {
    const own = causes.filter((cause) => cause.severity === severity);
    return own.length > 0 ? [{ severity, icon, own }] : [];
  });
  const [only, ...others] = groups;
  // Where all are of one kind, a heading of its own would only count them again.
  if (only && others.length === 0)
    return (
      <section aria-label="Causes">
        <h3 className={`finding-heading ${only.severity}`}>
          <only.icon size={16} aria-hidden /> <span className="unseen">{capital(only.severity)}: </span>
          {countsOf(report)}
        </h3>
        <Causes causes={only.own} />
      </section>
    );
  return (
    <section aria-label="Causes">
      <h3 className="verdict-heading">{countsOf(report)}</h3>
      {groups.map(({ severity, icon: Icon, own }) => (
        <details key={severity} className="finding-group" open={severity !== "note" || own.length <= 3}>
          <summary className={`finding-heading ${severity}`}>
            <Icon size={16} aria-hidden /> {counted(own.length, severity)}
          </summary>
          <Causes causes={own} />
        </details>
      ))}
    </section>
  );
}

function Causes({ causes }: { readonly causes: readonly Cause[] }) {
  return (
    <ul className="finding-list">
      {causes.map((cause) => (
        <CauseItem key={cause.id} cause={cause} />
      ))}
    </ul>
  );
}

/** What is to be taken in hand; who suffers and what else is found because of it opens below. */
const CauseItem = memo(function CauseItem({ cause }: { readonly cause: Cause }) {
  const { root, findings, receivers, outlets } = cause;
  const [follows] = followsLine(cause);
  return (
    <FindingItem finding={root}>
      {follows === undefined ? null : (
        <details className="cause-follows">
          <summary>
            <ChevronRight size={14} aria-hidden /> {follows}
          </summary>
          <PartLinks title="Receivers" parts={receivers} />
          <PartLinks title="Outlets" parts={outlets} />
          {findings.length > 1 ? (
            <ul className="finding-list">
              {findings.slice(1).map((finding) => (
                <FindingItem key={finding.id} finding={finding} isFolded />
              ))}
            </ul>
          ) : null}
        </details>
      )}
    </FindingItem>
  );
});

function PartLinks({ title, parts }: { readonly title: string; readonly parts: readonly string[] }) {
  if (parts.length === 0) return null;
  return (
    <div className="cause-parts small">
      <strong>{title}:</strong>
      <ul>
        {parts.map((part) => (
          <li key={part}>
            <PartLink part={part} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function PartLink({ part }: { readonly part: string }) {
  const label = usePart(part)?.label || part;
  return (
    <button type="button" className="link" onClick={() => selectFromPane({ parts: [part] })}>
      {label}
    </button>
  );
}
