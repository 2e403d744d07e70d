import { X } from "lucide-react";
import { useMemo } from "react";
import type { ToldWay } from "../../../sentences/walk/signal.ts";
import { useApp } from "../../../store/app.ts";
import { useSize } from "../../kit/useSize.ts";
import { endWords } from "../origin/endWords.ts";
import { LevelDiagram, type WalkMarks } from "../origin/LevelDiagram.tsx";
import { StepTable } from "../origin/StepTable.tsx";
import { CarrierChoice } from "./CarrierChoice.tsx";
import { dashOf } from "./dashes.ts";
import { goToStop } from "./steps.ts";
import type { ShownSignal } from "./walk.ts";
import { wayOrigin } from "./wayOrigin.ts";

/** The level diagram of the carrier that is followed, others beside it, and every step in figures. */
export function SignalBody({ shown }: { readonly shown: ShownSignal }) {
  const { way, ways } = shown;
  return (
    <div className="origin-body">
      <div className="walk-carriers">
        {ways.length === 0 ? (
          <p>No source sends such carriers, so there is nothing to walk.</p>
        ) : (
          <CarrierChoice shown={shown} />
        )}
      </div>
      {way ? <Way way={way} shown={shown} /> : null}
    </div>
  );
}

/** How it ends, and which switches have a say. */
function WayWords({ way, shown }: { readonly way: ToldWay; readonly shown: ShownSignal }) {
  const evaluation = useApp((s) => s.evaluation);
  const { route, walking } = shown;
  const found = useMemo(() => wayOrigin(evaluation, way, route, walking), [evaluation, way, route, walking]);
  const [, ...lines] = way.lines;
  return (
    <div className="origin-words">
      {route.trouble ? (
        <p className={route.trouble.kind === "lost" ? "state bad" : "state"}>
          <X size={16} aria-hidden />
          {route.trouble.words}
        </p>
      ) : null}
      {lines.slice(0, way.needs.length).map((line) => (
        <p key={line}>{line}</p>
      ))}
      {way.end ? endWords(found).map((sentence) => <p key={sentence}>{sentence}</p>) : null}
    </div>
  );
}

function Way({ way, shown }: { readonly way: ToldWay; readonly shown: ShownSignal }) {
  const evaluation = useApp((s) => s.evaluation);
  const [attach, size] = useSize();
  const { route, walking, ways, stop } = shown;
  const found = useMemo(() => wayOrigin(evaluation, way, route, walking), [evaluation, way, route, walking]);
  const others = useMemo(() => comparableCarriers(way, ways, route.stops.length), [way, ways, route]);
  if (found.steps.length === 0) return null;
  const walked: WalkMarks = { stop, trouble: route.trouble, onStop: goToStop, others };
  return (
    <>
      <div className="origin-figure">
        <div className="origin-plot" ref={attach}>
          {size && size.width > 120 ? (
            <LevelDiagram answer={found} width={size.width} height={size.height} walked={walked} />
          ) : null}
        </div>
        <p className="origin-legend small" aria-hidden="true">
          <span className="key level">level</span>
          <span className="key noise">noise</span>
          {found.steps.some((s) => Number.isFinite(s.ciDb)) ? (
            <span className="key interference">interference</span>
          ) : null}
          {found.steps.some((s) => s.within) ? (
            <span className="key allowed">levels that end within the limits</span>
          ) : null}
        </p>
      </div>
      <div className="origin-steps">
        <StepTable answer={found} walked={walked} />
      </div>
      <WayWords way={way} shown={shown} />
      <details className="walk-lines">
        <summary>The way in sentences</summary>
        <ol>
          {way.lines.map((line, n) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a sentence is its place in the text.
            <li key={n}>{line}</li>
          ))}
        </ol>
      </details>
    </>
  );
}

/**
 * Levels of the other carriers that pass the same parts; those on other ways cannot share the diagram.
 * A receiver as the last of so many stops has the level that arrives.
 */
export function comparableCarriers(
  way: ToldWay,
  ways: readonly ToldWay[],
  stops: number,
): WalkMarks["others"] {
  const parts = way.steps.map((s) => s.part).join("|");
  return ways.flatMap((other, n) =>
    other !== way && other.steps.map((s) => s.part).join("|") === parts
      ? [{ name: other.name, dash: dashOf(n), levels: levelsOf(other, stops) }]
      : [],
  );
}

function levelsOf({ steps, end }: ToldWay, stops: number): readonly number[] {
  const levels = steps.map((s) => s.levelDbuv);
  return end && levels.length < stops ? [...levels, end.levelDbuv] : levels;
}
