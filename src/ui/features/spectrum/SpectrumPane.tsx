import { ChevronDown, Maximize2, ZoomIn, ZoomOut } from "lucide-react";
import { useMemo, useState } from "react";
import { type Design, wireId } from "../../../design/design.ts";
import { profileOf } from "../../../findings/limits.ts";
import type { Spectrum } from "../../../signal/band.ts";
import { useApp } from "../../../store/app.ts";
import { useShownDesign, useSpectrum, wireOf } from "../../../store/hooks.ts";
import { bandLook } from "../../canvas/bandLook.ts";
import { type Alternative, alternatives, bandTitle } from "../../canvas/bands.ts";
import { questionAt } from "../../kit/asked/question.ts";
import { showOrigin } from "../../kit/asked/questionState.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import { CarrierTable } from "./CarrierTable.tsx";
import { Collisions } from "./Collisions.tsx";
import { Plot } from "./Plot.tsx";
import { type Domain, wholeDomain, zoomedDomain } from "./plot.ts";
import { Readout } from "./Readout.tsx";
import { type CarrierRow, carrierRows } from "./rows.ts";
import { StackTable } from "./StackTable.tsx";
import "./spectrum.css";

/** The full spectrum of the selected wire, or of a wire at the selected part. */
export function SpectrumPane({ onClose }: { readonly onClose: () => void }) {
  const selection = useApp((s) => s.selection);
  const design = useShownDesign();
  const [wanted, setWanted] = useState<string | null>(null);
  const candidates = wiresFor(design, selection.parts, selection.wires);
  const wire = candidates.find((w) => w === wanted) ?? candidates[0];
  return (
    <div className="spectrum">
      <header className="spectrum-head">
        <h2>Spectrum</h2>
        {candidates.length > 0 ? (
          <WireChoice candidates={candidates} wire={wire} onWire={setWanted} />
        ) : (
          <span className="quiet">Select a wire, or a part with a wire, to see what is on it.</span>
        )}
        <span className="spring" />
        <IconButton icon={ChevronDown} name="Close the spectrum" onPress={onClose} />
      </header>
      {wire === undefined ? null : <WireSpectrum key={wire} wire={wire} />}
    </div>
  );
}

/** A selected wire itself; else the wires at the selected part, those that enter it first. */
function wiresFor(design: Design, parts: readonly string[], wires: readonly string[]): readonly string[] {
  if (wires.length > 0) return wires;
  const [part] = parts;
  if (part === undefined) return [];
  const entering = design.wires.filter((w) => w.to[0] === part);
  const leaving = design.wires.filter((w) => w.from[0] === part);
  return [...entering, ...leaving].map(wireId);
}

function WireChoice({
  candidates,
  wire,
  onWire,
}: {
  readonly candidates: readonly string[];
  readonly wire: string | undefined;
  readonly onWire: (wire: string) => void;
}) {
  const names = useWireNames(candidates);
  if (candidates.length === 1) return <span className="spectrum-wire">{names[0]}</span>;
  return (
    <select
      className="field-input spectrum-choice"
      aria-label="Wire shown"
      value={wire}
      onChange={(event) => onWire(event.target.value)}
    >
      {candidates.map((id, i) => (
        <option key={id} value={id}>
          {names[i]}
        </option>
      ))}
    </select>
  );
}

function useWireNames(ids: readonly string[]): readonly string[] {
  const evaluation = useApp((s) => s.evaluation);
  const end = ([part, port]: readonly [string, string]) => {
    const record = evaluation.record(part);
    return `${record?.part.label ?? part} (${record?.ports.find((p) => p.id === port)?.label ?? port})`;
  };
  return ids.map((id) => {
    const wire = evaluation.design.wires.find((w) => wireId(w) === id);
    return wire ? `${end(wire.from)} → ${end(wire.to)}` : id;
  });
}

function WireSpectrum({ wire }: { readonly wire: string }) {
  const spectrum = useSpectrum(wire);
  if (spectrum.bands.length === 0) {
    return <p className="empty">No signal on this wire.</p>;
  }
  return <FullSpectrum spectrum={spectrum} wire={wire} />;
}

