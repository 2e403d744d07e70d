import { ChevronDown, ChevronUp } from "lucide-react";
import { useRef } from "react";
import { Group, Panel, type PanelImperativeHandle } from "react-resizable-panels";
import { Canvas } from "../canvas/Canvas.tsx";
import { CanvasBar } from "../canvas/CanvasBar.tsx";
import { SelectionBar } from "../canvas/SelectionBar.tsx";
import { openExample } from "../features/documents/actions.ts";
import { FirstSteps } from "../features/tour/FirstSteps.tsx";
import { TrayRail } from "../features/tray/TrayRail.tsx";
import { WalkBar } from "../features/walk/WalkBar.tsx";
import { usePanes } from "../kit/panes.ts";
import { Divider } from "./Divider.tsx";
import { LowerPane } from "./LowerPane.tsx";
import { LOWER_HEIGHTS, lowerHeight, nextSize, SIDE_WIDTHS, sideWidth } from "./paneSizes.ts";
import { SideRail, SideTabs } from "./SideTabs.tsx";
import styles from "./WideLayout.module.css";

/** Desk layout: the rail of parts, the canvas over the lower pane, the side pane. */
export function WideLayout() {
  const isOpen = usePanes((s) => s.sideOpen);
  const side = useRef<PanelImperativeHandle | null>(null);
  return (
    <div className={styles.wide}>
      <TrayRail />
      <Group className={styles.group} orientation="horizontal">
        <Panel id="middle" minSize={320} className={styles.panel}>
          <Middle />
        </Panel>
        {isOpen ? (
          <>
            <Divider
              name="Width of the side pane"
              orientation="upright"
              onPress={() => side.current?.resize?.(nextSize(side.current.getSize().inPixels, SIDE_WIDTHS))}
            />
            <Panel
              id="side"
              panelRef={side}
              className={styles.panel}
              defaultSize={sideWidth()}
              minSize={SIDE_WIDTHS[0]}
              maxSize="60%"
              groupResizeBehavior="preserve-pixel-size"
              onResize={({ inPixels }, _, before) => {
                if (before) usePanes.setState({ sideWidth: Math.round(inPixels) });
              }}
            >
              <aside
                className={styles.side}
                data-region="side"
                tabIndex={-1}
                aria-label="Verdict, part and chain"
              >
                <SideTabs />
              </aside>
            </Panel>
          </>
        ) : null}
      </Group>
      {isOpen ? null : (
        <aside
          className={styles.folded}
          data-region="side"
          tabIndex={-1}
          aria-label="Verdict, part and chain"
        >
          <SideRail />
        </aside>
      )}
    </div>
  );
}

function Middle() {
  const isOpen = usePanes((s) => s.spectrumOpen);
  const lower = useRef<PanelImperativeHandle | null>(null);
  return (
    <div className={styles.middle}>
      <Group className={styles.group} orientation="vertical">
        <Panel id="drawing" minSize={160} className={styles.panel}>
          <main className={styles.drawing} data-region="drawing" tabIndex={-1} aria-label="Drawing">
            <div className={styles.canvas}>
              <Canvas isBarElsewhere empty={<FirstSteps openExample={openExample} />}>
                <WalkBar />
              </Canvas>
            </div>
            <div className={styles.row}>
              <CanvasBar isDocked />
              <SelectionBar isDocked />
              <SpectrumButton />
            </div>
          </main>
        </Panel>
        {isOpen ? (
          <>
            <Divider
              name="Height of the pane below"
              orientation="level"
              onPress={() =>
                lower.current?.resize?.(nextSize(lower.current.getSize().inPixels, LOWER_HEIGHTS))
              }
            />
            <Panel
              id="below"
              panelRef={lower}
              className={styles.panel}
              defaultSize={lowerHeight()}
              minSize={LOWER_HEIGHTS[0]}
              maxSize="80%"
              groupResizeBehavior="preserve-pixel-size"
              onResize={({ inPixels }, _, before) => {
                if (before) usePanes.setState({ spectrumHeight: Math.round(inPixels) });
              }}
            >
              <section className={styles.below} data-region="below" tabIndex={-1} aria-label="Spectrum">
                <LowerPane />
              </section>
            </Panel>
          </>
        ) : null}
      </Group>
    </div>
  );
}

/** Opens the pane below, and folds it away again. */
function SpectrumButton() {
  const isOpen = usePanes((s) => s.spectrumOpen);
  const Icon = isOpen ? ChevronDown : ChevronUp;
  return (
    <button
      type="button"
      className={styles.opener}
      aria-expanded={isOpen}
      onClick={() => usePanes.setState({ spectrumOpen: !isOpen })}
    >
      Spectrum <span className="quiet small">of the selected wire, in full</span>
      <Icon size={16} aria-hidden />
    </button>
  );
}
