/**
 * The live spectrum of a wire, on a small plate. Drawn with SVG inside the wire, which is cheaper than
 * HTML over it and prints and exports with it.
 */
import { memo } from "react";
import type { Medium } from "../../parts/contract.ts";
import type { Spectrum } from "../../signal/band.ts";
import { COAX_TICKS_MHZ, coaxScale, SKY_TICKS_MHZ, skyScale, tickLabel } from "./axis.ts";
import type { CarrierState } from "./carrierState.ts";
import { STRIP_PLOT_PX, type StripDrawing, type StripShape, stripDrawing } from "./stripGeometry.ts";

export const STRIP_HEIGHT_PX = 34;
/** How far the plot is stretched: tags that are read from afar need more room, no tags at all need none. */
const PLOT_SCALE = { small: " scale(1 1.5)", mid: " scale(1 0.82)", near: "", close: "" } as const;

/** Room around the drawing on its plate [px]. */
const PAD_PX = 4;

type StripProps = {
  readonly spectrum: Spectrum;
  readonly medium: Medium;
  /** Width of the whole plate [px]. */
  readonly width: number;
  readonly detail: "small" | "mid" | "near" | "close";
};

export const Strip = memo(function Strip({ spectrum, medium, width, detail }: StripProps) {
  const inner = width - 2 * PAD_PX;
  const drawing = stripDrawing(spectrum, medium, inner);
  // Too small for words: the shapes take their room.
  const isSmall = detail === "small";
  return (
    <>
      <rect className="strip-plate" width={width} height={STRIP_HEIGHT_PX} rx={4} />
      <g transform={`translate(${PAD_PX} 2)${PLOT_SCALE[detail]}`}>
        {detail === "close" && <Ticks medium={medium} width={inner} />}
        <path className="strip-ground" d={`M0 ${STRIP_PLOT_PX}H${inner}`} />
        {drawing.shapes.map((shape, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: one signal by two ways gives two shapes alike in all else.
          <Shape key={n} shape={shape} />
        ))}
        <Blocks drawing={drawing} detail={detail} />
      </g>
      <g transform={`translate(${PAD_PX} 2)`}>
        {!isSmall && <Tags drawing={drawing} detail={detail} />}
        {drawing.shapes.length === 0 && !isSmall && (
          <text className="strip-tag strip-silent" x={inner / 2} y={STRIP_PLOT_PX - 5}>
            no signal
          </text>
        )}
      </g>
    </>
  );
});

function Shape({ shape }: { readonly shape: StripShape }) {
  switch (shape.state) {
    case "live":
      return (
        <>
          <path d={shape.area} fill={shape.fill} className="strip-live" />
          <path d={shape.profile} stroke={shape.colour} className="strip-profile" />
        </>
      );
    case "touched":
      return (
        <>
          <path d={shape.area} fill={shape.fill} className="strip-live" />
          <path d={shape.area} className="strip-touched" />
        </>
      );
    case "hit":
      return <path d={shape.area} className="strip-hit" />;
    case "idle":
    case "cut":
      return <path d={shape.area} stroke={shape.colour} className={OUTLINES[shape.state]} />;
  }
}

const OUTLINES: Readonly<Record<Extract<CarrierState, "idle" | "cut">, string>> = {
  idle: "strip-idle",
  cut: "strip-cut",
};

/** User bands of a stacked feed; the number as soon as it has room to be read. */
function Blocks({
  drawing,
  detail,
}: {
  readonly drawing: StripDrawing;
  readonly detail: StripProps["detail"];
}) {
  if (detail === "mid" || detail === "small") return null;
  const least = detail === "close" ? 2.4 : 4;
  return drawing.blocks.map((block) => (
    <g key={`${block.number} ${block.x}`}>
      <rect
        className="strip-block"
        x={block.x}
        y={STRIP_PLOT_PX - 12}
        width={Math.max(block.width - 0.4, 0.8)}
        height={12}
      />
      {block.width >= least && (
        <text
          className="strip-block-number"
          x={block.x + block.width / 2}
          y={STRIP_PLOT_PX - 4}
          fontSize={Math.min(8, block.width * (block.number > 9 ? 0.8 : 1.3))}
        >
          {block.number}
        </text>
      )}
    </g>
  ));
}

function Tags({
  drawing,
  detail,
}: {
  readonly drawing: StripDrawing;
  readonly detail: StripProps["detail"];
}) {
  const mid = detail === "mid";
  return drawing.tags.map((tag) => (
    <text
      key={tag.text}
      className="strip-tag"
      data-detail={detail}
      data-struck={tag.struck}
      data-hit={tag.hit}
      x={mid ? tag.shortX : tag.x}
      y={mid ? 30 : 29.5}
      fill={tag.hit ? "var(--danger)" : tag.colour}
    >
      {mid ? tag.shortText : tag.text}
    </text>
  ));
}

function Ticks({ medium, width }: { readonly medium: Medium; readonly width: number }) {
  const x = medium === "sky" ? skyScale(width) : coaxScale(width);
  const ticks = medium === "sky" ? SKY_TICKS_MHZ : COAX_TICKS_MHZ;
  return ticks.map((mhz) => (
    <g key={mhz} transform={`translate(${x(mhz)} 0)`}>
      <path className="strip-tick" d={`M0 0V${STRIP_PLOT_PX}`} />
      <text className="strip-tick-label" x={1} y={4.5}>
        {tickLabel(mhz)}
      </text>
    </g>
  ));
}
