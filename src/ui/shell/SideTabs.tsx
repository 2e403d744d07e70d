import { Tabs } from "radix-ui";
import { causesCounted, causesOfSeverity } from "../../sentences/cause.ts";
import { useApp } from "../../store/app.ts";
import { ChainPane } from "../features/chain/ChainPane.tsx";
import { CuresPane } from "../features/cures/CuresPane.tsx";
import { FaultsPane } from "../features/faults/FaultsPane.tsx";
import { Inspector } from "../features/inspector/Inspector.tsx";
import { VerdictPane } from "../features/verdict/VerdictPane.tsx";
import { type SidePane, usePanes } from "../kit/panes.ts";

const TABS: readonly { readonly key: SidePane; readonly name: string }[] = [
  { key: "verdict", name: "Verdict" },
  { key: "part", name: "Part" },
  { key: "chain", name: "Chain" },
  { key: "cures", name: "Cures" },
  { key: "faults", name: "Faults" },
];

/** The right-hand pane: verdict, values of the selected part, and the design as a list. */
export function SideTabs() {
  const side = usePanes((s) => s.side);
  const wrong = useApp((s) => causesOfSeverity(s.report, "error"));
  return (
    <Tabs.Root
      className="side"
      value={side}
      onValueChange={(value) => {
        const tab = TABS.find((t) => t.key === value);
        if (tab) usePanes.setState({ side: tab.key });
      }}
    >
      <Tabs.List className="tabs" aria-label="Side pane">
        {TABS.map((tab) => (
          <Tabs.Trigger key={tab.key} className="tab" value={tab.key}>
            {tab.name}
            {tab.key === "verdict" && wrong > 0 ? (
              <span className="badge error">
                <span aria-hidden>{wrong}</span>
                <span className="unseen">{causesCounted(wrong)}</span>
              </span>
            ) : null}
          </Tabs.Trigger>
        ))}
      </Tabs.List>
      <Tabs.Content className="side-body" value="verdict">
        <VerdictPane />
      </Tabs.Content>
      <Tabs.Content className="side-body" value="part">
        <Inspector />
      </Tabs.Content>
      <Tabs.Content className="side-body" value="chain">
        <ChainPane />
      </Tabs.Content>
      <Tabs.Content className="side-body" value="cures">
        <CuresPane />
      </Tabs.Content>
      <Tabs.Content className="side-body" value="faults">
        <FaultsPane />
      </Tabs.Content>
    </Tabs.Root>
  );
}
