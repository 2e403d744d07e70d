import { Link2, SquarePlus } from "lucide-react";
import { type KeyboardEvent, useCallback, useEffect, useMemo, useRef, useState } from "react";
import { useApp } from "../../../store/app.ts";
import { useShownDesign } from "../../../store/hooks.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import { setCanvas } from "../../canvas/state.ts";
import { useSize } from "../../kit/useSize.ts";
import { ChainItem } from "./ChainItem.tsx";
import styles from "./ChainPane.module.css";
import { type ChainRow, chainRows } from "./chainRows.ts";

/** The design as a list that a screen reader and the keyboard walk through; it selects as the canvas does. */
export function ChainPane() {
  const design = useShownDesign();
  const selection = useApp((s) => s.selection);
  const [folded, setFolded] = useState<ReadonlySet<string>>(new Set());
  const [focusKey, setFocusKey] = useState<string | null>(null);
  const tree = useRef<HTMLDivElement>(null);
  const [measure, size] = useSize();
  const rows = useMemo(() => chainRows(design, folded), [design, folded]);

  const selected = useMemo(() => new Set([...selection.parts, ...selection.wires]), [selection]);
  const firstSelected = rows.find((r) => selected.has(r.id) && !r.again);
  const focusRow = rows.find((r) => r.key === focusKey) ?? firstSelected ?? rows[0];

  const fold = useCallback((id: string) => {
    setFolded((before) => {
      const next = new Set(before);
      if (!next.delete(id)) next.add(id);
      return next;
    });
  }, []);
  const pick = useCallback((row: ChainRow) => {
    setFocusKey(row.key);
    choose(row);
  }, []);

  const firstSelectedKey = firstSelected?.key;
  useEffect(() => {
    if (firstSelectedKey !== undefined)
      itemOf(tree.current, firstSelectedKey)?.scrollIntoView({ block: "nearest" });
  }, [firstSelectedKey]);

  if (rows.length === 0) {
    return (
      <div className="empty">
        <h3>No parts yet</h3>
        <p>The design will be listed here from its sources to its receivers.</p>
      </div>
    );
  }

  const focus = (row: ChainRow | undefined) => {
    if (!row) return;
    setFocusKey(row.key);
    itemOf(tree.current, row.key)?.focus();
  };
  const press = (event: KeyboardEvent) => {
    if (!focusRow) return;
    const at = rows.indexOf(focusRow);
    switch (event.key) {
      case "ArrowDown":
        focus(rows[at + 1]);
        break;
      case "ArrowUp":
        focus(rows[at - 1]);
        break;
      case "Home":
        focus(rows[0]);
        break;
      case "End":
        focus(rows.at(-1));
        break;
      case "ArrowRight":
        if (focusRow.branches > 0 && folded.has(focusRow.id)) fold(focusRow.id);
        else focus(rows[at + 1]);
        break;
      case "ArrowLeft":
        if (focusRow.branches > 0 && !folded.has(focusRow.id)) fold(focusRow.id);
        else focus(rows.slice(0, at).findLast((r) => r.level < focusRow.level && r.type === "part"));
        break;
      case "Enter":
      case " ":
        choose(focusRow);
        break;
      default:
        return;
    }
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <div className="chain" data-chooses-parts>
      <div className={`button-row ${styles.tools}`}>
        <button type="button" className="button" onClick={() => setCanvas({ dialog: "join" })}>
          <Link2 size={16} aria-hidden /> Connect two parts…
        </button>
        <button
          type="button"
          className="button"
          disabled={selection.wires.length !== 1}
          onClick={() => setCanvas({ dialog: "insert" })}
        >
          <SquarePlus size={16} aria-hidden /> Insert into wire…
        </button>
      </div>
      <div ref={measure} />
      <div className={styles.tree} role="tree" aria-label="Parts and wires" ref={tree} onKeyDown={press}>
        {rows.map((row) => (
          <ChainItem
            key={row.key}
            row={row}
            isSelected={selected.has(row.id)}
            isFolded={folded.has(row.id)}
            isTabStop={row === focusRow}
            width={size?.width ?? 0}
            onChoose={pick}
            onFold={fold}
          />
        ))}
      </div>
    </div>
  );
}

function choose(row: ChainRow): void {
  selectFromPane(row.type === "part" ? { parts: [row.id] } : { wires: [row.id] });
}

function itemOf(tree: HTMLElement | null, key: string): HTMLElement | null {
  return tree?.querySelector<HTMLElement>(`[data-key="${CSS.escape(key)}"]`) ?? null;
}
