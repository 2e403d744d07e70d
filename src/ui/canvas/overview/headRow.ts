/** The parts of the head in one row on top of a façade, with their strips side by side as far as there is room. */
import { NAME_SIZE_PX } from "../frames.ts";
import type { Box } from "../layout.ts";
import { keepsWords } from "../lettering.ts";
import {
  BESIDE_HEAD_NAME_PX,
  HEAD_CARD_PX,
  HEAD_GAP_PX,
  HEAD_NAME_LINES,
  HEAD_ROW_GAP_PX,
  HEAD_STRIP_GAP_PX,
  HEAD_STRIP_WIDTH_PX,
  MOST_HEAD_STRIPS,
  PLAIN_HEAD_WIDTH_PX,
} from "./sizes.ts";
import type { Link, ShownCard, Skeleton } from "./skeleton.ts";

export type HeadRow = {
  readonly width: number;
  readonly height: number;
  readonly cards: ReadonlyMap<string, Box>;
  /** Room for symbol and name above the strips. */
  readonly namePx: number;
  /** Symbols stand above the names: beside them some name would be cut. */
  readonly isTall: boolean;
  /** Of each strip; 0 where cards have only names. */
  readonly stripWidth: number;
  /** Every card shows all its strips. */
  readonly isWhole: boolean;
  /** Strips shown of each card. */
  readonly stripsOf: (card: ShownCard) => number;
  /** Lines from one card to the next beside it. */
  readonly direct: readonly Link[];
  /** Lines between cards that do not stand side by side. */
  readonly loose: readonly Link[];
};

export function headRow({ cards, heads, links }: Skeleton, width: number): HeadRow {
  const shown = cards.slice(0, heads);
  for (const most of [MOST_HEAD_STRIPS, 1]) {
    const stripsOf = ({ frame }: ShownCard) => Math.min(most, frame.strips.length);
    const strips = shown.reduce((sum, card) => sum + stripsOf(card), 0);
    const plain = shown.filter((card) => stripsOf(card) === 0).length;
    const fixed =
      shown.length * (2 * HEAD_CARD_PX.inset + HEAD_GAP_PX) - HEAD_GAP_PX + plain * PLAIN_HEAD_WIDTH_PX;
    const stripWidth = Math.min(
      HEAD_STRIP_WIDTH_PX.most,
      Math.floor((width - fixed) / Math.max(1, strips) - HEAD_STRIP_GAP_PX),
    );
    if (stripWidth < HEAD_STRIP_WIDTH_PX.least) continue;
    const widthOf = (card: ShownCard) => {
      const n = stripsOf(card);
      return n === 0
        ? PLAIN_HEAD_WIDTH_PX
        : n * (stripWidth + HEAD_STRIP_GAP_PX) - HEAD_STRIP_GAP_PX + 2 * HEAD_CARD_PX.inset;
    };
    const isTall = !shown.every((card) => hasRoomBeside(card, widthOf(card)));
    const namePx = isTall ? HEAD_CARD_PX.tall : HEAD_CARD_PX.name;
    return {
      ...inRows(shown, widthOf, { width, height: namePx + HEAD_CARD_PX.strip, gapPx: HEAD_GAP_PX }),
      namePx,
      isTall,
      stripWidth,
      isWhole: most > 1,
      stripsOf,
      ...linesAmong(shown, links),
    };
  }
  return {
    ...inRows(shown, () => PLAIN_HEAD_WIDTH_PX, {
      width,
      height: HEAD_CARD_PX.name,
      gapPx: HEAD_ROW_GAP_PX,
    }),
    namePx: HEAD_CARD_PX.name,
    isTall: false,
    stripWidth: 0,
    isWhole: false,
    stripsOf: () => 0,
    direct: [],
    loose: [],
  };
}

/** Whether a name stands beside its symbol with all its words. */
function hasRoomBeside({ name }: ShownCard, widthPx: number): boolean {
  const room = { widthPx: widthPx - BESIDE_HEAD_NAME_PX, sizePx: NAME_SIZE_PX };
  return keepsWords(name, HEAD_NAME_LINES, room);
}

/** @param o room for the row, height of a card without its inset, and room from card to card. */
function inRows(
  shown: readonly ShownCard[],
  widthOf: (card: ShownCard) => number,
  o: { readonly width: number; readonly height: number; readonly gapPx: number },
): Pick<HeadRow, "width" | "height" | "cards"> {
  const height = o.height + HEAD_CARD_PX.inset;
  const cards = new Map<string, Box>();
  let x = 0;
  let y = 0;
  for (const card of shown) {
    const width = widthOf(card);
    if (x > 0 && x + width > o.width) {
      x = 0;
      y += height + HEAD_ROW_GAP_PX;
    }
    cards.set(card.id, { x, y, width, height });
    x += width + o.gapPx;
  }
  const right = Math.max(0, ...[...cards.values()].map((box) => box.x + box.width));
  return { width: right, height: shown.length === 0 ? 0 : y + height, cards };
}

function linesAmong(shown: readonly ShownCard[], links: readonly Link[]): Pick<HeadRow, "direct" | "loose"> {
  const place = new Map(shown.map(({ id }, n) => [id, n] as const));
  const own = links.filter((link) => place.has(link.from) && place.has(link.to));
  const isDirect = (link: Link) => place.get(link.to) === (place.get(link.from) ?? 0) + 1;
  return { direct: own.filter(isDirect), loose: own.filter((link) => !isDirect(link)) };
}
