/** What can be pressed in an overview: one Tab stop for all of them, the arrow keys go from one to the next. */
import type { CSSProperties, ReactNode } from "react";
import type { PartId } from "../../../design/design.ts";
import type { PlaceState } from "../../../findings/placeState.ts";
import { useApp } from "../../../store/app.ts";
import type { Box } from "../layout.ts";
import { setCanvas, useCanvas } from "../state.ts";

type Props = {
  /** Of the thing shown, among all of the overview. */
  readonly id: string;
  /** Parts that a press selects. */
  readonly parts: readonly PartId[];
  readonly look: string;
  readonly facts: {
    readonly sentence: string;
    readonly isSelected: boolean;
    readonly state?: PlaceState;
    readonly isCulprit?: boolean;
  };
  readonly children: ReactNode;
};

export function ItemButton({ id, parts, look, facts, children }: Props) {
  const isStop = useCanvas((s) => s.item === id);
  return (
    <button
      type="button"
      className={`overview-item ${look}`}
      data-item={id}
      data-state={facts.state}
      data-culprit={facts.isCulprit}
      aria-label={facts.sentence}
      aria-pressed={facts.isSelected}
      tabIndex={isStop ? 0 : -1}
      onFocus={() => setCanvas({ item: id })}
      onClick={() => {
        setCanvas({ item: id });
        useApp.getState().select({ parts });
      }}
    >
      {children}
    </button>
  );
}

/** Where a thing stands in the drawing. */
export function at({ x, y, width, height }: Box): CSSProperties {
  return { left: x, top: y, width, height };
}
