import { Ellipsis, ListTree } from "lucide-react";
import { type ComponentType, type ReactNode, useEffect, useRef } from "react";
import { showPhoneView } from "../kit/panes.ts";
import styles from "./PaneBar.module.css";
import { PANES } from "./paneTable.ts";
import { type PhonePane, TABBED, togglePhonePane, usePhonePane } from "./phonePanes.ts";
import { WrongBadge } from "./SideTabs.tsx";

/** The row of big buttons of a phone: the panes used most, the chain, and all else. */
export function PhoneBar({ shown }: { readonly shown: PhonePane | null }) {
  const open = usePhonePane();
  const last = useLast(open);
  return (
    <nav className={styles.bar} data-region="panes" tabIndex={-1} aria-label="Panes">
      {PANES.filter((pane) => TABBED.has(pane.id)).map((pane) => (
        <Tab
          key={pane.id}
          icon={pane.icon}
          name={pane.name}
          isExpanded={shown === pane.id}
          isLast={last === pane.id}
          onPress={() => togglePhonePane(pane.id, open)}
        >
          <WrongBadge pane={pane} />
        </Tab>
      ))}
      <Tab
        icon={ListTree}
        name="Chain"
        isLast={last === null}
        onPress={() => {
          showPhoneView("chain");
          togglePhonePane(null, open);
        }}
      />
      <Tab
        icon={Ellipsis}
        name="More"
        isExpanded={shown !== null && !TABBED.has(shown)}
        isLast={last === "more"}
        onPress={() => togglePhonePane("more", open)}
      >
        <span className="unseen">panes and commands</span>
      </Tab>
    </nav>
  );
}

type TabProps = {
  readonly icon: ComponentType<{ size?: number; "aria-hidden"?: boolean }>;
  readonly name: string;
  readonly isExpanded?: boolean;
  /** Gets the focus back when the sheet is closed. */
  readonly isLast: boolean;
  readonly onPress: () => void;
  readonly children?: ReactNode;
};

function Tab({ icon: Icon, name, isExpanded, isLast, onPress, children }: TabProps) {
  return (
    <button
      type="button"
      className={styles.tab}
      aria-expanded={isExpanded}
      data-last-pane={isLast}
      onClick={onPress}
    >
      <Icon size={20} aria-hidden />
      <span>{name}</span>
      {children}
    </button>
  );
}

/** What is open, or was open last; a pane without a button of its own belongs to “More”. */
function useLast(open: PhonePane | null): PhonePane | null {
  const last = useRef<PhonePane | null>(null);
  const now = open === null ? last.current : TABBED.has(open) ? open : "more";
  useEffect(() => {
    last.current = now;
  }, [now]);
  return now;
}
