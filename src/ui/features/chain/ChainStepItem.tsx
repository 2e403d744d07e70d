import { X } from "lucide-react";
import { memo, type ReactNode } from "react";
import type { ChainStep } from "../../../findings/receiverChain.ts";
import { LOST_HERE } from "../../../sentences/placeWords.ts";
import { captionOf } from "../../../sentences/planes.ts";
import { useRecord, useSpectrum } from "../../../store/hooks.ts";
import { useHighlightedPart } from "../../canvas/highlight.ts";
import { PartSymbol } from "../../canvas/PartSymbol.tsx";
import { openPart } from "../../canvas/reveal.ts";
import { walkLook } from "../../canvas/WalkMark.tsx";
import { LINE_STRIP, WireStrip } from "../../canvas/WireStrip.tsx";
import { wireSummary } from "../../canvas/wireSummary.ts";
import { ChainSideRow } from "./ChainSideRow.tsx";
import styles from "./ChainView.module.css";
import { StepMark } from "./StepMark.tsx";

/** Frame and inset of a card on either side of its strip [px]. */
const CARD_INSET_PX = 8;
const STRIP_HEIGHT_PX = 64;

type Props = {
  readonly step: ChainStep;
  /** The step above. */
  readonly from: ChainStep | undefined;
  /** Room for the whole chain [px]. */
  readonly width: number;
};

/** A part on the way: what comes in beside it, then its card with the strip of what leaves it; a cable is a pill. */
export const ChainStepItem = memo(function ChainStepItem({ step, from, width }: Props) {
  const record = useRecord(step.part);
  if (!record) return null;
  const name = record.part.label || record.kind.name;
  if (step.isCable)
    return (
      <WayItem step={step} from={from} type="line">
        <button
          type="button"
          className={styles.wayPill}
          data-lost={step.isLost}
          onClick={() => openPart(step.part)}
        >
          <span className="unseen">{name}, </span>
          {record.kind.onWire?.(record.options) ?? captionOf(record)}
          {step.isLost ? <Lost /> : null}
          <StepMark part={step.part} isLost={step.isLost} />
        </button>
        {step.wire ? <WireStrip wire={step.wire} detail="line" {...LINE_STRIP} /> : null}
      </WayItem>
    );
  return (
    <WayItem step={step} from={from} type="card">
      <div className={styles.wayCard} data-lost={step.isLost}>
        <button type="button" className={styles.wayHead} onClick={() => openPart(step.part)}>
          <PartSymbol name={record.kind.symbol(record.options)} />
          <span className={styles.wayName}>{name}</span>
          {step.isLost ? <Lost /> : null}
          <StepMark part={step.part} isLost={step.isLost} />
        </button>
        {step.wire ? (
          <WireStrip wire={step.wire} detail="plate" width={width - CARD_INSET_PX} height={STRIP_HEIGHT_PX} />
        ) : null}
      </div>
    </WayItem>
  );
});

/** One entry of the way with the line that comes down to it, in the colour of what it carries or failing red. */
export function WayItem(
  props: Pick<Props, "step" | "from"> & { readonly type: string; readonly children: ReactNode },
) {
  const { step, from, type, children } = props;
  const { colour } = wireSummary(useSpectrum(from?.wire ?? ""));
  const fails = from?.fails === true && step.fails;
  const lit = useHighlightedPart(step.part);
  return (
    <li
      className={styles.wayStep}
      data-type={type}
      data-walk={lit && walkLook(lit)}
      aria-current={lit?.isHere ? "step" : undefined}
    >
      {from ? (
        <span
          className={styles.wayLine}
          data-fails={fails}
          data-silent={colour === null}
          style={{ color: colour ?? undefined }}
          aria-hidden
        />
      ) : null}
      {step.sides.map((side) => (
        <ChainSideRow key={side.wire} side={side} />
      ))}
      {children}
    </li>
  );
}

function Lost() {
  return (
    <span className={styles.wayLost}>
      <X size={16} strokeWidth={3} aria-hidden />
      {LOST_HERE}
    </span>
  );
}
