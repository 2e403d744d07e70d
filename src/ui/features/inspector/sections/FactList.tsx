import type { ReactNode } from "react";
import styles from "./Sections.module.css";

/** A short list of terms with their figures. */
export function FactList({ children }: { readonly children: ReactNode }) {
  return <dl className={styles.facts}>{children}</dl>;
}

export function Fact({
  term,
  value,
  note,
}: {
  readonly term: string;
  readonly value: ReactNode;
  readonly note?: string;
}) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>
        <span className="number">{value}</span>
        {note ? <span className="quiet small"> {note}</span> : null}
      </dd>
    </div>
  );
}
