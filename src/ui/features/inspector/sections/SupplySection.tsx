import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import { useApp } from "../../../../store/app.ts";
import { decimal } from "../../../kit/format.ts";
import { ScrollBox } from "../../../kit/ScrollBox.tsx";
import { type SupplyRow, supplyRows } from "./supply.ts";

const STATE_WORDS: Readonly<Record<SupplyRow["state"], string>> = {
  feeds: "feeds",
  weaker: "weaker, does not count",
  dormant: "only while a switch stands otherwise",
};

/** For a part on a powered line: what arrives at its outputs and what it hands on at its inputs. */
export function SupplySection({ record }: { readonly record: PartRecord }) {
  const evaluation = useApp((s) => s.evaluation);
  const rows = supplyRows(evaluation, record);
  const { load, selfPowered } = record.power;
  if (rows.length === 0 && !load) return null;
  return (
    <section aria-label="Supply">
      <h3>Supply</h3>
      {load ? (
        <p className="small">
          Draws {decimal(load.milliamps, 0)} mA
          {selfPowered ? ", from its own mains unit." : `; needs ${decimal(load.minVolts)} V at least.`}
        </p>
      ) : null}
      {rows.length > 0 ? (
        <ScrollBox className="figures-scroll" label="Volts and currents">
          <table className="figures-table">
            <thead>
              <tr>
                <th scope="col">Port</th>
                <th scope="col">Supply of</th>
                <th scope="col">V</th>
                <th scope="col">mA</th>
                <th scope="col">State</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: supplies have no identity but their place in the list.
                <tr key={i} className={row.state === "feeds" ? "" : "asleep"}>
                  <th scope="row">
                    {row.port} <span className="quiet">{row.way === "arrives" ? "←" : "→"}</span>
                    <span className="unseen">{row.way}</span>
                  </th>
                  <td>
                    {row.source} <span className="quiet">{row.asks}</span>
                  </td>
                  <td className="number">{decimal(row.volts)}</td>
                  <td className="number">{row.milliamps > 0 ? decimal(row.milliamps, 0) : "–"}</td>
                  <td>{STATE_WORDS[row.state]}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="quiet small">Current: all that hangs on this port, as if it alone were fed by it.</p>
        </ScrollBox>
      ) : (
        <p className="small">No supply reaches it.</p>
      )}
    </section>
  );
}
