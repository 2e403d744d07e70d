import { Canvas } from "../canvas/Canvas.tsx";
import { CanvasBar } from "../canvas/CanvasBar.tsx";
import { SelectionBar } from "../canvas/SelectionBar.tsx";
import { openExample } from "../features/documents/actions.ts";
import { FirstSteps } from "../features/tour/FirstSteps.tsx";
import { WalkBar } from "../features/walk/WalkBar.tsx";
import { toggleSheet, usePanes } from "../kit/panes.ts";
import styles from "./NarrowLayout.module.css";
import barStyles from "./PaneBar.module.css";
import { PANES } from "./paneTable.ts";
import { WrongBadge } from "./SideTabs.tsx";

/** Tablet: the canvas, one sheet that the panes share, and a row of big buttons. */
export function NarrowLayout() {
  const sheet = usePanes((s) => s.sheet);
  const shown = PANES.find((pane) => pane.id === sheet);
  return (
    <div className={styles.body}>
      <main className={styles.canvas} data-region="drawing" tabIndex={-1} aria-label="Drawing">
        <Canvas isBarElsewhere empty={<FirstSteps openExample={openExample} />}>
          <WalkBar />
        </Canvas>
      </main>
      <div className={styles.tools}>
        <CanvasBar isDocked />
        <SelectionBar isDocked />
      </div>
      {shown ? (
        <section
          key={shown.id}
          className={styles.sheet}
          data-region="sheet"
          data-pane-body=""
          tabIndex={-1}
          aria-label={shown.name}
        >
          <shown.component />
        </section>
      ) : null}
      <nav className={barStyles.bar} data-region="panes" tabIndex={-1} aria-label="Panes">
        {PANES.map((pane) => (
          <button
            key={pane.id}
            type="button"
            className={barStyles.tab}
            aria-expanded={sheet === pane.id}
            onClick={() => toggleSheet(pane.id)}
          >
            <pane.icon size={20} aria-hidden />
            <span>{pane.name}</span>
            <WrongBadge pane={pane} />
          </button>
        ))}
      </nav>
    </div>
  );
}
