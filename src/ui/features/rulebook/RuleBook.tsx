import { useEffect, useRef } from "react";
import { ruleBook } from "../../../sentences/explain/ruleBook.ts";
import { addressOfRule, openRuleBook, useBook } from "../../kit/asked/book.ts";
import styles from "./RuleBook.module.css";
import { RulePage } from "./RulePage.tsx";

/** Every rule by its title, and the one that is read in full. */
export function RuleBook() {
  const wanted = useBook((s) => s.rule);
  const rules = ruleBook();
  const found = rules.find((r) => r.id === wanted);
  const entry = found ?? rules[0];
  const page = useRef<HTMLElement>(null);
  useRuleInAddress(found?.id ?? "");
  // biome-ignore lint/correctness/useExhaustiveDependencies: every other rule is read from its beginning.
  useEffect(() => {
    if (page.current) page.current.scrollTop = 0;
  }, [entry?.id]);
  if (!entry) return null;
  return (
    <div className={styles.book}>
      <div className={styles.spread}>
        <nav className={styles.contents} aria-label="All rules">
          <ul className={styles.titles}>
            {rules.map(({ id, title }) => (
              <li key={id}>
                <button
                  type="button"
                  className={styles.title}
                  aria-current={id === entry.id ? "page" : undefined}
                  onClick={() => openRuleBook(id)}
                >
                  {title}
                </button>
              </li>
            ))}
          </ul>
          <label className={styles.choice}>
            Rule
            <select
              className="field-input"
              value={entry.id}
              onChange={(event) => openRuleBook(event.target.value)}
            >
              {rules.map(({ id, title }) => (
                <option key={id} value={id}>
                  {title}
                </option>
              ))}
            </select>
          </label>
        </nav>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a rule longer than the book is scrolled by the keys. */}
        <article className={styles.page} ref={page} tabIndex={0} aria-label={entry.title}>
          {found || wanted === "" ? null : (
            <p className="state bad">There is no rule “{wanted.slice(0, 60)}”. Here are all rules.</p>
          )}
          <RulePage key={entry.id} entry={entry} />
        </article>
      </div>
    </div>
  );
}

/** While the book is open the address of the page leads back to the rule, so that it can be handed on. */
function useRuleInAddress(rule: string): void {
  useEffect(() => {
    window.history.replaceState(null, "", addressOfRule(window.location.href, rule));
  }, [rule]);
  useEffect(() => () => window.history.replaceState(null, "", addressOfRule(window.location.href, null)), []);
}
