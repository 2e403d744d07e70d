/** Price and time of one kind, each by itself: what is typed in one draws no other anew. */
import { useId } from "react";
import { PLACEHOLDER_PRICES } from "../../../paperwork/prices.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { usePrices } from "../../../store/prices.ts";
import { readNumeral, writeNumeral } from "../../kit/fields/numeral.ts";
import { notTaken, useDraft } from "../../kit/useDraft.ts";
import styles from "./Prices.module.css";

type Props = { readonly kind: string; readonly name: string };

export function PricedName({ kind, name }: Props) {
  const price = usePrices((s) => s.prices[kind]);
  const placeholder = PLACEHOLDER_PRICES[kind];
  const isOwn = price?.price !== placeholder?.price || price?.workMinutes !== placeholder?.workMinutes;
  return (
    <>
      {name} {isOwn ? <span className="badge note">your own</span> : null}
    </>
  );
}

export function PriceField({ kind, name }: Props) {
  const price = usePrices((s) => s.prices[kind]?.price);
  if (price === undefined) return null;
  return (
    <Amount
      label={`Price of ${name}`}
      unit={isSoldByMetre(kind) ? "per m" : ""}
      value={price}
      onTry={(value) => usePrices.getState().setPrice(kind, { price: value })}
    />
  );
}

export function TimeField({ kind, name }: Props) {
  const minutes = usePrices((s) => s.prices[kind]?.workMinutes);
  if (minutes === undefined) return null;
  return (
    <Amount
      label={`Minutes to fit ${name}`}
      unit={isSoldByMetre(kind) ? "min a run" : "min"}
      value={minutes}
      onTry={(value) => usePrices.getState().setPrice(kind, { workMinutes: value })}
    />
  );
}

function isSoldByMetre(kind: string): boolean {
  return kindOf(kind)?.trade.soldBy === "metre";
}

type AmountProps = {
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly onTry: (value: number) => string | null;
};

/** Takes what is typed at once; while it cannot be taken, the last good value counts. */
function Amount({ label, unit, value, onTry }: AmountProps) {
  const id = useId();
  const { problem, input } = useDraft({
    value: writeNumeral(value),
    onTry: (text) => {
      const typed = readNumeral(text);
      return typed === null ? `“${text}” is not a number.` : onTry(typed);
    },
  });
  return (
    <span className={styles.amount}>
      <input
        className="field-input number"
        inputMode="decimal"
        autoComplete="off"
        aria-label={unit ? `${label}, ${unit}` : label}
        aria-describedby={problem ? id : undefined}
        {...input}
      />
      {unit ? <span className="quiet small">{unit}</span> : null}
      {problem ? (
        <span id={id} role="alert" className="field-problem">
          {notTaken(problem, writeNumeral(value))}
        </span>
      ) : null}
    </span>
  );
}
