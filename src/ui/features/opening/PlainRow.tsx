import type { PlainPart } from "./partWords.ts";

type Props = {
  readonly part: PlainPart;
  readonly isChosen: boolean;
  readonly onChoose: (isChosen: boolean) => void;
};

/** One part with all its values and wires. */
export function PlainRow({ part, isChosen, onChoose }: Props) {
  return (
    <li className="plain-row">
      <label className="plain-check">
        <input type="checkbox" checked={isChosen} onChange={(event) => onChoose(event.target.checked)} />
        <strong>{part.label}</strong> <span className="quiet small">{part.kind}</span>
      </label>
      {part.values.length > 0 ? (
        <dl className="plain-values small">
          {part.values.map(({ label, value }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      ) : null}
      <p className="quiet small">
        {part.wires.length === 0 ? "No wires." : `Wires: ${part.wires.map((w) => w.words).join("; ")}.`}
      </p>
    </li>
  );
}
