import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import { decimal } from "../../../kit/format.ts";
import { type LoadLine, loadLines } from "./loads.ts";
import styles from "./Sections.module.css";

/** How far the bar reaches below and above the limit [dB]. */
const BELOW_DB = 30;
const ABOVE_DB = 10;

/** For a part with active stages: what drives them, and how near to their limit. */
export function LoadSection({ record }: { readonly record: PartRecord }) {
  const lines = loadLines(record);
  if (lines.length === 0) return null;
  return (
    <section aria-label="Load of its stages">
      <h3>How hard it is driven</h3>
      {lines.map((line) => (
        <LoadOf key={line.words} line={line} />
      ))}
    </section>
  );
}

function LoadOf({ line }: { readonly line: LoadLine }) {
  const over = line.levelDbuv - line.allowedDbuv;
  const share = Math.min(1, Math.max(0, (over + BELOW_DB) / (BELOW_DB + ABOVE_DB)));
  const spare = over > 0 ? `${decimal(over)} dB over the limit` : `${decimal(-over)} dB below the limit`;
  return (
    <div className={styles.load}>
      <p className={over > 0 ? "state bad" : "state"}>
        <strong>{line.ports.join(", ")}:</strong> {spare}
      </p>
      <div className={over > 0 ? `${styles.bar} ${styles.over}` : styles.bar} aria-hidden="true">
        <span className={styles.fill} style={{ width: `${share * 100}%` }} />
        <span className={styles.limit} style={{ left: `${(BELOW_DB / (BELOW_DB + ABOVE_DB)) * 100}%` }} />
      </div>
      <p className="small">
        {line.words}. {decimal(line.totalDbuv)} dBµV in all.
      </p>
    </div>
  );
}
