/** A part of the head, or one that feeds places: as the card of the drawing, or in a row on top of a façade. */
import { memo } from "react";
import { useApp } from "../../../store/app.ts";
import { useIsFailingPart, useRecord } from "../../../store/hooks.ts";
import { PartStrip, usePartState } from "../CanvasPart.tsx";
import { NAME_SIZE_PX } from "../frames.ts";
import type { Box } from "../layout.ts";
import { fittingName } from "../lettering.ts";
import { PartFace } from "../PartFace.tsx";
import { PartSymbol } from "../PartSymbol.tsx";
import { HEAD_CARD_PX } from "./headRow.ts";
import { at, ItemButton } from "./ItemButton.tsx";
import type { ShownCard } from "./skeleton.ts";

type Props = { readonly card: ShownCard; readonly box: Box };

/** Symbol, insets and the mark of a card [px]. */
const BESIDE_NAME_PX = 42;

function useCardFacts(id: string) {
  const record = useRecord(id);
  const state = usePartState(id, record);
  const isSelected = useApp((s) => s.selection.parts.includes(id));
  const label = record ? record.part.label || record.kind.name : "";
  const stands = state && !state.isQuiet ? `, ${state.word}: ${state.why}` : "";
  return {
    record,
    state,
    facts: { sentence: `${label}${stands}`, isSelected, isCulprit: state?.isCulprit === true },
  };
}

export const FullCard = memo(function FullCard({ card, box }: Props) {
  const { id, frame } = card;
  const { record, state, facts } = useCardFacts(id);
  const isFailing = useIsFailingPart(id);
  if (!record) return null;
  return (
    <li className="overview-spot" style={at(box)}>
      <ItemButton id={id} parts={[id]} look="full-card" facts={facts}>
        <PartFace
          id={id}
          label={record.part.label}
          kind={record.kind}
          options={record.options}
          frame={frame}
          detail="near"
          state={state}
          mark={null}
          isFailing={isFailing}
          selected={facts.isSelected}
          walk={undefined}
          strip={(docked) => <PartStrip record={record} docked={docked} detail="near" />}
        >
          {null}
        </PartFace>
      </ItemButton>
    </li>
  );
});

type HeadProps = Props & { readonly stripWidth: number; readonly strips: number };

export const HeadCard = memo(function HeadCard({ card, box, stripWidth, strips }: HeadProps) {
  const { id, frame } = card;
  const { record, state, facts } = useCardFacts(id);
  if (!record) return null;
  const room = { widthPx: box.width - BESIDE_NAME_PX, sizePx: NAME_SIZE_PX };
  return (
    <li className="overview-spot" style={at(box)}>
      <ItemButton id={id} parts={[id]} look="head-card" facts={facts}>
        <span className="head-card-name" style={{ height: HEAD_CARD_PX.name }}>
          <PartSymbol name={record.kind.symbol(record.options)} />
          <span className="place-name">{fittingName(record.part.label, 2, room)}</span>
          {state && !state.isQuiet && <span className="head-card-mark" data-tone={state.tone} />}
        </span>
        <span className="head-card-strips">
          {frame.strips.slice(0, strips).map((docked) => (
            <PartStrip
              key={docked.port}
              record={record}
              docked={{ ...docked, x: 0, y: 0, width: stripWidth, height: HEAD_CARD_PX.strip }}
              detail="near"
            />
          ))}
        </span>
      </ItemButton>
    </li>
  );
});
