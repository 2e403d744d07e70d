import {
  Ellipsis,
  LayoutGrid,
  ListTree,
  type LucideIcon,
  SlidersHorizontal,
  Stamp,
  Workflow,
  X,
} from "lucide-react";
import { ToggleGroup } from "radix-ui";
import { type ReactNode, useEffect, useRef } from "react";
import { causesCounted, causesOfSeverity } from "../../sentences/cause.ts";
import { useApp } from "../../store/app.ts";
import { Canvas } from "../canvas/Canvas.tsx";
import { CanvasDialogs } from "../canvas/CanvasDialogs.tsx";
import { Hatches } from "../canvas/Hatches.tsx";
import { PreviewBar } from "../canvas/preview/PreviewBar.tsx";
import { ChainView } from "../features/chain/ChainView.tsx";
import { Overview } from "../features/overview/Overview.tsx";
import { VerdictSummary } from "../features/verdict/VerdictPane.tsx";
import { WalkBar } from "../features/walk/WalkBar.tsx";
import { CureAllButton } from "../kit/asked/CureButton.tsx";
import { IconButton } from "../kit/IconButton.tsx";
import { type SheetPane, showPane, usePanes } from "../kit/panes.ts";
import { type PhoneView, showPhoneView, usePhoneView } from "../kit/phoneView.ts";
import { MoreSheet } from "./MoreSheet.tsx";
import { SheetBody } from "./NarrowLayout.tsx";
import "./phone.css";

const VIEWS: readonly { readonly key: PhoneView; readonly name: string; readonly icon: LucideIcon }[] = [
  { key: "chain", name: "Chain", icon: ListTree },
  { key: "overview", name: "Overview", icon: LayoutGrid },
  { key: "drawing", name: "Drawing", icon: Workflow },
];

/**
 * A phone: the way to one receiver from top to bottom, the whole house as cells, or the drawing; what the design comes
 * to in one line that never goes away; panes in a sheet. Turned sideways, the sheet stands beside it.
 */
export function PhoneLayout({ isTurned }: { readonly isTurned: boolean }) {
  const view = usePhoneView((s) => s.view);
  const sheet = useSheet();
  const shown = sheet ?? (isTurned ? "verdict" : null);
  return (
    <div className="phone-body" data-turned={isTurned}>
      <main className="phone-main">
        <ViewSwitch />
        <View view={view} />
      </main>
      <aside className="phone-side" aria-label="Verdict and panes">
        <VerdictLine />
        {shown ? <PhoneSheet key={shown} pane={shown} canClose={sheet !== null} /> : null}
      </aside>
      <BottomBar shown={shown} />
    </div>
  );
}

type PhonePane = SheetPane | "more";

const NAMES: Readonly<Record<PhonePane, string>> = {
  tray: "Parts",
  verdict: "Verdict",
  part: "Part",
  chain: "Parts and wires",
  cures: "Cures",
  faults: "Faults",
  spectrum: "Spectrum",
  more: "More",
};

function useSheet(): PhonePane | null {
  const pane = usePanes((s) => s.sheet);
  const isMoreOpen = usePhoneView((s) => s.isMoreOpen);
  return pane ?? (isMoreOpen ? "more" : null);
}

function ViewSwitch() {
  const view = usePhoneView((s) => s.view);
  return (
    <ToggleGroup.Root
      type="single"
      className="view-switch"
      aria-label="View"
      value={view}
      onValueChange={(value) => {
        const chosen = VIEWS.find((each) => each.key === value);
        if (chosen) showPhoneView(chosen.key);
      }}
    >
      {VIEWS.map(({ key, name, icon: Icon }) => (
        <ToggleGroup.Item key={key} className="view-choice" value={key}>
          <Icon size={16} aria-hidden /> {name}
        </ToggleGroup.Item>
      ))}
    </ToggleGroup.Root>
  );
}

