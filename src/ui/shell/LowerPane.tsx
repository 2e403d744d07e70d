import { OriginPane } from "../features/origin/OriginPane.tsx";
import { SpectrumPane } from "../features/spectrum/SpectrumPane.tsx";
import { WalkPane } from "../features/walk/WalkPane.tsx";
import { useShownWalk } from "../features/walk/walk.ts";
import { useLower } from "../kit/asked/lower.ts";
import { usePanes } from "../kit/panes.ts";
import { keepFocusIn } from "./regions.ts";

/** Below the canvas: the spectrum of the selected wire; or how a level came about, or a walk, while that is asked. */
export function LowerPane() {
  const lower = useLower();
  switch (lower?.type) {
    case "origin":
      return <OriginPane question={lower.question} />;
    case "walk":
      return <ShownWalk />;
    default:
      return <SpectrumPane onClose={closeSpectrum} />;
  }
}

function closeSpectrum(): void {
  usePanes.setState({ spectrumOpen: false, sheet: null });
  keepFocusIn("panes", "drawing");
}

function ShownWalk() {
  const shown = useShownWalk();
  return shown && <WalkPane shown={shown} />;
}
