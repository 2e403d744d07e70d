import { ChevronUp, PanelLeftClose, PanelLeftOpen } from "lucide-react";
import { Canvas } from "../canvas/Canvas.tsx";
import { Tray } from "../features/tray/Tray.tsx";
import { WalkBar } from "../features/walk/WalkBar.tsx";
import { IconButton } from "../kit/IconButton.tsx";
import { usePanes } from "../kit/panes.ts";
import { BottomPane } from "./BottomPane.tsx";
import { SideTabs } from "./SideTabs.tsx";
import { Splitter } from "./Splitter.tsx";

/** Desk layout: tray, canvas over spectrum, side pane. */
export function WideLayout() {
  const trayOpen = usePanes((s) => s.trayOpen);
  return (
    <div className="wide">
      <aside className={trayOpen ? "tray-column" : "tray-column folded"} aria-label="Parts">
        <div className="column-head">
          {trayOpen ? <h2>Parts</h2> : null}
          <IconButton
            icon={trayOpen ? PanelLeftClose : PanelLeftOpen}
            name={trayOpen ? "Fold the parts away" : "Show the parts"}
            onPress={() => usePanes.setState({ trayOpen: !trayOpen })}
          />
        </div>
        {trayOpen ? (
          <div className="column-body">
            <Tray />
          </div>
        ) : null}
      </aside>
      <main className="middle">
        <div className="canvas-box">
          <Canvas>
            <WalkBar />
          </Canvas>
        </div>
        <SpectrumDock />
      </main>
      <aside className="side-column" aria-label="Verdict, part and chain">
        <SideTabs />
      </aside>
    </div>
  );
}

function SpectrumDock() {
  const open = usePanes((s) => s.spectrumOpen);
  const height = usePanes((s) => s.spectrumHeight);
  if (!open) {
    return (
      <button
        type="button"
        className="spectrum-handle"
        aria-expanded={false}
        onClick={() => usePanes.setState({ spectrumOpen: true })}
      >
        <ChevronUp size={16} aria-hidden /> Spectrum
        <span className="quiet small">of the selected wire, in full</span>
      </button>
    );
  }
  return (
    <section className="spectrum-dock" style={{ height }} aria-label="Spectrum">
      <Splitter />
      <BottomPane onClose={() => usePanes.setState({ spectrumOpen: false })} />
    </section>
  );
}
