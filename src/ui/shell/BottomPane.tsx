import { useQuestion } from "../origin/asked.ts";
import { OriginPane } from "../origin/OriginPane.tsx";
import { SpectrumPane } from "../spectrum/SpectrumPane.tsx";

/** Below the canvas: the spectrum of the selected wire, or how a level came about while that is asked. */
export function BottomPane({ onClose }: { readonly onClose: () => void }) {
  const question = useQuestion();
  return question ? <OriginPane question={question} /> : <SpectrumPane onClose={onClose} />;
}
