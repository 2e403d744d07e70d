/**
 * What a wire looks like. Knows nothing of where its facts come from: the editor and the practice plan both draw with
 * it.
 */
import type { ReactNode } from "react";
import type { Medium } from "../../parts/contract.ts";
import type { WireSummary } from "./wireSummary.ts";

/** What is on a wire, as far as its line tells. */
type Carried = WireSummary & { readonly isFailing: boolean };

type Props = {
  readonly id: string;
  /** What it is called, aloud and under the pointer. */
  readonly words: string;
  readonly path: string;
  readonly medium: Medium;
  readonly selected: boolean;
  /** Left out, the line tells nothing of it. */
  readonly carried?: Carried;
  /** A part that is dragged would go into it. */
  readonly isDropTarget?: boolean;
  /** It lies on the way that is walked. */
  readonly isLit?: boolean;
  /** What stands on it. */
  readonly children?: ReactNode;
};

export function WireFace(props: Props) {
  const { id, words, path, medium, selected, carried, isDropTarget, isLit, children } = props;
  return (
    <g
      className="wire"
      data-medium={medium}
      data-worst={carried?.worst}
      data-failing={carried?.isFailing}
      data-selected={selected}
      data-drop={isDropTarget}
      data-walk={isLit}
      data-silent={carried && carried.colour === null}
    >
      <title id={`wire-${id}-words`}>{words}</title>
      {isLit && <path className="wire-lit" d={path} />}
      {carried?.isFailing && <path className="wire-halo" d={path} />}
      <path className="wire-reach" d={path} />
      <path className="wire-line" d={path} style={lineStyle(carried)} />
      {children}
    </g>
  );
}

/** Red and the colours of selection come from the style sheet and must not be painted over. */
function lineStyle(carried: Carried | undefined) {
  if (!carried || carried.isFailing || carried.colour === null) return {};
  return { "--carried": carried.colour } as React.CSSProperties;
}
