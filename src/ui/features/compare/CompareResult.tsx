import { Printer } from "lucide-react";
import { usePrices } from "../../../store/prices.ts";
import { openDialog } from "../../kit/panes.ts";
import { printPage } from "../../kit/printPage.ts";
import { costWords } from "../../kit/told/costWords.ts";
import { FindingsTurned } from "../../kit/told/FindingsTurned.tsx";
import type { Compared } from "../../kit/told/sides.ts";
import { siteWords } from "../../kit/told/siteWords.ts";
import { WorkList } from "../../kit/told/WorkList.tsx";
import styles from "./Compare.module.css";
import { CustomerPage } from "./CustomerPage.tsx";
import { PlaceTable } from "./PlaceTable.tsx";

export function CompareResult({ compared }: { readonly compared: Compared }) {
  const { comparison, before, after, names } = compared;
  const currency = usePrices((s) => s.currency);
  const { work, cost, cured, caused } = comparison;
  if (work.length === 0 && cured.length + caused.length === 0)
    return <p>Both are the same: no part and no wire differs.</p>;
  return (
    <>
      <dl className={styles.sums}>
        <dt>{names[0]}</dt>
        <dd>{siteWords(before)}</dd>
        <dt>{names[1]}</dt>
        <dd>{siteWords(after)}</dd>
      </dl>
      <div className="button-row">
        <button
          type="button"
          className="button"
          onClick={() => printPage(() => <CustomerPage compared={compared} />)}
        >
          <Printer size={16} aria-hidden /> Print for the customer…
        </button>
      </div>
      <section>
        <h3>What is to be done</h3>
        <WorkList work={work} before={before.design} after={after.design} />
        <p>
          {costWords(cost, currency)}{" "}
          <span className="quiet small">
            by{" "}
            <button type="button" className="link" onClick={() => openDialog("prices")}>
              your own prices and times
            </button>
            ; placeholders until you put them in
          </span>
        </p>
      </section>
      <PlaceTable compared={compared} />
      <FindingsTurned comparison={comparison} />
    </>
  );
}
