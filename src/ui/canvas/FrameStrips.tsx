import type { PartRecord } from "../../evaluate/evaluation.ts";
import { SILENCE } from "../../signal/band.ts";
import type { Frame } from "./frames.ts";
import { Strip, type StripDetail } from "./Strip.tsx";
import { wireSummary } from "./wireSummary.ts";

type Props = { readonly record: PartRecord; readonly frame: Frame; readonly detail: StripDetail };

/** The strips docked to a part, in a drawing where nothing is pressed. */
export function FrameStrips({ record, frame, detail }: Props) {
  return frame.strips.map(({ port, side, x, y, width, height }) => {
    const spectrum = (side === "out" ? record.outputs : record.inputs)[port] ?? SILENCE;
    const medium = record.ports.find((p) => p.id === port)?.medium ?? "coax";
    return (
      <g
        key={port}
        className="strip"
        data-worst={wireSummary(spectrum).worst}
        transform={`translate(${x} ${y})`}
      >
        <Strip spectrum={spectrum} medium={medium} width={width} height={height} detail={detail} />
      </g>
    );
  });
}
