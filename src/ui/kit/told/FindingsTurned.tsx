import type { Evaluation } from "../../../evaluate/evaluation.ts";
import type { Finding } from "../../../findings/finding.ts";
import type { Comparison } from "../../../remedies/compare.ts";
import { counted } from "../format.ts";
import styles from "./FindingsTurned.module.css";
import { Message } from "./Message.tsx";

type Props = { readonly comparison: Pick<Comparison, "cured" | "caused" | "evaluations"> };

/** What is no longer found, and what is new or graver. */
export function FindingsTurned({ comparison: { cured, caused, evaluations } }: Props) {
  return (
    <>
      <Lines
        title="New or graver findings"
        none="No finding is new or graver."
        findings={caused}
        told={evaluations.after}
      />
      <Lines title="Findings that go" none="No finding goes." findings={cured} told={evaluations.before} />
    </>
  );
}

type LinesProps = {
  readonly title: string;
  readonly none: string;
  readonly findings: readonly Finding[];
  readonly told: Evaluation;
};

function Lines({ title, none, findings, told }: LinesProps) {
  return (
    <section>
      <h3>
        {title}
        {findings.length > 0 ? <span className="quiet"> · {counted(findings.length, "finding")}</span> : null}
      </h3>
      {findings.length === 0 ? (
        <p className="quiet">{none}</p>
      ) : (
        <ul className={styles.lines}>
          {findings.map((f) => (
            <li key={f.id}>
              <span className={`badge ${f.severity}`}>{f.severity}</span>{" "}
              <Message finding={f} evaluation={told} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
