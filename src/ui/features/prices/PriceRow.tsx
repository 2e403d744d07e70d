import { memo, useId } from "react";
import { PLACEHOLDER_PRICES } from "../../../paperwork/prices.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { usePrices } from "../../../store/prices.ts";
import { readNumeral, writeNumeral } from "../../kit/fields/numeral.ts";
import { notTaken, useDraft } from "../../kit/useDraft.ts";

/** Price and time of one kind. */
export const PriceRow = memo(function PriceRow(props: { readonly kind: string; readonly name: string }) {
  const { kind, name } = props;
  const price = usePrices((s) => s.prices[kind]);
  const placeholder = PLACEHOLDER_PRICES[kind];
  if (!price) return null;
  const byMetre = kindOf(kind)?.trade.soldBy === "metre";
  const isOwn = price.price !== placeholder?.price || price.workMinutes !== placeholder.workMinutes;
  return (
    <tr className={isOwn ? "own-price" : undefined}>
      <th scope="row">
        {name} {isOwn ? <span className="badge note">your own</span> : null}
      </th>
      <td>
        <Amount
          label={`Price of ${name}`}
          unit={byMetre ? "per m" : ""}
          value={price.price}
          onTry={(value) => usePrices.getState().setPrice(kind, { price: value })}
        />
      </td>
      <td>
        <Amount
          label={`Minutes to fit ${name}`}
          unit={byMetre ? "min a run" : "min"}
          value={price.workMinutes}
          onTry={(value) => usePrices.getState().setPrice(kind, { workMinutes: value })}
        />
      </td>
    </tr>
  );
});

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
    <span className="price-amount">
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
