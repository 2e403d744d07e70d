import type { SupplyStep } from "../../../findings/walk/supply.ts";
import { decimal } from "../../kit/format.ts";
import type { WalkStop } from "./stops.ts";

type Props = {
  readonly branch: readonly SupplyStep[];
  readonly stops: readonly WalkStop[];
  readonly stop: number;
  /** Absent on paper. */
  readonly onStop?: (stop: number) => void;
};

const END_WORDS: Readonly<Record<NonNullable<SupplyStep["end"]>, string>> = {
  feeds: "feeds it",
  "too low": "✕ too low",
  heard: "hears the commands",
  blocked: "✕ blocked",
  shorted: "✕ shorted",
  "nothing above": "nothing above",
  "met before": "as listed before",
  loop: "✕ on a loop",
};

/** Every part on the way up: the volts that arrive, the current, and what it takes of them. */
export function SupplyTable({ branch, stops, stop, onStop }: Props) {
  return (
    <table className="step-table">
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">Step</span>#
          </th>
          <th scope="col">Part</th>
          <Heading name="Vertical" unit="V" />
          <Heading name="Horizontal" unit="V" />
          <Heading name="Now" unit="V" />
          <Heading name="Current" unit="mA" />
          <Heading name="Takes" unit="V" />
          <Heading name="Of its own" unit="Ω" />
          <th scope="col">Tone</th>
          <th scope="col">End</th>
        </tr>
      </thead>
      <tbody>
        {branch.map((step, n) => (
          <tr
            // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place on the way.
            key={n}
            className={onStop && stop === n ? "current" : undefined}
            aria-current={onStop && stop === n ? "step" : undefined}
          >
            <td className="number">{n + 1}</td>
            <th scope="row">
              {onStop ? (
                <button type="button" className="link" onClick={() => onStop(n)}>
                  {stops[n]?.label}
                </button>
              ) : (
                stops[n]?.label
              )}
              {step.dormant ? <span className="quiet"> (asleep)</span> : null}
            </th>
            <td className="number">{decimal(step.volts13)}</td>
            <td className="number">{decimal(step.volts18)}</td>
            <td className="number">{decimal(step.volts)}</td>
            <td className="number">{decimal(step.milliamps, 0)}</td>
            <td className="number">{step.dropVolts > 0 ? decimal(step.dropVolts) : "–"}</td>
            <td className="number">{step.ohms > 0 ? decimal(step.ohms) : "–"}</td>
            <td>{toneWords(step)}</td>
            <td>{step.end ? END_WORDS[step.end] : ""}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function toneWords({ before, toneArrives }: SupplyStep): string {
  if (before === null) return "";
  return toneArrives ? "arrives" : "lost";
}

function Heading({ name, unit }: { readonly name: string; readonly unit: string }) {
  return (
    <th scope="col" className="figure">
      {name} <span className="quiet">{unit}</span>
    </th>
  );
}