function FullSpectrum({ spectrum, wire }: { readonly spectrum: Spectrum; readonly wire: string }) {
  const groups = useMemo(() => alternatives(spectrum), [spectrum]);
  const [wantedSetting, setSetting] = useState<string | null>(null);
  const setting = settingShown(groups, wantedSetting);
  const [axis, setAxis] = useState<"strip" | "linear">("strip");
  const [domain, setDomain] = useState<Domain | null>(null);
  const [cursor, setCursor] = useState<string | null>(null);
  // The same object while the settings stay, so that an edit elsewhere does not make new rows.
  const profile = useApp((s) => profileOf(s.evaluation.design));

  const rows = useMemo(() => {
    const shown = new Set(groups.filter((g) => g.key === "" || g.key === setting).flatMap((g) => g.bands));
    return carrierRows(spectrum, (band) => shown.has(band), profile);
  }, [spectrum, groups, setting, profile]);
  const whole = useMemo(() => wholeDomain(rows) ?? ([0, 2400] as const), [rows]);
  const shownDomain = domain ?? whole;
  const zoom = (factor: number) => {
    const focus = rows.find((r) => r.key === cursor)?.hereMHz ?? (shownDomain[0] + shownDomain[1]) / 2;
    setAxis("linear");
    setDomain(zoomedDomain(shownDomain, whole, focus, factor));
  };
  const cursorRow = rows.find((r) => r.key === cursor);
  const onAsk = (row: CarrierRow) => {
    const [part, port] = wireOf(useApp.getState().evaluation.design, wire)?.from ?? [];
    if (part === undefined || port === undefined) return;
    const question = questionAt({ part, port }, row.band, row.i);
    if (question) showOrigin(question);
    else useApp.getState().notify("Nothing arrives that this user band could hold.");
  };

  return (
    <div className="spectrum-body">
      <div className="spectrum-tools">
        <div className="chips">
          {spectrum.bands.map((band, i) => (
            <button
              // biome-ignore lint/suspicious/noArrayIndexKey: the bands of a wire keep their order while it is drawn.
              key={i}
              type="button"
              className="chip"
              title={`Zoom to ${bandTitle(band)}`}
              onClick={() => {
                const own = wholeDomain(rows.filter((r) => r.band === band));
                setAxis("linear");
                setDomain(own);
              }}
            >
              <span className="chip-colour" style={{ background: bandLook(band).colour }} />
              {bandLook(band).tag}
            </button>
          ))}
        </div>
        {groups.some((g) => g.key !== "") ? (
          <label className="tool">
            <span className="small">Setting</span>
            <select
              className="field-input"
              value={setting ?? ""}
              onChange={(event) => setSetting(event.target.value)}
            >
              {groups
                .filter((g) => g.key !== "")
                .map((g) => (
                  <option key={g.key} value={g.key}>
                    {g.words}
                    {g.selected ? " (now)" : ""}
                  </option>
                ))}
            </select>
          </label>
        ) : null}
        <label className="tool">
          <span className="small">Scale</span>
          <select
            className="field-input"
            value={axis}
            onChange={(event) => {
              setAxis(event.target.value === "linear" ? "linear" : "strip");
              setDomain(null);
            }}
          >
            <option value="strip">as on the wires</option>
            <option value="linear">even, to zoom</option>
          </select>
        </label>
        <IconButton icon={ZoomIn} name="Zoom in" onPress={() => zoom(2)} />
        <IconButton icon={ZoomOut} name="Zoom out" onPress={() => zoom(0.5)} />
        <IconButton icon={Maximize2} name="Show the whole spectrum" onPress={() => setDomain(null)} />
      </div>
      <Plot
        rows={rows}
        axis={axis}
        domain={shownDomain}
        whole={whole}
        onDomain={(next) => {
          setAxis("linear");
          setDomain(next);
        }}
        cursor={cursorRow}
        onCursor={setCursor}
        onAsk={onAsk}
      />
      <Readout row={cursorRow} onAsk={onAsk} />
      <p className="quiet small">
        Dashed across: level limits at an outlet, {profile.name}. Line within a carrier: its noise; in red:
        interference. Dashed outline: removed. Thin outline: another switch position.
      </p>
      <Collisions rows={rows} onCursor={setCursor} />
      <StackTable spectrum={spectrum} />
      <CarrierTable rows={rows} cursor={cursor} onCursor={setCursor} onAsk={onAsk} />
    </div>
  );
}

/** The wanted setting if the wire still has it, else the present one, else the first. */
function settingShown(groups: readonly Alternative[], wanted: string | null): string | null {
  const switched = groups.filter((g) => g.key !== "");
  const chosen = switched.find((g) => g.key === wanted) ?? switched.find((g) => g.selected) ?? switched[0];
  return chosen?.key ?? null;
}
