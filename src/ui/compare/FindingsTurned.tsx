import type { Finding } from "../../findings/finding.ts";
import { counted } from "../format.ts";
import { Message } from "../verdict/Message.tsx";

type Props = { readonly cured: readonly Finding[]; readonly caused: readonly Finding[] };

/** What is no longer found, and what is new or graver. */
export function FindingsTurned({ cured, caused }: Props) {
  return (
    <>
      <Lines title="New or graver findings" none="No finding is new or graver." findings={caused} />
      <Lines title="Findings that go" none="No finding goes." findings={cured} />
    </>
  );
}

type LinesProps = { readonly title: string; readonly none: string; readonly findings: readonly Finding[] };

function Lines({ title, none, findings }: LinesProps) {
  return (
    <section>
      <h3>
        {title}
        {findings.length > 0 ? <span className="quiet"> · {counted(findings.length, "finding")}</span> : null}
      </h3>
      {findings.length === 0 ? (
        <p className="quiet">{none}</p>
      ) : (
        <ul className="finding-lines">
          {findings.map((f) => (
            <li key={f.id}>
              <span className={`badge ${f.severity}`}>{f.severity}</span> <Message finding={f} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
