/** The families of parts as a rail of icons; a press opens the parts of one, or all, over the canvas. */
import { LayoutGrid, X } from "lucide-react";
import { type KeyboardEvent, type ReactNode, useEffect, useRef, useState } from "react";
import { CATALOGUE, defaultOptions } from "../../../parts/catalogue.ts";
import { FAMILY_NAMES, type Family } from "../../../parts/contract.ts";
import type { Point } from "../../canvas/layout.ts";
import { PartSymbol } from "../../canvas/PartSymbol.tsx";
import { afterLayout } from "../../kit/afterLayout.ts";
import { Hint } from "../../kit/Hint.tsx";
import { IconButton } from "../../kit/IconButton.tsx";
import { type TrayShown, usePanes } from "../../kit/panes.ts";
import { FAMILIES } from "./families.ts";
import { Tray } from "./Tray.tsx";
import styles from "./TrayRail.module.css";

const SHOWN: readonly TrayShown[] = ["all", ...FAMILIES];

export function TrayRail() {
  const shown = usePanes((s) => s.tray);
  const [isDragging, setDragging] = useState(false);
  const frame = useRef<HTMLElement>(null);
  const flyout = useRef<HTMLElement>(null);
  const buttons = useRef(new Map<TrayShown, HTMLButtonElement>());
  const toggle = (which: TrayShown) => {
    usePanes.setState({ tray: shown === which ? null : which });
    // Among all of them one searches; where a finger points, the keyboard on the screen would cover them.
    if (which === "all" && matchMedia("(pointer: fine)").matches)
      afterLayout(() => frame.current?.querySelector<HTMLElement>("[type=search]")?.focus());
  };
  const close = () => {
    usePanes.setState({ tray: null });
    if (shown) buttons.current.get(shown)?.focus();
  };
  const closeByKey = (event: KeyboardEvent) => {
    if (event.key !== "Escape" || event.defaultPrevented || !shown) return;
    event.preventDefault();
    event.stopPropagation();
    close();
  };
  // A part that was let go below the open parts would lie hidden there.
  const uncover = ({ x }: Point) => {
    if (x < (flyout.current?.getBoundingClientRect().right ?? 0)) usePanes.setState({ tray: null });
  };
  useCloseOutside(frame, shown !== null);
  return (
    <aside className={styles.frame} ref={frame} data-region="tray" tabIndex={-1} aria-label="Parts">
      <div
        className={styles.rail}
        role="toolbar"
        aria-label="Families of parts"
        aria-orientation="vertical"
        onKeyDown={(event) => {
          closeByKey(event);
          walkAlong(event, buttons.current);
        }}
      >
        {SHOWN.map((which) => (
          <RailButton
            key={which}
            name={which === "all" ? "All parts" : FAMILY_NAMES[which]}
            family={which === "all" ? undefined : which}
            isOpen={shown === which}
            isStop={which === (shown ?? "all")}
            attach={(element) => {
              if (element) buttons.current.set(which, element);
            }}
            onPress={() => toggle(which)}
          >
            {which === "all" ? <LayoutGrid size={20} aria-hidden /> : <FamilySymbol family={which} />}
          </RailButton>
        ))}
      </div>
      {shown ? (
        <section
          ref={flyout}
          className={styles.flyout}
          data-dragging={isDragging}
          aria-label={shown === "all" ? "All parts" : FAMILY_NAMES[shown]}
          onKeyDown={closeByKey}
        >
          <div className={styles.head}>
            <h2>{shown === "all" ? "All parts" : FAMILY_NAMES[shown]}</h2>
            <IconButton icon={X} name="Hide parts" onPress={close} />
          </div>
          <div className={styles.body}>
            <Tray
              key={shown}
              family={shown === "all" ? null : shown}
              onDragging={setDragging}
              onDropped={uncover}
            />
          </div>
        </section>
      ) : null}
    </aside>
  );
}

type RailButtonProps = {
  readonly name: string;
  readonly family: Family | undefined;
  readonly isOpen: boolean;
  /** The one that Tab stops at. */
  readonly isStop: boolean;
  readonly attach: (element: HTMLButtonElement | null) => void;
  readonly onPress: () => void;
  readonly children: ReactNode;
};

function RailButton({ name, family, isOpen, isStop, attach, onPress, children }: RailButtonProps) {
  return (
    <Hint text={name}>
      <button
        ref={attach}
        type="button"
        className={styles.button}
        data-family={family}
        aria-label={name}
        aria-expanded={isOpen}
        tabIndex={isStop ? 0 : -1}
        onClick={onPress}
      >
        {children}
      </button>
    </Hint>
  );
}

/** The symbol of the first kind of a family stands for all of them. */
function FamilySymbol({ family }: { readonly family: Family }) {
  const first = CATALOGUE.find((kind) => kind.family === family);
  return first ? <PartSymbol name={first.symbol(defaultOptions(first))} /> : null;
}

/** One stop for Tab; within the rail the arrow keys go on. */
function walkAlong(event: KeyboardEvent, buttons: ReadonlyMap<TrayShown, HTMLButtonElement>): void {
  const at = SHOWN.findIndex((which) => buttons.get(which) === document.activeElement);
  if (at < 0) return;
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: SHOWN.length - 1 }[event.key];
  const next = to === undefined ? undefined : SHOWN[(to + SHOWN.length) % SHOWN.length];
  if (!next) return;
  event.preventDefault();
  buttons.get(next)?.focus();
}

/** A press on the canvas or on another pane folds the parts away: they lie over what is wanted then. */
function useCloseOutside(frame: React.RefObject<HTMLElement | null>, isOpen: boolean): void {
  useEffect(() => {
    if (!isOpen) return;
    const onPress = (event: PointerEvent) => {
      const target = event.target instanceof Element ? event.target : null;
      if (frame.current?.contains(target) || target?.closest("[role=dialog], [role=menu]")) return;
      usePanes.setState({ tray: null });
    };
    window.addEventListener("pointerdown", onPress, { capture: true });
    return () => window.removeEventListener("pointerdown", onPress, { capture: true });
  }, [frame, isOpen]);
}
