import { X } from "lucide-react";
import { useApp } from "../../store/app.ts";
import { VerdictSummary } from "../features/verdict/VerdictPane.tsx";
import { CureAllButton } from "../kit/asked/CureButton.tsx";
import { IconButton } from "../kit/IconButton.tsx";
import { MoreSheet } from "./MoreSheet.tsx";
import { PhoneBar } from "./PhoneBar.tsx";
import styles from "./PhoneLayout.module.css";
import { PhoneMain } from "./PhoneMain.tsx";
import { PANES } from "./paneTable.ts";
import { closePhonePane, type PhonePane, usePhonePane } from "./phonePanes.ts";

/**
 * A phone: the way to one receiver from top to bottom, the whole house as cells, or the drawing; what the design comes
 * to in one line that never goes away; panes in a sheet. Turned on its side, the sheet stands beside it.
 */
export function PhoneLayout({ isTurned }: { readonly isTurned: boolean }) {
  const open = usePhonePane();
  const shown = open ?? (isTurned ? "verdict" : null);
  return (
    <div className={styles.body} data-turned={isTurned}>
      <PhoneMain />
      <aside className={styles.side} aria-label="Result">
        <ResultLine shown={shown} />
        {shown ? <Sheet key={shown} pane={shown} canClose={open !== null} /> : null}
      </aside>
      <PhoneBar shown={shown} />
    </div>
  );
}

/** How many receivers work, and the way to mend the others, which the pane of cures has itself. */
function ResultLine({ shown }: { readonly shown: PhonePane | null }) {
  const isEmpty = useApp((s) => s.design.parts.length === 0);
  if (isEmpty) return null;
  return (
    <div className={styles.line}>
      <VerdictSummary />
      {shown === "cures" ? null : <CureAllButton />}
    </div>
  );
}

function Sheet({ pane, canClose }: { readonly pane: PhonePane; readonly canClose: boolean }) {
  const found = PANES.find((each) => each.id === pane);
  const name = found?.name ?? "More";
  // What stands below the canvas elsewhere has a head of its own, with its own way to close it.
  const hasHead = canClose && found?.place !== "below";
  const Body = found?.component ?? MoreSheet;
  return (
    <section className={styles.sheet} data-region="sheet" tabIndex={-1} aria-label={name}>
      {hasHead ? (
        <div className={styles.head}>
          <h2>{name}</h2>
          <IconButton icon={X} name={`Close ${name.toLowerCase()}`} onPress={closePhonePane} />
        </div>
      ) : null}
      <div className={styles.pane} data-pane-body="">
        <Body />
      </div>
    </section>
  );
}
