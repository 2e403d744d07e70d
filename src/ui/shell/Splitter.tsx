import { SPECTRUM_HEIGHT, setSpectrumHeight, usePanes } from "../kit/panes.ts";

const KEY_STEP = 24;

/** The bar between canvas and spectrum: dragged by pointer, moved by the arrow keys. */
export function Splitter() {
  const height = usePanes((s) => s.spectrumHeight);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a rule cannot take the focus; this is the separator widget of ARIA.
    <div
      className="splitter"
      role="separator"
      aria-orientation="horizontal"
      aria-label="Height of the spectrum"
      aria-valuenow={height}
      aria-valuemin={SPECTRUM_HEIGHT.least}
      aria-valuemax={SPECTRUM_HEIGHT.most}
      tabIndex={0}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        event.preventDefault();
      }}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
        const bottom = event.currentTarget.parentElement?.getBoundingClientRect().bottom ?? 0;
        setSpectrumHeight(Math.min(bottom - event.clientY, window.innerHeight - 260));
      }}
      onKeyDown={(event) => {
        if (event.key === "ArrowUp") setSpectrumHeight(height + KEY_STEP);
        else if (event.key === "ArrowDown") setSpectrumHeight(height - KEY_STEP);
        else return;
        event.preventDefault();
      }}
    />
  );
}
