import {
  Activity,
  LayoutGrid,
  ListTree,
  type LucideIcon,
  SlidersHorizontal,
  Stamp,
  Unplug,
  Wrench,
} from "lucide-react";
import { causesCounted, causesOfSeverity } from "../../sentences/cause.ts";
import { useApp } from "../../store/app.ts";
import { Canvas } from "../canvas/Canvas.tsx";
import { ChainPane } from "../features/chain/ChainPane.tsx";
import { CuresPane } from "../features/cures/CuresPane.tsx";
import { FaultsPane } from "../features/faults/FaultsPane.tsx";
import { Inspector } from "../features/inspector/Inspector.tsx";
import { Tray } from "../features/tray/Tray.tsx";
import { VerdictPane } from "../features/verdict/VerdictPane.tsx";
import { WalkBar } from "../features/walk/WalkBar.tsx";
import { type SheetPane, toggleSheet, usePanes } from "../kit/panes.ts";
import { BottomPane } from "./BottomPane.tsx";

const TABS: readonly { readonly key: SheetPane; readonly name: string; readonly icon: LucideIcon }[] = [
  { key: "tray", name: "Parts", icon: LayoutGrid },
  { key: "verdict", name: "Verdict", icon: Stamp },
  { key: "part", name: "Part", icon: SlidersHorizontal },
  { key: "chain", name: "Chain", icon: ListTree },
  { key: "cures", name: "Cures", icon: Wrench },
  { key: "faults", name: "Faults", icon: Unplug },
  { key: "spectrum", name: "Spectrum", icon: Activity },
];

/** Tablet layout: the canvas above, one bottom sheet that the panes share, and a row of big buttons. */
export function NarrowLayout() {
  const sheet = usePanes((s) => s.sheet);
  const wrong = useApp((s) => causesOfSeverity(s.report, "error"));
  return (
    <div className="narrow-body">
      <main className="canvas-box">
        <Canvas>
          <WalkBar />
        </Canvas>
      </main>
      {sheet ? (
        <section key={sheet} className="sheet" aria-label={TABS.find((t) => t.key === sheet)?.name}>
          <SheetBody pane={sheet} />
        </section>
      ) : null}
      <nav className="bottom-bar" aria-label="Panes">
        {TABS.map(({ key, name, icon: Icon }) => (
          <button
            key={key}
            type="button"
            className="bottom-tab"
            aria-expanded={sheet === key}
            onClick={() => toggleSheet(key)}
          >
            <Icon size={20} aria-hidden />
            <span>{name}</span>
            {key === "verdict" && wrong > 0 ? (
              <span className="badge error bottom-badge">
                <span aria-hidden>{wrong}</span>
                <span className="unseen">{causesCounted(wrong)}</span>
              </span>
            ) : null}
          </button>
        ))}
      </nav>
    </div>
  );
}

function SheetBody({ pane }: { readonly pane: SheetPane }) {
  switch (pane) {
    case "tray":
      return <Tray />;
    case "verdict":
      return <VerdictPane />;
    case "part":
      return <Inspector />;
    case "chain":
      return <ChainPane />;
    case "cures":
      return <CuresPane />;
    case "faults":
      return <FaultsPane />;
    case "spectrum":
      return <BottomPane onClose={() => usePanes.setState({ sheet: null })} />;
  }
}
