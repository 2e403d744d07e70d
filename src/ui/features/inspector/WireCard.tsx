import { Activity, SquarePlus, Trash2 } from "lucide-react";
import { useApp } from "../../../store/app.ts";
import { useFindingsFor, useSpectrum, useWire } from "../../../store/hooks.ts";
import { alternatives } from "../../canvas/bands.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import { deleteSelection } from "../../canvas/selectionEdits.ts";
import { setCanvas } from "../../canvas/state.ts";
import { FailButton } from "../../kit/asked/FailButton.tsx";
import { showPane } from "../../kit/panes.ts";
import { FindingItem } from "../verdict/FindingItem.tsx";
import { BandLine } from "./BandLine.tsx";

/** A wire: from where to where, what is on it, and what can be put into it. */
export function WireCard({ id }: { readonly id: string }) {
  const wire = useWire(id);
  const spectrum = useSpectrum(id);
  const findings = useFindingsFor(id);
  const evaluation = useApp((s) => s.evaluation);
  if (!wire) return null;
  const end = ([part, port]: readonly [string, string]) => {
    const record = evaluation.record(part);
    const label = record?.ports.find((p) => p.id === port)?.label ?? port;
    return (
      <button type="button" className="link" onClick={() => selectFromPane({ parts: [part] })}>
        {record?.part.label ?? part}, {label}
      </button>
    );
  };
  return (
    <div className="inspector">
      <header className="inspector-head">
        <h2>Wire</h2>
        <p>
          from {end(wire.from)} to {end(wire.to)}
        </p>
      </header>
      <section>
        <h3>What is on it</h3>
        {spectrum.bands.length === 0 ? <p className="quiet">No signal.</p> : null}
        {alternatives(spectrum).map((group) => (
          <div key={group.key}>
            {group.key === "" ? null : (
              <p className="quiet small">
                {group.selected ? "Now" : "Or"}: {group.words}
              </p>
            )}
            <ul className="band-lines">
              {group.bands.map((band, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: the bands of a wire keep their order while it is drawn.
                <BandLine key={i} band={band} at={{ part: wire.from[0], port: wire.from[1] }} />
              ))}
            </ul>
          </div>
        ))}
      </section>
      {findings.length > 0 ? (
        <ul className="finding-list">
          {findings.map((finding) => (
            <FindingItem key={finding.id} finding={finding} />
          ))}
        </ul>
      ) : null}
      <div className="button-row">
        <button type="button" className="button" onClick={() => showPane("spectrum")}>
          <Activity size={16} aria-hidden /> Full spectrum
        </button>
        <button type="button" className="button" onClick={() => setCanvas({ dialog: "insert" })}>
          <SquarePlus size={16} aria-hidden /> Insert a part…
        </button>
        <FailButton subject={{ type: "wire", id }} />
        <button type="button" className="button danger" onClick={deleteSelection}>
          <Trash2 size={16} aria-hidden /> Delete
        </button>
      </div>
    </div>
  );
}
