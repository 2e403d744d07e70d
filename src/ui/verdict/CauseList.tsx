import { ChevronRight, CircleAlert, Info, TriangleAlert } from "lucide-react";
import { memo } from "react";
import type { Cause, Report, Severity } from "../../findings/finding.ts";
import { countsOf, followsLine } from "../../sentences/cause.ts";
import { usePart } from "../../store/hooks.ts";
import { counted } from "../format.ts";
import { selectFromPane } from "../reveal.ts";
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
  return (
    <section aria-label="Causes">
      <h3 className="verdict-heading">{countsOf(report)}</h3>
      {SEVERITIES.map(({ severity, icon: Icon }) => {
        const own = causes.filter((cause) => cause.severity === severity);
        if (own.length === 0) return null;
        return (
          <details key={severity} className="finding-group" open={severity !== "note" || own.length <= 3}>
            <summary className={`finding-heading ${severity}`}>
              <Icon size={16} aria-hidden /> {counted(own.length, severity)}
            </summary>
            <ul className="finding-list">
              {own.map((cause) => (
                <CauseItem key={cause.id} cause={cause} />
              ))}
            </ul>
          </details>
        );
      })}
    </section>
  );
}

/** What is to be taken in hand; who suffers and what else is found because of it opens below. */
const CauseItem = memo(function CauseItem({ cause }: { readonly cause: Cause }) {
  const { root, findings, receivers, outlets } = cause;
  const [follows] = followsLine(cause);
  return (
    <FindingItem finding={root} severity={cause.severity}>
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
  const label = usePart(part)?.label ?? part;
  return (
    <button type="button" className="link" onClick={() => selectFromPane({ parts: [part] })}>
      {label}
    </button>
  );
}
