import { OriginPane } from "../features/origin/OriginPane.tsx";
import { SpectrumPane } from "../features/spectrum/SpectrumPane.tsx";
import { WalkPane } from "../features/walk/WalkPane.tsx";
import { useShownWalk } from "../features/walk/walk.ts";
import { useQuestion } from "../kit/asked/questionState.ts";

/** Below the canvas: the spectrum of the selected wire; or how a level came about, or a walk, while that is asked. */
export function BottomPane({ onClose }: { readonly onClose: () => void }) {
  const question = useQuestion();
  const shown = useShownWalk();
  if (question) return <OriginPane question={question} />;
  return shown ? <WalkPane shown={shown} /> : <SpectrumPane onClose={onClose} />;
}
