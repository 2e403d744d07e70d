/** What can be pressed in an overview: one Tab stop for all of them, the arrow keys go from one to the next. */
import { type CSSProperties, type ReactNode, useContext } from "react";
import type { PlaceState } from "../../../findings/placeState.ts";
import type { HighlightedPart } from "../highlight.ts";
import type { Box } from "../layout.ts";
import { setCanvas, useCanvas } from "../state.ts";
import { WalkMark, walkLook, walkWords } from "../WalkMark.tsx";
import { MannerContext } from "./manner.ts";
import { useStepAt } from "./walkSteps.ts";

type Props = {
  /** Of the thing shown, among all of the overview. */
  readonly id: string;
  readonly look: string;
  readonly facts: {
    readonly sentence: string;
    readonly isSelected: boolean;
    readonly state?: PlaceState;
    readonly isCulprit?: boolean;
  };
  readonly title?: string | undefined;
  readonly isNarrow?: boolean;
  readonly onPress: () => void;
  readonly children: ReactNode;
};

export function ItemButton({ id, look, facts, title, isNarrow = false, onPress, children }: Props) {
  const { selects } = useContext(MannerContext);
  const stop = useStop(id);
  const step = useStepAt(id);
  return (
    <button
      type="button"
      className={`overview-item ${look}`}
      data-state={facts.state}
      data-culprit={facts.isCulprit}
      data-walk={step && walkLook(step)}
      aria-label={step ? `${facts.sentence}. ${spokenStep(step)}` : facts.sentence}
      aria-current={step?.isHere ? "step" : undefined}
      aria-pressed={selects ? facts.isSelected : undefined}
      title={title}
      onClick={() => {
        setCanvas({ item: id });
        onPress();
      }}
      {...stop}
    >
      {children}
      {step && <WalkMark lit={step} isNarrow={isNarrow} />}
    </button>
  );
}

function spokenStep(step: HighlightedPart): string {
  return step.trouble ? `${walkWords(step)}, ${step.trouble.mark}` : walkWords(step);
}

/** What makes an element one of the things that Tab and the arrow keys go to. */
export function useStop(id: string) {
  const isStop = useCanvas((s) => s.item === id);
  return {
    "data-item": id,
    tabIndex: isStop ? 0 : -1,
    onFocus: () => setCanvas({ item: id }),
  };
}

/** Where a thing stands in the drawing. */
export function at({ x, y, width, height }: Box): CSSProperties {
  return { left: x, top: y, width, height };
}