function View({ view }: { readonly view: PhoneView }) {
  if (view === "drawing")
    return (
      <div className="canvas-box">
        <Canvas>
          <WalkBar />
        </Canvas>
      </div>
    );
  // What the drawing brings along otherwise.
  return (
    <>
      <Hatches />
      <PreviewBar />
      {view === "chain" ? <ChainView /> : <Overview />}
      <CanvasDialogs />
    </>
  );
}

/** How many receivers work, and the way to mend the others. */
function VerdictLine() {
  const isEmpty = useApp((s) => s.design.parts.length === 0);
  if (isEmpty) return null;
  return (
    <div className="phone-line">
      <div className="phone-verdict">
        <VerdictSummary />
      </div>
      <CureAllButton />
    </div>
  );
}

function PhoneSheet({ pane, canClose }: { readonly pane: PhonePane; readonly canClose: boolean }) {
  const name = NAMES[pane];
  return (
    <section className="phone-sheet" aria-label={name}>
      {canClose ? (
        <div className="phone-sheet-head">
          <h2>{name}</h2>
          <IconButton icon={X} name={`Close ${name.toLowerCase()}`} onPress={closeSheet} />
        </div>
      ) : null}
      <div className="phone-sheet-body">{pane === "more" ? <MoreSheet /> : <SheetBody pane={pane} />}</div>
    </section>
  );
}

/** The focus goes to what opens it again. */
function closeSheet(): void {
  usePanes.setState({ sheet: null });
  usePhoneView.setState({ isMoreOpen: false });
  document.querySelector<HTMLElement>(".bottom-tab[data-last='true']")?.focus();
}

function BottomBar({ shown }: { readonly shown: PhonePane | null }) {
  const wrong = useApp((s) => causesOfSeverity(s.report, "error"));
  const sheet = useSheet();
  const last = useLast(sheet);
  const tab = (pane: PhonePane, icon: LucideIcon, extra?: ReactNode) => (
    <Tab
      icon={icon}
      name={NAMES[pane]}
      isExpanded={shown === pane}
      isLast={last === pane}
      onPress={() => toggle(pane, sheet)}
    >
      {extra}
    </Tab>
  );
  return (
    <nav className="bottom-bar" aria-label="Panes">
      {tab("tray", LayoutGrid)}
      {tab(
        "verdict",
        Stamp,
        wrong > 0 ? (
          <span className="badge error bottom-badge">
            <span aria-hidden>{wrong}</span>
            <span className="unseen">{causesCounted(wrong)}</span>
          </span>
        ) : null,
      )}
      {tab("part", SlidersHorizontal)}
      <Tab
        icon={ListTree}
        name="Chain"
        isLast={last === null}
        onPress={() => {
          showPhoneView("chain");
          toggle(null, sheet);
        }}
      />
      {tab("more", Ellipsis)}
    </nav>
  );
}

type TabProps = {
  readonly icon: LucideIcon;
  readonly name: string;
  readonly isExpanded?: boolean;
  /** The tab to which the focus returns when the sheet is closed. */
  readonly isLast: boolean;
  readonly onPress: () => void;
  readonly children?: ReactNode;
};

function Tab({ icon: Icon, name, isExpanded, isLast, onPress, children }: TabProps) {
  return (
    <button
      type="button"
      className="bottom-tab"
      aria-expanded={isExpanded}
      data-last={isLast}
      onClick={onPress}
    >
      <Icon size={20} aria-hidden />
      <span>{name}</span>
      {children}
    </button>
  );
}

function toggle(pane: PhonePane | null, open: PhonePane | null): void {
  const next = pane === open ? null : pane;
  usePhoneView.setState({ isMoreOpen: next === "more" });
  if (next !== null && next !== "more") showPane(next);
  else usePanes.setState({ sheet: null });
}

const TABS: readonly (PhonePane | null)[] = ["tray", "verdict", "part"];

/** The tab that stands for what is open, or was open last; panes without a tab of their own belong to “More”. */
function useLast(sheet: PhonePane | null): PhonePane | null {
  const last = useRef<PhonePane | null>(null);
  const now = sheet === null ? last.current : TABS.includes(sheet) ? sheet : "more";
  useEffect(() => {
    last.current = now;
  }, [now]);
  return now;
}
