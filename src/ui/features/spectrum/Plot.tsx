import { scaleLinear } from "d3-scale";
import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef } from "react";
import { COAX_TICKS_MHZ, coaxScale, isOnSky, skyScale, skyTicks } from "../../canvas/axis.ts";
import { decimal, megahertz } from "../../kit/format.ts";
import { useSize } from "../../kit/useSize.ts";
import { Axes } from "./Axes.tsx";
import { Carriers } from "./Carriers.tsx";
import {
  type Domain,
  domainShowing,
  levelScale,
  MARGIN,
  movedDomain,
  nearestRow,
  neighbourRow,
  zoomedDomain,
} from "./plot.ts";
import type { CarrierRow } from "./rows.ts";

type Props = {
  readonly rows: readonly CarrierRow[];
  /** "strip": bent as on the wires; "linear": even over `domain`. */
  readonly axis: "strip" | "linear";
  readonly domain: Domain;
  readonly whole: Domain;
  readonly onDomain: (domain: Domain) => void;
  readonly cursor: CarrierRow | undefined;
  readonly onCursor: (key: string) => void;
  /** How the level under the cursor came about is asked. */
  readonly onAsk: (row: CarrierRow) => void;
};

/** The spectrum with axes. The cursor follows mouse and finger and steps from carrier to carrier by keys. */
export function Plot(props: Props) {
  const [attach, size] = useSize();
  return (
    <div className="plot-box" ref={attach}>
      {size && size.width > 120 ? <Drawing {...props} width={size.width} height={size.height} /> : null}
    </div>
  );
}

function Drawing(props: Props & { readonly width: number; readonly height: number }) {
  const { rows, axis, domain, whole, onDomain, cursor, onCursor, onAsk, width, height } = props;
  // Kept by identity, so that a moving cursor does not draw hundreds of carriers anew.
  const y = useMemo(() => levelScale(rows, height), [rows, height]);
  const x = useMemo(() => frequencyScale({ rows, axis, domain, width }), [rows, axis, domain, width]);
  const sky = rows.find((r) => isOnSky(r.hereMHz));
  const ticks =
    axis === "strip"
      ? sky
        ? skyTicks(sky.hereMHz)
        : COAX_TICKS_MHZ
      : x.ticks(Math.max(3, Math.round(width / 100)));

  const drag = useRef<{ x: number; domain: Domain } | null>(null);
  const svg = useRef<SVGSVGElement>(null);
  useWheel(svg, (event) => {
    const about = x.invert(event.clientX - (svg.current?.getBoundingClientRect().left ?? 0));
    onDomain(zoomedDomain(domain, whole, about, event.deltaY < 0 ? 1.25 : 0.8));
  });

  const point = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    if (drag.current && event.pointerType === "mouse") {
      const perPx = (domain[1] - domain[0]) / (width - MARGIN.left - MARGIN.right);
      onDomain(movedDomain(drag.current.domain, whole, (drag.current.x - event.clientX) * perPx));
      return;
    }
    const at = { mhz: x.invert(event.clientX - box.left), dbuv: y.invert(event.clientY - box.top) };
    const row = nearestRow(rows, at);
    if (row) onCursor(row.key);
  };
  const press = (event: KeyboardEvent) => {
    const row = rowForKey(
      event.key,
      rows,
      { key: cursor?.key, domain: axis === "linear" ? domain : whole },
      whole,
    );
    if (row) {
      onCursor(row.key);
      if (axis === "linear") onDomain(domainShowing(domain, whole, row.hereMHz));
    } else if (event.key === "Enter" && cursor) {
      onAsk(cursor);
    } else if (event.key === "+" || event.key === "-") {
      onDomain(
        zoomedDomain(
          domain,
          whole,
          cursor?.hereMHz ?? (domain[0] + domain[1]) / 2,
          event.key === "+" ? 2 : 0.5,
        ),
      );
    } else return;
    event.preventDefault();
  };

  const shown = rows.filter((r) => r.state !== "idle");
  return (
    <div
      className="plot-frame"
      role="slider"
      tabIndex={0}
      aria-label="Spectrum: arrow keys step from carrier to carrier, Enter tells how its level came about, plus and minus zoom"
      aria-valuemin={0}
      aria-valuemax={Math.max(0, shown.length - 1)}
      aria-valuenow={Math.max(
        0,
        shown.findIndex((r) => r.key === cursor?.key),
      )}
      aria-valuetext={cursor ? spoken(cursor) : "no carrier chosen"}
      onKeyDown={press}
    >
      <svg
        ref={svg}
        className="plot"
        width={width}
        height={height}
        aria-hidden="true"
        onPointerDown={(event) => {
          if (event.pointerType === "mouse" && axis === "linear") {
            event.currentTarget.setPointerCapture(event.pointerId);
            drag.current = { x: event.clientX, domain };
          } else point(event);
        }}
        onPointerUp={() => {
          drag.current = null;
        }}
        onPointerMove={point}
      >
        <Axes x={x} y={y} ticks={ticks} width={width} height={height} />
        <Carriers rows={rows} x={x} y={y} width={width} height={height} />
        {cursor ? <Cursor at={x(cursor.hereMHz)} width={width} height={height} /> : null}
      </svg>
    </div>
  );
}

function Cursor({
  at,
  width,
  height,
}: {
  readonly at: number;
  readonly width: number;
  readonly height: number;
}) {
  if (at < MARGIN.left || at > width - MARGIN.right) return null;
  return <line className="cursor" x1={at} x2={at} y1={MARGIN.top} y2={height - MARGIN.bottom} />;
}

function frequencyScale(o: {
  readonly rows: readonly CarrierRow[];
  readonly axis: Props["axis"];
  readonly domain: Domain;
  readonly width: number;
}) {
  const { rows, axis, domain, width } = o;
  const right = width - MARGIN.right;
  if (axis === "linear") return scaleLinear([...domain], [MARGIN.left, right]);
  const sky = rows.find((r) => isOnSky(r.hereMHz));
  const scale = sky ? skyScale(right - MARGIN.left, sky.hereMHz) : coaxScale(right - MARGIN.left);
  return scale.range(scale.range().map((px) => px + MARGIN.left));
}

function rowForKey(
  key: string,
  rows: readonly CarrierRow[],
  start: { readonly key: string | undefined; readonly domain: Domain },
  whole: Domain,
): CarrierRow | undefined {
  switch (key) {
    case "ArrowRight":
      return neighbourRow(rows, start, 1);
    case "ArrowLeft":
      return neighbourRow(rows, start, -1);
    case "Home":
      return neighbourRow(rows, { key: undefined, domain: whole }, 1);
    case "End":
      return neighbourRow(rows, { key: undefined, domain: whole }, -1);
    default:
      return undefined;
  }
}

function spoken(row: CarrierRow): string {
  return `${row.name}, ${row.bandName}, ${megahertz(row.hereMHz)} MHz, ${decimal(row.level)} dBµV, C/N ${decimal(row.cnDb)} dB`;
}

/** React listens to wheels passively; only an own listener can keep the page from scrolling meanwhile. */
function useWheel(
  ref: { readonly current: SVGSVGElement | null },
  onWheel: (event: WheelEvent) => void,
): void {
  const latest = useRef(onWheel);
  useEffect(() => {
    latest.current = onWheel;
  });
  useEffect(() => {
    const element = ref.current;
    const listener = (event: WheelEvent) => {
      // Without a modifier key the wheel scrolls the pane to its table, as everywhere.
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      latest.current(event);
    };
    element?.addEventListener("wheel", listener, { passive: false });
    return () => element?.removeEventListener("wheel", listener);
  }, [ref]);
}
