/** A flat or a room: as a box with a chip for each receiver, as a tile of a façade, or as a small cell. */
import { memo, type ReactNode, useContext } from "react";
import type { PartId } from "../../../design/design.ts";
import type { FedPlace } from "../../../design/feeding/feedingGroups.ts";
import { useApp } from "../../../store/app.ts";
import { useRecord } from "../../../store/hooks.ts";
import { NAME_SIZE_PX } from "../frames.ts";
import type { Box, Size } from "../layout.ts";
import { fittingName } from "../lettering.ts";
import { PartSymbol } from "../PartSymbol.tsx";
import { at, ItemButton } from "./ItemButton.tsx";
import { MannerContext } from "./manner.ts";
import type { PlaceName } from "./names.ts";
import { PlaceStrip } from "./PlaceStrip.tsx";
import { type PlaceFacts, usePlaceFacts, useReceiverFacts } from "./placeFacts.ts";
import { StateMark } from "./StateMark.tsx";
import {
  BESIDE_PLACE_NAME_PX,
  BOX_STRIP_WIDTH_PX,
  BOX_WIDTH_PX,
  type BoxStyle,
  CELL_NAME,
  MOST_SYMBOLS,
  SYMBOL_PX,
  TILE_HEAD_PX,
  TILE_LINE_PX,
} from "./sizes.ts";

type Props = { readonly place: FedPlace; readonly name: PlaceName };

export const PlaceBox = memo(function PlaceBox(
  props: Props & { readonly box: Box; readonly style: BoxStyle },
) {
  const { place, name, box, style } = props;
  const facts = usePlaceFacts(place, name.label);
  const room = { widthPx: BOX_WIDTH_PX - BESIDE_PLACE_NAME_PX, sizePx: NAME_SIZE_PX };
  return (
    <li className="overview-spot" style={at(box)}>
      <PlaceItem place={place} look="place-box" facts={facts}>
        <span className="place-head" style={{ height: style.headPx }}>
          <StateMark state={facts.state} />
          <span className="place-name">{fittingName(name.name, 1, room)}</span>
        </span>
        <PlaceStrip spectrum={facts.spectrum} width={BOX_STRIP_WIDTH_PX} height={style.stripPx} />
        <span className="place-chips">
          {place.receivers.length === 0 ? (
            <span className="place-chip">no receiver</span>
          ) : (
            place.receivers.map((id) => <Chip key={id} id={id} heightPx={style.chipPx - 3} />)
          )}
        </span>
      </PlaceItem>
    </li>
  );
});

function Chip({ id, heightPx }: { readonly id: PartId; readonly heightPx: number }) {
  const record = useRecord(id);
  const { state, figures } = useReceiverFacts(id);
  if (!record) return null;
  return (
    <span className="place-chip" data-state={state} style={{ height: heightPx }} title={record.part.label}>
      <PartSymbol name={record.kind.symbol(record.options)} />
      <span>{figures}</span>
    </span>
  );
}

export const PlaceTile = memo(function PlaceTile(props: Props & { readonly box: Box; readonly strip: Size }) {
  const { place, name, box, strip } = props;
  const facts = usePlaceFacts(place, name.label);
  const symbols = place.receivers.slice(0, MOST_SYMBOLS);
  const room = {
    widthPx: box.width - BESIDE_PLACE_NAME_PX - SYMBOL_PX * symbols.length,
    sizePx: NAME_SIZE_PX,
  };
  return (
    <li className="overview-spot" style={at(box)}>
      <PlaceItem place={place} look="place-tile" facts={facts}>
        <span className="place-head" style={{ height: TILE_HEAD_PX }}>
          <StateMark state={facts.state} />
          <span className="place-name">{fittingName(name.name, 1, room)}</span>
          {symbols.map((id) => (
            <ReceiverSymbol key={id} id={id} />
          ))}
        </span>
        <span className="place-line" style={{ height: TILE_LINE_PX }}>
          <span>{place.cableM > 0 ? `${Math.round(place.cableM)} m` : ""}</span>
          <span className="place-lacking">{facts.lacking}</span>
        </span>
        <PlaceStrip spectrum={facts.spectrum} {...strip} />
      </PlaceItem>
    </li>
  );
});

function ReceiverSymbol({ id }: { readonly id: PartId }) {
  const symbol = useApp((s) => {
    const record = s.evaluation.record(id);
    return record?.kind.symbol(record.options);
  });
  const { state } = useReceiverFacts(id);
  if (!symbol) return null;
  return (
    <span className="place-symbol" data-state={state}>
      <PartSymbol name={symbol} />
    </span>
  );
}

export const PlaceCell = memo(function PlaceCell({ place, name }: Props) {
  const facts = usePlaceFacts(place, name.label);
  const { sentenceOf } = useContext(MannerContext);
  const sentence = sentenceOf({ ...facts, label: name.label });
  const shown = fittingName(name.short, CELL_NAME.lines, CELL_NAME);
  return (
    <PlaceItem
      place={place}
      look="place-cell"
      facts={{ ...facts, sentence }}
      title={shown === name.short ? undefined : name.label}
      isNarrow
    >
      <span className="place-name">{shown}</span>
      <StateMark state={facts.state} />
    </PlaceItem>
  );
});

type ItemProps = {
  readonly place: FedPlace;
  readonly look: string;
  readonly facts: PlaceFacts;
  readonly title?: string | undefined;
  readonly isNarrow?: boolean;
  readonly children: ReactNode;
};

function PlaceItem({ place, ...item }: ItemProps) {
  const { pressPlace } = useContext(MannerContext);
  return <ItemButton id={place.key} onPress={() => pressPlace(place)} {...item} />;
}
