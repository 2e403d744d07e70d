import { PanelRightClose, PanelRightOpen } from "lucide-react";
import { Tabs } from "radix-ui";
import { causesCounted, causesOfSeverity } from "../../sentences/cause.ts";
import { useApp } from "../../store/app.ts";
import { Hint } from "../kit/Hint.tsx";
import { IconButton } from "../kit/IconButton.tsx";
import { showPane, usePanes } from "../kit/panes.ts";
import { type Pane, SIDE_PANES } from "./paneTable.ts";
import { keepFocusIn } from "./regions.ts";
import styles from "./SideTabs.module.css";

/** The right-hand pane: verdict, values of the selected part, the design as a list, cures and faults. */
export function SideTabs() {
  const side = usePanes((s) => s.side);
  return (
    <Tabs.Root
      className={styles.side}
      value={side}
      onValueChange={(value) => {
        const pane = SIDE_PANES.find((p) => p.id === value);
        if (pane) usePanes.setState({ side: pane.id });
      }}
    >
      <div className={styles.head}>
        <Tabs.List className={styles.tabs} aria-label="Side pane">
          {SIDE_PANES.map((pane) => (
            <Tabs.Trigger key={pane.id} className={styles.tab} value={pane.id}>
              {pane.name}
              <WrongBadge pane={pane} />
            </Tabs.Trigger>
          ))}
        </Tabs.List>
        <IconButton
          icon={PanelRightClose}
          name="Fold this pane away"
          onPress={() => {
            usePanes.setState({ sideOpen: false });
            keepFocusIn("side");
          }}
        />
      </div>
      {SIDE_PANES.map(({ id, component: Body }) => (
        <Tabs.Content key={id} className={styles.body} data-pane-body="" value={id}>
          <Body />
        </Tabs.Content>
      ))}
    </Tabs.Root>
  );
}

/** The same pane folded away: its names as icons; each opens it again. */
export function SideRail() {
  return (
    <div className={styles.rail} role="toolbar" aria-label="Side pane" aria-orientation="vertical">
      <IconButton
        icon={PanelRightOpen}
        name="Open the side pane"
        onPress={() => {
          usePanes.setState({ sideOpen: true });
          keepFocusIn("side");
        }}
      />
      {SIDE_PANES.map((pane) => (
        <Hint key={pane.id} text={pane.name}>
          <button
            type="button"
            className="button icon bare"
            aria-label={pane.name}
            onClick={() => {
              showPane(pane.id);
              keepFocusIn("side");
            }}
          >
            <pane.icon size={18} aria-hidden />
            <WrongBadge pane={pane} />
          </button>
        </Hint>
      ))}
    </div>
  );
}

/** At the verdict: how many causes are wrong. */
export function WrongBadge({ pane }: { readonly pane: Pane }) {
  const wrong = useApp((s) => causesOfSeverity(s.report, "error"));
  if (pane.id !== "verdict" || wrong === 0) return null;
  return (
    <span className="badge error" data-wrong="">
      <span aria-hidden>{wrong}</span>
      <span className="unseen">{causesCounted(wrong)}</span>
    </span>
  );
}
