/** A part of the head, or one that feeds places: as the card of the drawing, in a row on top of a façade, or among cells. */

import { memo, useContext } from "react";
import { wireId } from "../../../design/design.ts";
import { captionOf } from "../../../sentences/planes.ts";
import { useApp } from "../../../store/app.ts";
import { useIsFailingPart, useRecord } from "../../../store/hooks.ts";
import { PartStrip, usePartState } from "../CanvasPart.tsx";
import { NAME_SIZE_PX } from "../frames.ts";
import type { Box } from "../layout.ts";
import { fittingName } from "../lettering.ts";
import { PartFace } from "../PartFace.tsx";
import { PartSymbol } from "../PartSymbol.tsx";
import type { PartState } from "../partState.ts";
import { walkLook } from "../WalkMark.tsx";
import { firstWireOf } from "./firstWire.ts";
import type { HeadRow } from "./headRow.ts";
import { at, ItemButton } from "./ItemButton.tsx";
import { MannerContext } from "./manner.ts";
import { StateMark } from "./StateMark.tsx";
import { StopStrip } from "./StopStrip.tsx";
import {
  BESIDE_HEAD_NAME_PX,
  BESIDE_TALL_NAME_PX,
  HEAD_CARD_PX,
  HEAD_CELL_STRIP,
  HEAD_NAME_LINES,
} from "./sizes.ts";
import type { ShownCard } from "./skeleton.ts";
import { useStepAt } from "./walkSteps.ts";

type Props = { readonly card: ShownCard; readonly box: Box };

function useCardFacts(id: string) {
  const record = useRecord(id);
  const state = usePartState(id, record);
  const isSelected = useApp((s) => s.selection.parts.includes(id));
  const label = record ? record.part.label || record.kind.name : "";
  const stands = state && !state.isQuiet ? `, ${state.word}: ${state.why}` : "";
  // Red is for what fails: a warning has its mark, and no frame.
  const isCulprit = state?.isCulprit === true && state.tone === "danger";
  return { record, state, facts: { sentence: `${label}${stands}`, isSelected, isCulprit } };
}

export const FullCard = memo(function FullCard({ card, box }: Props) {
  const { id, frame } = card;
  const { record, state, facts } = useCardFacts(id);
  const isFailing = useIsFailingPart(id);
  const { pressPart } = useContext(MannerContext);
  const step = useStepAt(id);
  if (!record) return null;
  return (
    <li className="overview-spot" style={at(box)}>
      <ItemButton id={id} look="full-card" facts={facts} onPress={() => pressPart(id)}>
        <PartFace
          id={id}
          label={record.part.label}
          kind={record.kind}
          options={record.options}
          caption={captionOf(record)}
          frame={frame}
          detail="near"
          state={state}
          mark={null}
          isFailing={isFailing}
          selected={facts.isSelected}
          walk={step && walkLook(step)}
          strip={(docked) => <PartStrip record={record} docked={docked} detail="near" />}
        >
          {null}
        </PartFace>
      </ItemButton>
    </li>
  );
});

type HeadProps = Props & { readonly row: HeadRow };

/** On top of a façade: all of it is one thing to press. */
export const HeadCard = memo(function HeadCard({ card, box, row }: HeadProps) {
  const { record, state, facts } = useCardFacts(card.id);
  const { pressPart } = useContext(MannerContext);
  if (!record) return null;
  const widthPx = box.width - (row.isTall ? BESIDE_TALL_NAME_PX : BESIDE_HEAD_NAME_PX);
  return (
    <li className="overview-spot" style={at(box)}>
      <ItemButton id={card.id} look="head-card" facts={facts} onPress={() => pressPart(card.id)}>
        <span
          className={row.isTall ? "head-card-name head-card-tall" : "head-card-name"}
          style={{ height: row.namePx }}
        >
          <PartSymbol name={record.kind.symbol(record.options)} />
          <span className="place-name">
            {fittingName(card.name, HEAD_NAME_LINES, { widthPx, sizePx: NAME_SIZE_PX })}
          </span>
          <HeadMark state={state} />
        </span>
        <span className="head-card-strips">
          {card.frame.strips.slice(0, row.stripsOf(card)).map((docked) => (
            <PartStrip
              key={docked.port}
              record={record}
              docked={{ ...docked, x: 0, y: 0, width: row.stripWidth, height: HEAD_CARD_PX.strip }}
              detail="near"
            />
          ))}
        </span>
      </ItemButton>
    </li>
  );
});

/** Among cells: its name is one thing to press, its strip another. */
export const HeadCell = memo(function HeadCell({ card }: { readonly card: ShownCard }) {
  const { record, state, facts } = useCardFacts(card.id);
  const { pressPart } = useContext(MannerContext);
  if (!record) return null;
  const wire = firstWireOf(record);
  return (
    <li className="head-cell" data-culprit={facts.isCulprit}>
      <ItemButton id={card.id} look="head-cell-name" facts={facts} onPress={() => pressPart(card.id)}>
        <PartSymbol name={record.kind.symbol(record.options)} />
        <span className="place-name">{card.name}</span>
        <HeadMark state={state} />
      </ItemButton>
      {wire && <StopStrip id={card.id} wire={wireId(wire)} detail="line" {...HEAD_CELL_STRIP} />}
    </li>
  );
});

function HeadMark({ state }: { readonly state: PartState | null }) {
  if (!state || state.isQuiet) return null;
  const look = state.tone === "danger" ? "fails" : state.tone === "warn" ? "edge" : "idle";
  return (
    <span className="head-mark">
      <StateMark state={look} />
    </span>
  );
}
