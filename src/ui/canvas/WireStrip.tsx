/** The live strip of a wire outside the canvas. */
import { type ComponentProps, memo } from "react";
import { useApp } from "../../store/app.ts";
import { usePart, useRecord, useSpectrum, useWire } from "../../store/hooks.ts";
import { showPane } from "../kit/panes.ts";
import { useInSight } from "../kit/useInSight.ts";
import { Strip } from "./Strip.tsx";
import { wireSummary } from "./wireSummary.ts";
import { spectrumWords } from "./words.ts";
import "./strip.css";
import "./wireStrip.css";

/** Size beside a name or a pill [px]. */
export const LINE_STRIP = { width: 128, height: 30 } as const;

type Props = {
  readonly wire: string;
  /** Of the whole plate [px]. */
  readonly width: number;
  readonly height: number;
  /** "line": shapes alone, without words, beside a name. */
  readonly detail: "plate" | "line";
  /** Where the keyboard goes among other things by keys of its own. */
  readonly stop?: Pick<ComponentProps<"button">, "tabIndex" | "onFocus"> & { readonly "data-item": string };
};

/** A strip that opens the spectrum of its wire. */
export const WireStrip = memo(function WireStrip(props: Props) {
  const { wire: id, width, height, detail, stop } = props;
  const wire = useWire(id);
  const spectrum = useSpectrum(id);
  const from = usePart(wire?.from[0] ?? "");
  const to = usePart(wire?.to[0] ?? "");
  const isSelected = useApp((s) => s.selection.wires.includes(id));
  if (!wire || width <= 0) return null;
  return (
    <button
      type="button"
      className="wire-strip"
      data-detail={detail}
      data-worst={wireSummary(spectrum).worst}
      data-selected={isSelected}
      aria-label={`Spectrum from ${from?.label ?? ""} to ${to?.label ?? ""}: ${spectrumWords(spectrum)}`}
      style={{ width, height }}
      onClick={() => openSpectrum(id)}
      {...stop}
    >
      <Picture {...props} />
    </button>
  );
});

/** The same as a picture alone, in a row that is pressed as a whole and says in words what is on the wire. */
export const WirePicture = memo(function WirePicture(props: Props) {
  const { worst } = wireSummary(useSpectrum(props.wire));
  const { width, height, detail } = props;
  if (width <= 0) return null;
  return (
    <span
      className="wire-strip"
      data-detail={detail}
      data-worst={worst}
      style={{ width, height }}
      aria-hidden
    >
      <Picture {...props} />
    </span>
  );
});

function Picture({ wire: id, width, height, detail }: Props) {
  const wire = useWire(id);
  const spectrum = useSpectrum(id);
  const record = useRecord(wire?.from[0] ?? "");
  const [attach, isInSight] = useInSight();
  const medium = record?.ports.find((p) => p.id === wire?.from[1])?.medium ?? "coax";
  return (
    <svg ref={attach} width={width} height={height} aria-hidden="true">
      {isInSight ? (
        <Strip
          spectrum={spectrum}
          medium={medium}
          width={width}
          height={height}
          detail={detail === "plate" ? "near" : "small"}
        />
      ) : null}
    </svg>
  );
}

function openSpectrum(wire: string): void {
  useApp.getState().select({ wires: [wire] });
  showPane("spectrum");
}
