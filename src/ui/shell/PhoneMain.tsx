import { LayoutGrid, ListTree, type LucideIcon, Workflow } from "lucide-react";
import { ToggleGroup } from "radix-ui";
import { useShownDesign } from "../../store/hooks.ts";
import { Canvas } from "../canvas/Canvas.tsx";
import { CanvasDialogs } from "../canvas/CanvasDialogs.tsx";
import { PreviewBar } from "../canvas/preview/PreviewBar.tsx";
import { ChainView } from "../features/chain/ChainView.tsx";
import { openExample } from "../features/documents/actions.ts";
import { OverviewPane } from "../features/overview/OverviewPane.tsx";
import { FirstSteps } from "../features/tour/FirstSteps.tsx";
import { WalkBar } from "../features/walk/WalkBar.tsx";
import { type PhoneView, showPhoneView, usePanes } from "../kit/panes.ts";
import styles from "./PhoneMain.module.css";
import { usePhonePane } from "./phonePanes.ts";

const VIEWS: readonly { readonly key: PhoneView; readonly name: string; readonly icon: LucideIcon }[] = [
  { key: "chain", name: "Chain", icon: ListTree },
  { key: "overview", name: "Overview", icon: LayoutGrid },
  { key: "drawing", name: "Drawing", icon: Workflow },
];

/** What a phone shows above its panes, and the switch between the three views of a design. */
export function PhoneMain() {
  const view = usePanes((s) => s.phoneView);
  // The pane of a walk has its steps too.
  const isWalkOpen = usePhonePane() === "spectrum";
  // The first steps are the same from wherever one begins, and said nowhere else.
  const isEmpty = useShownDesign().parts.length === 0;
  const name = VIEWS.find((each) => each.key === view)?.name;
  return (
    <main className={styles.main} data-region="drawing" data-view={view} tabIndex={-1} aria-label={name}>
      <ToggleGroup.Root
        type="single"
        className={styles.switch}
        aria-label="View"
        value={view}
        onValueChange={(value) => {
          const chosen = VIEWS.find((each) => each.key === value);
          if (chosen) showPhoneView(chosen.key);
        }}
      >
        {VIEWS.map(({ key, name: label, icon: Icon }) => (
          <ToggleGroup.Item key={key} className={styles.choice} value={key}>
            <Icon size={16} aria-hidden /> {label}
          </ToggleGroup.Item>
        ))}
      </ToggleGroup.Root>
      {view === "drawing" ? (
        <div className={styles.drawing}>
          <Canvas empty={<FirstSteps openExample={openExample} />}>
            <WalkBar />
          </Canvas>
        </div>
      ) : (
        <>
          {/* What the drawing brings along otherwise. */}
          <PreviewBar />
          {isEmpty ? (
            <div className={styles.first}>
              <FirstSteps openExample={openExample} />
            </div>
          ) : view === "chain" ? (
            <ChainView />
          ) : (
            <OverviewPane />
          )}
          <div className={styles.walk}>
            <WalkBar isElsewhere={isWalkOpen} />
          </div>
          <CanvasDialogs />
        </>
      )}
    </main>
  );
}
