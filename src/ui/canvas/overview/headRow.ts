/** The parts of the head in one row on top of a façade, with their strips side by side as far as there is room. */
import type { Box } from "../layout.ts";
import type { Link, ShownCard, Skeleton } from "./skeleton.ts";

export const HEAD_CARD_PX = { name: 32, strip: 48, inset: 4 } as const;
const STRIP_WIDTH_PX = { most: 132, least: 84 } as const;
const STRIP_GAP_PX = 2;
/** A card without strips, and the least one with a name. */
const PLAIN_WIDTH_PX = 132;
const LEAST_WIDTH_PX = 92;
const CARD_GAP_PX = 20;
const ROW_GAP_PX = 8;

export type HeadRow = {
  readonly width: number;
  readonly height: number;
  readonly cards: ReadonlyMap<string, Box>;
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
  for (const most of [5, 1]) {
    const stripsOf = ({ frame }: ShownCard) => Math.min(most, frame.strips.length);
    const strips = shown.reduce((sum, card) => sum + stripsOf(card), 0);
    const plain = shown.filter((card) => stripsOf(card) === 0).length;
    const fixed =
      shown.length * (2 * HEAD_CARD_PX.inset + CARD_GAP_PX) - CARD_GAP_PX + plain * PLAIN_WIDTH_PX;
    const stripWidth = Math.min(
      STRIP_WIDTH_PX.most,
      Math.floor((width - fixed) / Math.max(1, strips) - STRIP_GAP_PX),
    );
    if (stripWidth < STRIP_WIDTH_PX.least) continue;
    const widthOf = (card: ShownCard) => {
      const n = stripsOf(card);
      return n === 0
        ? PLAIN_WIDTH_PX
        : n * (stripWidth + STRIP_GAP_PX) - STRIP_GAP_PX + 2 * HEAD_CARD_PX.inset;
    };
    return {
      ...inRows(shown, widthOf, width, true),
      stripWidth,
      isWhole: most > 1,
      stripsOf,
      ...linesAmong(shown, links),
    };
  }
  return {
    ...inRows(shown, () => LEAST_WIDTH_PX + 40, width, false),
    stripWidth: 0,
    isWhole: false,
    stripsOf: () => 0,
    direct: [],
    loose: [],
  };
}

function inRows(
  shown: readonly ShownCard[],
  widthOf: (card: ShownCard) => number,
  room: number,
  hasStrips: boolean,
): Pick<HeadRow, "width" | "height" | "cards"> {
  const height = HEAD_CARD_PX.name + (hasStrips ? HEAD_CARD_PX.strip : 0) + HEAD_CARD_PX.inset;
  const cards = new Map<string, Box>();
  let x = 0;
  let y = 0;
  for (const card of shown) {
    const width = widthOf(card);
    if (x > 0 && x + width > room) {
      x = 0;
      y += height + ROW_GAP_PX;
    }
    cards.set(card.id, { x, y, width, height });
    x += width + (hasStrips ? CARD_GAP_PX : ROW_GAP_PX);
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
