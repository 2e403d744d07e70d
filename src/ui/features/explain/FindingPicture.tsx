import { useMemo } from "react";
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import { profileOf } from "../../../findings/limits.ts";
import type { Mark, SpectrumPicture } from "../../../sentences/explain/picture.ts";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import { SILENCE } from "../../../signal/band.ts";
import { skyStretch } from "../../canvas/axis.ts";
import { Strip } from "../../canvas/Strip.tsx";
import { useSize } from "../../kit/useSize.ts";
import { Axes } from "../spectrum/Axes.tsx";
import { Carriers } from "../spectrum/Carriers.tsx";
import { type LevelScale, levelScale, MARGIN } from "../spectrum/plot.ts";
import { carrierRows } from "../spectrum/rows.ts";
import { cutOutScale, isSkyStretch, MARK_LOOK, markGroups, ticksOf } from "./picture.ts";
import "../spectrum/spectrum.css";

type Props = { readonly picture: SpectrumPicture; readonly evaluation: Evaluation };

const PLOT_PX = 176;
/** Between the strip and the plot under it: the lens that leads from one to the other, then the signs of the marks. */
const GAP_PX = 24;
/** Height of the strip above the cut-out [px]. */
const STRIP_HEIGHT_PX = 48;
const LENS_PX = 10;
/** Level lines outside the plot would seem to lie at its edge. */
const inside = (dbuv: number, y: LevelScale) => {
  const [low = 0, high = 0] = y.domain();
  return dbuv >= low && dbuv <= high;
};

/** The spectrum that a finding is about: the strip of the wire, and the stretch concerned enlarged below it. */
export function FindingPicture({ picture, evaluation }: Props) {
  const [attach, size] = useSize();
  const groups = markGroups(picture.marks);
  const label = plainLabelOf(evaluation, picture.at[0]);
  return (
    <figure className="finding-picture">
      <div ref={attach}>
        {size && size.width > 160 ? (
          <Drawing picture={picture} evaluation={evaluation} width={size.width} />
        ) : null}
      </div>
      <figcaption className="small">
        Behind “{label}”: above its whole strip, below the stretch concerned.
        {groups.length > 0 ? (
          <ul className="mark-list">
            {groups.map((group) => (
              <li key={group.kind + group.label}>
                <span className={`mark-sign ${group.kind}`} aria-hidden="true">
                  {MARK_LOOK[group.kind].sign}
                </span>
                <span>
                  {MARK_LOOK[group.kind].word}: {group.label}
                  <span className="quiet"> · {group.where}</span>
                </span>
              </li>
            ))}
          </ul>
        ) : null}
      </figcaption>
    </figure>
  );
}

function Drawing({ picture, evaluation, width }: Props & { readonly width: number }) {
  const { at, marks } = picture;
  const sky = isSkyStretch(picture);
  const spectrum = evaluation.record(at[0])?.outputs[at[1]] ?? SILENCE;
  const rows = useMemo(
    () => carrierRows(spectrum, (band) => band.selected, profileOf(evaluation.design)),
    [spectrum, evaluation],
  );
  const x = useMemo(
    () => cutOutScale(picture, { left: MARGIN.left, right: width - MARGIN.right }),
    [picture, width],
  );
  const seen = useMemo(
    () => rows.filter((r) => r.hereMHz >= picture.fromMHz && r.hereMHz <= picture.toMHz),
    [rows, picture],
  );
  const y = useMemo(() => levelScale(seen, PLOT_PX), [seen]);
  const top = STRIP_HEIGHT_PX + GAP_PX;
  return (
    <svg className="plot finding-plot" width={width} height={top + PLOT_PX} aria-hidden="true">
      <Strip
        spectrum={spectrum}
        medium={sky ? "sky" : "coax"}
        width={width}
        height={STRIP_HEIGHT_PX}
        detail="near"
      />
      <Lens picture={picture} width={width} />
      <g transform={`translate(0 ${top})`}>
        <Axes
          x={x}
          y={y}
          ticks={ticksOf(picture, x, Math.max(2, Math.round(width / 80)))}
          width={width}
          height={PLOT_PX}
        />
        <Carriers rows={seen} x={x} y={y} width={width} height={PLOT_PX} />
        {marks.map((mark) => (
          <MarkShape key={`${mark.kind} ${mark.fromMHz}`} mark={mark} x={x} y={y} />
        ))}
      </g>
    </svg>
  );
}

/** From the stretch on the strip down to the corners of the plot that enlarges it. */
function Lens({ picture, width }: { readonly picture: SpectrumPicture; readonly width: number }) {
  // The strip leaves four pixels of its plate free on either side.
  const x = cutOutScale(
    isSkyStretch(picture) ? skyStretch((picture.fromMHz + picture.toMHz) / 2) : { fromMHz: 5, toMHz: 2400 },
    {
      left: 4,
      right: width - 4,
    },
  );
  const held = (px: number) => Math.min(width - 4, Math.max(4, px));
  const left = held(x(picture.fromMHz));
  const right = Math.max(left + 2, held(x(picture.toMHz)));
  const bottom = STRIP_HEIGHT_PX + LENS_PX;
  return (
    <path
      className="finding-lens"
      d={`M${left} 1H${right}V${STRIP_HEIGHT_PX - 1}L${width - MARGIN.right} ${bottom}H${MARGIN.left}L${left} ${STRIP_HEIGHT_PX - 1}z`}
    />
  );
}

/** A column over the carriers concerned, its sign above it, and the level that is meant across it. */
function MarkShape({
  mark,
  x,
  y,
}: {
  readonly mark: Mark;
  readonly x: ReturnType<typeof cutOutScale>;
  readonly y: LevelScale;
}) {
  const left = x(mark.fromMHz);
  const right = Math.max(left + 2, x(mark.toMHz));
  const bottom = PLOT_PX - MARGIN.bottom;
  return (
    <g className={`finding-mark ${mark.kind}`}>
      <rect x={left} width={right - left} y={MARGIN.top} height={bottom - MARGIN.top} />
      <text x={(left + right) / 2} y={-2} textAnchor="middle">
        {MARK_LOOK[mark.kind].sign}
      </text>
      {mark.levelDbuv !== undefined && inside(mark.levelDbuv, y) ? (
        <line x1={left - 4} x2={right + 4} y1={y(mark.levelDbuv)} y2={y(mark.levelDbuv)} />
      ) : null}
    </g>
  );
}
