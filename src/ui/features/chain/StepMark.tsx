import { useHighlightedPart } from "../../canvas/highlight.ts";
import { WalkMark } from "../../canvas/WalkMark.tsx";

type Props = {
  readonly part: string;
  /** The chain says of itself that the signal is lost here, so the walk need not. */
  readonly isLost: boolean;
};

/** The number of a part on a way that is walked, and that one stands there. */
export function StepMark({ part, isLost }: Props) {
  const lit = useHighlightedPart(part);
  if (!lit) return null;
  return <WalkMark part={part} lit={isLost ? { ...lit, trouble: null } : lit} />;
}
