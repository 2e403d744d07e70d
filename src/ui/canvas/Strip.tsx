/**
 * The live spectrum of a wire, on a small plate. Drawn with SVG, which is cheaper than HTML and prints and exports
 * with the rest.
 */
import { memo } from "react";
import type { Medium } from "../../parts/contract.ts";
import { SKY_SPLIT_MHZ } from "../../parts/planSatellite.ts";
import type { Spectrum } from "../../signal/band.ts";
import { COAX_TICKS_MHZ, coaxScale, skyScale, skyTicks, tickLabel } from "./axis.ts";
import type { CarrierState } from "./carrierState.ts";
import type { Size } from "./layout.ts";
import { type StripDrawing, type StripShape, skyAtMHz, stripDrawing } from "./stripGeometry.ts";
import { placeTags } from "./stripTags.ts";

/** How much a strip shows: "small" shapes alone; "mid" large tags; "near" everything; "close" frequencies too. */
export type StripDetail = "small" | "mid" | "near" | "close";

/** Type size of the tags, so that they never come below 10 px on the screen [px]. */
const TAG_SIZE_PX: Readonly<Record<StripDetail, number>> = { small: 0, mid: 15.5, near: 11.5, close: 8.5 };
/** Room around the drawing on its plate [px]. */
const PAD_PX = 4;

type StripProps = Size & {
  readonly spectrum: Spectrum;
  readonly medium: Medium;
  readonly detail: StripDetail;
};

export const Strip = memo(function Strip({ spectrum, medium, width, height, detail }: StripProps) {
  const size = TAG_SIZE_PX[detail];
  const plot = { width: width - 2 * PAD_PX, height: height - PAD_PX - (size > 0 ? size + 2.5 : PAD_PX) };
  const drawing = stripDrawing(spectrum, medium, plot);
  return (
    <>
      <rect className="strip-plate" width={width} height={height} rx={4} />
      <g transform={`translate(${PAD_PX} ${PAD_PX})`}>
        {detail === "close" && <Ticks spectrum={spectrum} medium={medium} plot={plot} />}
        {drawing.lost.map(({ x, width: lost }) => (
          <g key={x}>
            <rect
              className="strip-lost"
              x={x}
              y={-PAD_PX + 1}
              width={lost}
              height={plot.height + PAD_PX - 1}
            />
            <rect className="strip-lost-cap" x={x - 1} y={-PAD_PX + 1} width={lost + 2} height={2.6} />
          </g>
        ))}
        <path className="strip-ground" d={`M0 ${plot.height}H${plot.width}`} />
        {drawing.shapes.map((shape, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: one signal by two ways gives two shapes alike in all else.
          <Shape key={n} shape={shape} />
        ))}
        <Blocks drawing={drawing} plot={plot} detail={detail} />
        {size > 0 && <Tags drawing={drawing} plot={plot} size={size} />}
        {drawing.shapes.length === 0 && size > 0 && (
          <text
            className="strip-tag strip-silent"
            x={plot.width / 2}
            y={plot.height / 2 + size / 3}
            fontSize={size}
          >
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

type Drawn = { readonly drawing: StripDrawing; readonly plot: Size };

/** User bands of a stacked feed; the number as soon as it has room to be read. */
function Blocks({ drawing, plot, detail }: Drawn & { readonly detail: StripDetail }) {
  if (detail === "mid" || detail === "small") return null;
  const least = detail === "close" ? 5 : 9;
  return drawing.blocks.map((block) => (
    <g key={`${block.number} ${block.x}`}>
      <rect
        className="strip-block"
        x={block.x}
        y={plot.height - 15}
        width={Math.max(block.width - 0.4, 0.8)}
        height={15}
      />
      {block.width >= least && (
        <text
          className="strip-block-number"
          x={block.x + block.width / 2}
          y={plot.height - 4}
          fontSize={Math.min(11.5, block.width * (block.number > 9 ? 0.8 : 1.3))}
        >
          {block.number}
        </text>
      )}
    </g>
  ));
}

function Tags({ drawing, plot, size }: Drawn & { readonly size: number }) {
  return placeTags(drawing.tags, { widthPx: plot.width, sizePx: size }).map((tag) => (
    <text
      key={tag.text}
      className="strip-tag"
      data-struck={tag.struck}
      data-hit={tag.hit}
      x={tag.x}
      y={plot.height + size}
      fontSize={size}
      fill={tag.hit ? "var(--danger)" : tag.colour}
    >
      {tag.text}
    </text>
  ));
}

function Ticks({
  spectrum,
  medium,
  plot,
}: {
  readonly spectrum: Spectrum;
  readonly medium: Medium;
  readonly plot: Size;
}) {
  const at = skyAtMHz(spectrum);
  const x = medium === "sky" ? skyScale(plot.width, at) : coaxScale(plot.width);
  const ticks = medium === "sky" ? skyTicks(at ?? SKY_SPLIT_MHZ) : COAX_TICKS_MHZ;
  return ticks.map((mhz) => (
    <g key={mhz} transform={`translate(${x(mhz)} 0)`}>
      <path className="strip-tick" d={`M0 0V${plot.height}`} />
      {/* Beside the right edge the figure stands on the other side of its line. */}
      <text
        className="strip-tick-label"
        x={x(mhz) > plot.width - 20 ? -1 : 1}
        y={5.5}
        textAnchor={x(mhz) > plot.width - 20 ? "end" : "start"}
      >
        {tickLabel(mhz)}
      </text>
    </g>
  ));
}
