import type { Verdict } from "../../../findings/finding.ts";
import type { ChainStep } from "../../../findings/receiverChain.ts";
import { capital } from "../../../sentences/explain/plainWords.ts";
import { verdictSentence } from "../../../sentences/verdict.ts";
import { useApp } from "../../../store/app.ts";
import { usePart } from "../../../store/hooks.ts";
import { openPart } from "../../canvas/reveal.ts";
import { stateLook } from "../../kit/told/stateLook.ts";
import { WayItem } from "./ChainStepItem.tsx";
import styles from "./ChainView.module.css";
import { StepMark } from "./StepMark.tsx";

type Props = {
  readonly step: ChainStep;
  readonly from: ChainStep | undefined;
  readonly verdict: Verdict;
};

/** The receiver with its result, as a filled tile. */
export function ChainEnd({ step, from, verdict }: Props) {
  const label = usePart(verdict.part)?.label || verdict.part;
  const sentence = useApp((s) => verdictSentence(verdict, s.evaluation));
  const { Icon, word, tone } = stateLook(verdict);
  return (
    <WayItem step={step} from={from} type="end">
      <button
        type="button"
        className={styles.wayTile}
        data-tone={tone}
        onClick={() => openPart(verdict.part)}
      >
        <span className={styles.wayTileMark}>
          <Icon size={20} strokeWidth={3} aria-hidden />
          <span className="unseen">{capital(word)}: </span>
        </span>
        <span className={styles.wayTileWords}>
          <strong>{label}</strong>
          <span>{sentence}</span>
        </span>
        <StepMark part={step.part} isLost={step.isLost} />
      </button>
    </WayItem>
  );
}
