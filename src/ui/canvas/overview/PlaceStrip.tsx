/** What arrives at a place, as part of its box: a press belongs to the whole box. */
import type { Spectrum } from "../../../signal/band.ts";
import type { Size } from "../layout.ts";
import { Strip } from "../Strip.tsx";
import { wireSummary } from "../wireSummary.ts";

export function PlaceStrip({ spectrum, width, height }: Size & { readonly spectrum: Spectrum }) {
  return (
    <svg
      className="strip place-strip"
      width={width}
      height={height}
      data-worst={wireSummary(spectrum).worst}
      aria-hidden="true"
    >
      <Strip spectrum={spectrum} medium="coax" width={width} height={height} detail="near" />
    </svg>
  );
}
