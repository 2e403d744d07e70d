import type { PartRecord } from "../../../evaluate/evaluation.ts";
import type { Port } from "../../../parts/contract.ts";
import { SILENCE } from "../../../signal/band.ts";
import { useApp } from "../../../store/app.ts";
import { plural } from "../../../words/plural.ts";
import { alternatives } from "../../canvas/bands.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import { BandLine } from "./BandLine.tsx";
import { wireAtPort } from "./wireAtPort.ts";

/** For every port: what is joined, and which signals pass. */
export function PortList({ record }: { readonly record: PartRecord }) {
  if (record.ports.length === 0) return null;
  return (
    <section>
      <h3>Ports</h3>
      <ul className="port-list">
        {record.ports.map((port) => (
          <PortItem key={port.id} record={record} port={port} />
        ))}
      </ul>
    </section>
  );
}

function PortItem({ record, port }: { readonly record: PartRecord; readonly port: Port }) {
  const evaluation = useApp((s) => s.evaluation);
  const other = record.joined[port.id];
  const wire = wireAtPort(evaluation.design, record.part.id, port.id);
  const spectrum = (port.side === "in" ? record.inputs[port.id] : record.outputs[port.id]) ?? SILENCE;
  const groups = alternatives(spectrum);
  const shown = groups.filter((g) => g.selected);
  const further = groups.length - shown.length;
  return (
    <li className="port-item">
      <p className="port-head">
        <strong>{port.label}</strong>
        <span className="quiet"> {port.side === "in" ? "in" : "out"} · </span>
        {other && wire ? (
          <button type="button" className="link" onClick={() => selectFromPane({ wires: [wire] })}>
            {port.side === "in" ? "from" : "to"} {evaluation.record(other[0])?.part.label ?? other[0]}
          </button>
        ) : (
          <span className="quiet">open</span>
        )}
      </p>
      {spectrum.bands.length === 0 && other ? <p className="quiet small">No signal.</p> : null}
      <ul className="band-lines">
        {shown
          .flatMap((g) => g.bands)
          .map((band, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the bands of a wire keep their order while it is drawn.
            <BandLine key={i} band={band} at={{ part: record.part.id, port: port.id }} />
          ))}
      </ul>
      {further > 0 ? (
        <p className="quiet small">
          {plural(further, {
            one: (n) => `${n} more switch position offers other signals.`,
            other: (n) => `${n} more switch positions offer other signals.`,
          })}
        </p>
      ) : null}
    </li>
  );
}
