import { X } from "lucide-react";
import { memo } from "react";
import type { ChainSide } from "../../../findings/receiverChain.ts";
import { CAUSE_HERE } from "../../../sentences/placeWords.ts";
import { useRecord, useSpectrum } from "../../../store/hooks.ts";
import { useHighlightedPart } from "../../canvas/highlight.ts";
import { openPart } from "../../canvas/reveal.ts";
import { LINE_STRIP, WireStrip } from "../../canvas/WireStrip.tsx";
import { wireSummary } from "../../canvas/wireSummary.ts";
import styles from "./ChainView.module.css";
import { StepMark } from "./StepMark.tsx";

/** A signal that comes in beside the way: where it comes from, and a small strip of it. */
export const ChainSideRow = memo(function ChainSideRow({ side }: { readonly side: ChainSide }) {
  const record = useRecord(side.from);
  const { colour } = wireSummary(useSpectrum(side.wire));
  const lit = useHighlightedPart(side.from);
  if (!record) return null;
  const outputs = record.ports.filter((p) => p.side === "out");
  // With one way out, the port's name says nothing.
  const port = outputs.length > 1 ? outputs.find((p) => p.id === side.port)?.label : undefined;
  return (
    <div className={styles.waySide} data-cause={side.isCause} aria-current={lit?.isHere ? "step" : undefined}>
      <span className={styles.waySideLine} style={{ color: colour ?? undefined }} aria-hidden />
      <button type="button" className={styles.waySideName} onClick={() => openPart(side.from)}>
        <span aria-hidden>+</span>
        <span className="unseen">Also fed by </span>
        <span className={styles.wayName}>{record.part.label || record.kind.name}</span>
        {port ? <span className="quiet">{port}</span> : null}
        {side.isCause ? (
          <span className={styles.wayLost}>
            <X size={14} strokeWidth={3} aria-hidden />
            {CAUSE_HERE}
          </span>
        ) : null}
        <StepMark part={side.from} isLost={side.isCause} />
      </button>
      <WireStrip wire={side.wire} detail="line" {...LINE_STRIP} />
    </div>
  );
});
