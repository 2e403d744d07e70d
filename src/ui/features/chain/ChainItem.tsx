import { ChevronDown, ChevronRight, CornerDownRight } from "lucide-react";
import { memo } from "react";
import { captionOf } from "../../../sentences/planes.ts";
import {
  useFindingsFor,
  usePart,
  useRecord,
  useSpectrum,
  useVerdict,
  useWire,
} from "../../../store/hooks.ts";
import { WirePicture } from "../../canvas/WireStrip.tsx";
import { spectrumWords } from "../../canvas/words.ts";
import { counted } from "../../kit/format.ts";
import { type StateLook, stateLook } from "../../kit/told/stateLook.ts";
import styles from "./ChainPane.module.css";
import type { ChainRow } from "./chainRows.ts";

const BADGES: Readonly<Record<StateLook["tone"], string>> = {
  ok: "ok",
  warn: "warning",
  bad: "error",
  idle: "note",
};

const EDGE_PX = 8;
/** The mark before the words, and the gap behind it. */
const MARK_PX = 28;
const STRIP_HEIGHT_PX = 56;
const WIDEST_PX = 358;

type Props = {
  readonly row: ChainRow;
  readonly isSelected: boolean;
  readonly isFolded: boolean;
  /** The one item of the tree that the Tab key stops at. */
  readonly isTabStop: boolean;
  /** Room for the whole tree [px]. */
  readonly width: number;
  readonly onChoose: (row: ChainRow) => void;
  readonly onFold: (part: string) => void;
};

/** Rows are listed anew with every change of the design; only those that read differently are drawn anew. */
export const ChainItem = memo(Item, (before, after) => {
  const sameRow =
    before.row.key === after.row.key &&
    before.row.level === after.row.level &&
    before.row.again === after.row.again &&
    before.row.branches === after.row.branches;
  return (
    sameRow &&
    before.isSelected === after.isSelected &&
    before.isFolded === after.isFolded &&
    before.isTabStop === after.isTabStop &&
    before.width === after.width &&
    before.onChoose === after.onChoose &&
    before.onFold === after.onFold
  );
});

function Item({ row, isSelected, isFolded, isTabStop, width, onChoose, onFold }: Props) {
  const splits = row.branches > 0;
  const indent = EDGE_PX + (row.level - 1) * 16;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the tree handles the keys for all its items.
    <div
      className={isSelected ? `${styles.item} ${styles.selected}` : styles.item}
      role="treeitem"
      aria-level={row.level}
      aria-selected={isSelected}
      aria-expanded={splits ? !isFolded : undefined}
      tabIndex={isTabStop ? 0 : -1}
      data-key={row.key}
      style={{ paddingLeft: indent }}
      onClick={() => onChoose(row)}
    >
      {splits ? (
        // The arrow keys of the tree do the same, so this is for pointers only.
        <button
          type="button"
          className={styles.fold}
          tabIndex={-1}
          aria-hidden
          onClick={(event) => {
            event.stopPropagation();
            onFold(row.id);
          }}
        >
          {isFolded ? <ChevronRight size={16} /> : <ChevronDown size={16} />}
        </button>
      ) : (
        <span className={styles.fold} aria-hidden>
          {row.type === "wire" ? <CornerDownRight size={14} /> : null}
        </span>
      )}
      {row.type === "part" ? (
        <PartWords row={row} isFolded={isFolded} />
      ) : (
        <WireWords id={row.id} width={width - indent - EDGE_PX - MARK_PX} />
      )}
    </div>
  );
}

function PartWords({ row, isFolded }: { readonly row: ChainRow; readonly isFolded: boolean }) {
  const record = useRecord(row.id);
  const verdict = useVerdict(row.id);
  const findings = useFindingsFor(row.id);
  if (!record) return null;
  const errors = findings.filter((f) => f.severity === "error" && f.parts[0] === row.id).length;
  const caption = captionOf(record);
  return (
    <span className={styles.words}>
      <strong>{record.part.label}</strong>
      {caption ? <span className="quiet small"> {caption}</span> : null}
      {row.again ? <span className="quiet small"> (listed above)</span> : null}
      {isFolded && row.branches > 0 ? <span className="quiet small"> {row.branches} ways folded</span> : null}
      {verdict ? (
        <span className={`badge ${BADGES[stateLook(verdict).tone]}`}>{stateLook(verdict).word}</span>
      ) : null}
      {errors > 0 ? <span className="badge error">{counted(errors, "error")}</span> : null}
    </span>
  );
}

function WireWords({ id, width }: { readonly id: string; readonly width: number }) {
  const wire = useWire(id);
  const spectrum = useSpectrum(id);
  const from = usePart(wire?.from[0] ?? "");
  const record = useRecord(wire?.from[0] ?? "");
  const port = record?.ports.find((p) => p.id === wire?.from[1])?.label;
  // With one way out, the port's name says nothing.
  const several = (record?.ports.filter((p) => p.side === "out").length ?? 0) > 1;
  return (
    <span className={`${styles.words} small`}>
      {several && port ? <span>{port}: </span> : null}
      <span className="unseen">wire from {from?.label}: </span>
      <WirePicture wire={id} detail="plate" width={Math.min(width, WIDEST_PX)} height={STRIP_HEIGHT_PX} />
      <span className="quiet">{spectrumWords(spectrum)}</span>
    </span>
  );
}
