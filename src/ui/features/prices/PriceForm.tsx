import { Download, FileUp, RotateCcw } from "lucide-react";
import { useEffect, useState } from "react";
import { PLACEHOLDER_NOTE, PLACEHOLDER_PRICES } from "../../../paperwork/prices.ts";
import { CATALOGUE, kindsOf } from "../../../parts/catalogue.ts";
import { FAMILY_NAMES } from "../../../parts/contract.ts";
import { writePriceFile } from "../../../store/priceFile.ts";
import { MOST_CURRENCY_LENGTH, usePrices } from "../../../store/prices.ts";
import { download } from "../../kit/download.ts";
import { pickTextFile } from "../../kit/pickTextFile.ts";
import { Table } from "../../kit/Table.tsx";
import { useDraft } from "../../kit/useDraft.ts";
import { PricedName, PriceField, TimeField } from "./PriceFields.tsx";
import styles from "./Prices.module.css";

type Former = Pick<ReturnType<typeof usePrices.getState>, "prices" | "currency">;

/** The price list: what one of each kind costs, and how long it takes to put in place. */
export function PriceForm() {
  const { currency, trouble } = usePrices();
  const [former, setFormer] = useState<Former | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const currencyDraft = useDraft({
    value: currency,
    onTry: (text) => usePrices.getState().setCurrency(text),
  });
  useEffect(() => void usePrices.getState().load(), []);
  const replace = (action: () => string | null) => {
    const { prices, currency } = usePrices.getState();
    const failed = action();
    setProblem(failed);
    if (failed === null) setFormer({ prices, currency });
  };
  return (
    <div className={styles.prices}>
      <p className="quiet">{PLACEHOLDER_NOTE} No real prices are known here, and none are claimed.</p>
      {trouble ? <p className="field-problem">{trouble}</p> : null}
      <div className={styles.tools}>
        <label className={styles.currency}>
          Currency
          <input
            className="field-input"
            maxLength={MOST_CURRENCY_LENGTH}
            placeholder="any"
            {...currencyDraft.input}
          />
        </label>
        <button
          type="button"
          className="button"
          onClick={() => download(writePriceFile(usePrices.getState()), "prices.json")}
        >
          <Download size={16} aria-hidden /> Download
        </button>
        <button
          type="button"
          className="button"
          onClick={async () => {
            const text = await pickTextFile();
            if (text !== null) replace(() => usePrices.getState().takeFile(text));
          }}
        >
          <FileUp size={16} aria-hidden /> Read from a file…
        </button>
        <button
          type="button"
          className="button"
          onClick={() =>
            replace(() => {
              usePrices.getState().replace({ prices: PLACEHOLDER_PRICES, currency: "" });
              return null;
            })
          }
        >
          <RotateCcw size={16} aria-hidden /> Reset to placeholders
        </button>
      </div>
      <div role="status">
        {former ? (
          <p className="undo-bar">
            The list was replaced.
            <button
              type="button"
              className="button"
              onClick={() => {
                usePrices.getState().replace(former);
                setFormer(null);
              }}
            >
              Undo
            </button>
          </p>
        ) : null}
        {problem ? <p className="field-problem">{problem}</p> : null}
      </div>
      <PriceTable />
      <p className="quiet small">
        Kept in this browser only, for all designs. Removing a part counts a quarter of its time, changing a
        setting five minutes.
      </p>
    </div>
  );
}

function PriceTable() {
  return (
    <Table
      label="Prices and times to fit"
      fits
      groups={families().map((family) => ({
        key: family,
        head: FAMILY_NAMES[family],
        rows: kindsOf(family),
      }))}
      keyOf={({ kind }) => kind}
      columns={[
        { head: "Part", cell: ({ kind, name }) => <PricedName kind={kind} name={name} /> },
        { head: "Price", cell: ({ kind, name }) => <PriceField kind={kind} name={name} /> },
        { head: "Time to fit", cell: ({ kind, name }) => <TimeField kind={kind} name={name} /> },
      ]}
    />
  );
}

function families() {
  return [...new Set(CATALOGUE.map((kind) => kind.family))];
}
