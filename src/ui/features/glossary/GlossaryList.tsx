import { useGlossary } from "../../kit/asked/glossary.ts";
import { counted } from "../../kit/format.ts";
import { foundTerms } from "./found.ts";
import styles from "./GlossaryList.module.css";

/** The words of the trade, to read through or to look one up. */
export function GlossaryList() {
  const query = useGlossary((s) => s.query);
  const entries = foundTerms(query);
  return (
    <div className={styles.glossary}>
      <input
        className="field-input"
        type="search"
        aria-label="Search the glossary"
        placeholder="Search the glossary"
        value={query}
        onChange={(event) => useGlossary.setState({ query: event.target.value })}
      />
      <p className="unseen" role="status">
        {query.trim() === "" ? "" : counted(entries.length, "term")}
      </p>
      {entries.length === 0 ? <p className="quiet">No term matches.</p> : null}
      <dl className={styles.terms}>
        {entries.map(({ terms, meaning }) => (
          <div key={terms[0]}>
            <dt>{terms.join(", ")}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
