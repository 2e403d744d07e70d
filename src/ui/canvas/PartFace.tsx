/**
 * What a part looks like: a card with symbol, name and docked strips, a pill on its wire, or a tile with a result.
 * Knows nothing of where its facts come from: the editor and the practice plan both draw with it.
 */
import {
  Check,
  CircleAlert,
  CircleDashed,
  type LucideIcon,
  RefreshCcw,
  TriangleAlert,
  X,
  ZapOff,
} from "lucide-react";
import type { ReactNode } from "react";
import type { AnyOptions, PartKind } from "../../parts/contract.ts";
import {
  CARD_NAME_PX,
  type DockedStrip,
  type Frame,
  NAME_SIZE_PX,
  STRIP_PITCH_PX,
  TILE_NAME_PX,
} from "./frames.ts";
import { fittingName } from "./lettering.ts";
import { PartSymbol } from "./PartSymbol.tsx";
import type { PartState } from "./partState.ts";
import type { StripDetail } from "./Strip.tsx";

/** Type size of names, so that they are never below 10 px on the screen, and the lines there are for them [px]. */
const NAME_TYPE: Readonly<
  Record<StripDetail, { sizePx: number; cardPx: number; tilePx: number; lines: number }>
> = {
  close: { sizePx: NAME_SIZE_PX, cardPx: CARD_NAME_PX, tilePx: TILE_NAME_PX, lines: 2 },
  near: { sizePx: NAME_SIZE_PX, cardPx: CARD_NAME_PX, tilePx: TILE_NAME_PX, lines: 2 },
  mid: { sizePx: 16.5, cardPx: CARD_NAME_PX, tilePx: 104, lines: 2 },
  small: { sizePx: 24, cardPx: 132, tilePx: 116, lines: 1 },
};

export type Face = {
  readonly id: string;
  readonly label: string;
  /** What it is called by those who do not see it, unless what it stands in says so. */
  readonly words?: string;
  readonly kind: PartKind;
  readonly options: AnyOptions;
  /** One short line under its name. */
  readonly caption: string;
  readonly frame: Frame;
  readonly detail: StripDetail;
  readonly state: PartState | null;
  /** What a preview does to it, or that it was at fault. */
  readonly mark: string | null;
  /** A failure runs through it. */
  readonly isFailing: boolean;
  readonly selected: boolean;
  /** How it lies on the way that is walked, as words for the style sheet. */
  readonly walk: string | undefined;
  /** Ports, and the number on a way that is walked. */
  readonly children: ReactNode;
  readonly strip: (docked: DockedStrip) => ReactNode;
};

export function PartFace(face: Face) {
  const { id, kind, frame, state, mark, selected, walk } = face;
  const Body = BODIES[frame.look];
  return (
    <div
      className={`node-card ${frame.look}`}
      data-family={kind.family}
      data-selected={selected}
      data-tone={state?.tone}
      data-culprit={state?.isCulprit}
      data-quiet={state?.isQuiet}
      data-failing={face.isFailing}
      data-mark={mark ?? undefined}
      data-walk={walk}
    >
      {face.words !== undefined && (
        <span id={`card-${id}-words`} hidden>
          {face.words}
        </span>
      )}
      <Body {...face} />
      {mark && (
        <span className="node-card-mark" id={`card-${id}-mark`}>
          {mark}
        </span>
      )}
      {face.children}
    </div>
  );
}

const BODIES: Readonly<Record<Frame["look"], (face: Face) => ReactNode>> = {
  card: CardBody,
  pill: PillBody,
  tile: TileBody,
};

function CardBody(face: Face) {
  const { id, kind, options, frame, detail, state } = face;
  const type = NAME_TYPE[detail];
  const name = fittingName(face.label, type.lines, { widthPx: type.cardPx, sizePx: type.sizePx });
  return (
    <>
      <div className="node-card-head">
        {detail !== "small" && <PartSymbol name={kind.symbol(options)} />}
        <Name id={id} name={name} label={face.label} />
      </div>
      {frame.strips.length === 0 && detail !== "small" && (
        <span className="node-card-caption" id={`card-${id}-caption`}>
          {face.caption}
        </span>
      )}
      <DockedStrips {...face} />
      {state && <StateBadge id={id} state={state} />}
    </>
  );
}

function PillBody({ id, label, kind, options, caption, state }: Face) {
  return (
    <>
      <span className="unseen" id={`card-${id}-name`}>
        {label}
      </span>
      <span className="pill-words" id={`card-${id}-caption`} title={`${label}: ${caption}`}>
        {kind.onWire?.(options)}
      </span>
      {state && <StateBadge id={id} state={state} />}
    </>
  );
}

function TileBody(face: Face) {
  const { id, frame, detail, state } = face;
  const type = NAME_TYPE[detail];
  const lines = detail === "small" ? 1 : detail === "mid" ? Math.min(2, frame.nameLines) : frame.nameLines;
  const name = fittingName(face.label, lines, { widthPx: type.tilePx, sizePx: type.sizePx });
  return (
    <>
      <div className="tile-head" style={{ height: frame.height - STRIP_PITCH_PX * frame.strips.length }}>
        {state && (
          <span className="tile-mark" aria-hidden="true">
            <Mark state={state} />
          </span>
        )}
        <span className="tile-words">
          <Name id={id} name={name} label={face.label} />
          {state && (
            <span className="tile-result" id={`card-${id}-state`} title={state.why}>
              <span className="unseen">{state.word}, </span>
              {state.result}
            </span>
          )}
        </span>
      </div>
      <DockedStrips {...face} />
    </>
  );
}

function DockedStrips({ frame, detail, strip }: Face) {
  return frame.strips.map((docked) => {
    const { x: left, y: top, width, height, outputs } = docked;
    return (
      <div key={docked.port} className="docked-strip" style={{ left, top, width, height }}>
        {strip(docked)}
        {outputs > 1 && detail !== "small" && <span className="strip-count">×{outputs}</span>}
      </div>
    );
  });
}

/** What is shown may be shortened; what is read aloud is whole. */
function Name({ id, name, label }: { readonly id: string; readonly name: string; readonly label: string }) {
  return (
    <span className="node-card-name" title={label}>
      <span className="unseen" id={`card-${id}-name`}>
        {label}
      </span>
      <span aria-hidden="true">{name}</span>
    </span>
  );
}

function StateBadge({ id, state }: { readonly id: string; readonly state: PartState }) {
  if (state.isQuiet)
    return (
      <span className="unseen" id={`card-${id}-state`}>
        {state.word}
      </span>
    );
  return (
    <span className="node-card-state" data-tone={state.tone} title={`${state.word}: ${state.why}`}>
      <Mark state={state} />
      <span className="unseen" id={`card-${id}-state`}>
        {state.word}
      </span>
    </span>
  );
}

const MARKS: Readonly<Record<PartState["mark"], LucideIcon>> = {
  tick: Check,
  edge: TriangleAlert,
  idle: CircleDashed,
  cross: X,
  bolt: ZapOff,
  loop: RefreshCcw,
  alert: CircleAlert,
};

function Mark({ state }: { readonly state: PartState }) {
  const Icon = MARKS[state.mark];
  return <Icon strokeWidth={3} aria-hidden="true" />;
}
