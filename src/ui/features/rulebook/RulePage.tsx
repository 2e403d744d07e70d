import { useMemo } from "react";
import { evaluate } from "../../../evaluate/evaluate.ts";
import type { Finding, Severity } from "../../../findings/finding.ts";
import { report } from "../../../findings/report.ts";
import type { RuleExample } from "../../../sentences/explain/examples.ts";
import type { RuleEntry } from "../../../sentences/explain/ruleBook.ts";
import { cureOf, messageOf, type RuleLink } from "../../../sentences/finding.ts";
import { useApp } from "../../../store/app.ts";
import { plural } from "../../../words/plural.ts";
import { PrintDrawing } from "../../canvas/PrintDrawing.tsx";
import { selectFromPane } from "../../canvas/reveal.ts";
import { closeRuleBook, openRuleBook } from "../../kit/asked/book.ts";
import { revealExplained } from "../../kit/asked/explained.ts";
import { counted } from "../../kit/format.ts";
import { showPane } from "../../kit/panes.ts";
import { openAsNewDesign } from "../documents/actions.ts";
import { ExplanationView } from "../explain/ExplanationView.tsx";
import styles from "./RuleBook.module.css";

/** One rule: why it exists, an example that it speaks of and one that it has nothing to say about. */
export function RulePage({ entry }: { readonly entry: RuleEntry }) {
  const { id, title, explain, source, severities, neighbours, namedBy, speaks, silent, more } = entry;
  return (
    <>
      <h3>{title}</h3>
      <p className="chips">
        {severities.map((severity) => (
          <span key={severity} className={`badge ${severity}`}>
            {severity}
          </span>
        ))}
      </p>
      <p>{explain}</p>
      <p className="quiet small">Source: {source}.</p>
      <InOpenDesign rule={id} />
      {speaks ? <Example rule={id} example={speaks} shows="speaking" /> : null}
      {more.map((example) => (
        <Example key={example.title} rule={id} example={example} shows="speaking too" />
      ))}
      {silent ? <Example rule={id} example={silent} shows="silent" /> : null}
      <Links title="Read next" links={neighbours} />
      <Links title="Rules that lead here" links={namedBy} />
    </>
  );
}

/** How often the rule speaks about what is on the canvas now. */
function InOpenDesign({ rule }: { readonly rule: string }) {
  const findings = useApp((s) => s.report.findings);
  const own = findings.filter((f) => f.rule === rule);
  const [first] = own;
  if (!first) return <p className="quiet small">No finding from this rule in the open design.</p>;
  return (
    <p className="small">
      In the open design: {counted(own.length, "finding")}.{" "}
      <button
        type="button"
        className="link"
        onClick={() => {
          closeRuleBook();
          showExplained(first);
          selectFromPane({ parts: first.parts, wires: first.wires });
        }}
      >
        {plural(own.length, { one: "Show it", other: "Show the first" })}
      </button>
    </p>
  );
}

function showExplained(finding: Finding): void {
  showPane("verdict");
  revealExplained(finding);
}

const HEADINGS = {
  speaking: "An example that triggers it: ",
  "speaking too": "Another that triggers it: ",
  silent: "An example that does not: ",
} as const;

function Example({
  rule,
  example,
  shows,
}: {
  readonly rule: string;
  readonly example: RuleExample;
  readonly shows: keyof typeof HEADINGS;
}) {
  const evaluation = useMemo(() => evaluate(example.load()), [example]);
  const judged = useMemo(() => report(evaluation), [evaluation]);
  const finding = judged.findings.find((f) => f.rule === rule);
  return (
    <section className={styles.example}>
      <h4>
        {HEADINGS[shows]}
        {example.title.charAt(0).toLowerCase() + example.title.slice(1)}
      </h4>
      <div className={styles.drawing}>
        <PrintDrawing evaluation={evaluation} report={judged} />
      </div>
      {shows !== "silent" && finding ? (
        <>
          <p className={styles.message} data-severity={finding.severity satisfies Severity}>
            {messageOf(finding, evaluation)}{" "}
            <span className="finding-cure">{cureOf(finding, evaluation) ?? ""}</span>
          </p>
          {shows === "speaking" ? (
            <ExplanationView finding={finding} evaluation={evaluation} hasLinks={false} />
          ) : null}
        </>
      ) : null}
      <button type="button" className="button" onClick={() => void openExample(rule, example)}>
        Open this example as a design of its own
      </button>
    </section>
  );
}

/** Opens an example beside the present design; the rule's finding stands explained in the verdict. */
async function openExample(rule: string, example: RuleExample): Promise<void> {
  closeRuleBook();
  await openAsNewDesign(example.load());
  const finding = useApp.getState().report.findings.find((f) => f.rule === rule);
  if (finding) showExplained(finding);
  else showPane("verdict");
}

function Links({ title, links }: { readonly title: string; readonly links: readonly RuleLink[] }) {
  if (links.length === 0) return null;
  return (
    <nav aria-label={title}>
      <h4>{title}</h4>
      <div className="chips">
        {links.map((link) => (
          <button key={link.id} type="button" className="chip" onClick={() => openRuleBook(link.id)}>
            {link.title}
          </button>
        ))}
      </div>
    </nav>
  );
}
