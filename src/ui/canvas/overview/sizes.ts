/** Sizes and thresholds of the overview, all of them: px at scale 1, where nothing else is said. */
import type { Size } from "../layout.ts";

// Which level has room

/** Names of 12.5 px are 11 px on the screen. */
export const LEAST_SCALE = 0.88;
export const MOST_SCALE = 1.6;
export const SCALE_STEP = 0.04;
/** Strips of places are at least that large on the screen. */
export const LEAST_STRIP: Size = { width: 108, height: 38 };
/** What a strip and a scale are measured by when several ways of a façade fit. */
export const GOOD_STRIP: Size = { width: 136, height: 58 };
export const GOOD_HEAD_STRIP_PX = 104;
/** With more places than this, a column of boxes fits no pane. */
export const MOST_BOXES = 60;
export const MARGIN_PX = 10;
/** The bar with buttons, in the lower left corner of the screen. */
export const BAR: Size = { width: 340, height: 52 };
/** Zooming out below this leads to the overview, if not sooner. */
export const LEAST_DRAWING_ZOOM = 0.62;
/** Narrower or lower panes show the drawing alone: a phone has views of its own. */
export const LEAST_PANE: Size = { width: 600, height: 320 };

// Boxes

/** How roomy boxes are. */
export type BoxStyle = {
  readonly headPx: number;
  readonly stripPx: number;
  readonly chipPx: number;
  readonly gapPx: number;
};

export const BOX_STYLES: readonly BoxStyle[] = [
  { headPx: 27, stripPx: 60, chipPx: 26, gapPx: 12 },
  { headPx: 22, stripPx: 52, chipPx: 22, gapPx: 7 },
];
export const BOX_WIDTH_PX = 152;
export const BOX_STRIP_WIDTH_PX = 144;
export const BOX_INSET_PX = 4;
export const CHIPS_PER_ROW = 2;
/** Mark, inset and gaps beside the name of a box or tile. */
export const BESIDE_PLACE_NAME_PX = 34;
export const GROUP_GAP_PX = 6;
/** Between two places on one riser: the line and the length on it. */
export const RISER_GAP_PX = 30;
export const LENGTH_PILL: Size = { width: 50, height: 20 };

// Lines between columns of boxes

/** Beside a card, and between lines that run side by side. */
export const LINE_CLEAR_PX = 13;
export const LINE_PITCH_PX = 7;
export const ITEM_GAP_PX = 14;
/** Row that a line on its way through a column keeps free. */
export const PASSING_PX = 10;
/** Lines nearer than this run straight on. */
export const STRAIGHT_PX = 1;
/** Room between the ends of two stretches in one lane. */
export const END_GAP_PX = 6;

// Façade

export const TILE_GAP_PX = 6;
export const FRAME_INSET_PX = 8;
export const FRAME_GAP_PX = 14;
export const HEADING_PX = 30;
/** Symbol, mark, insets and gaps beside the two texts of a heading. */
export const BESIDE_HEADING_PX = 88;
export const HEADING_SIZE_PX = 13;
export const TILE_HEAD_PX = 22;
export const TILE_LINE_PX = 15;
export const TILE_INSET_PX = 4;
/** Symbols of receivers in the head of a tile; of more, only those that fail would be told apart. */
export const MOST_SYMBOLS = 3;
export const SYMBOL_PX = 24;
/** A tile is at least that wide. */
export const LEAST_TILE_PX = 100;
export const MOST_STRIP_WIDTH_PX = 230;
/** A strip is no higher than this share of its width. */
export const MOST_STRIP_SHARE = 0.75;
/** Between the head and the first frames, and beside the frames, for the lines and for each of them. */
export const RUN_PX = 14;
export const TRUNK_PITCH_PX = 5;
/** Between the edge of a card or frame and the first line along it. */
export const TRUNK_CLEAR_PX = 7;

// Head of a façade

/** Of a card in it; `tall` with the symbol above the name. */
export const HEAD_CARD_PX = { name: 32, tall: 50, strip: 48, inset: 4 } as const;
export const HEAD_STRIP_WIDTH_PX = { most: 132, least: 84 } as const;
export const HEAD_STRIP_GAP_PX = 2;
/** Shown of a card with several, where there is room. */
export const MOST_HEAD_STRIPS = 5;
/** A card without strips. */
export const PLAIN_HEAD_WIDTH_PX = 132;
/** Symbol, insets and mark beside the name of a card; insets and mark alone where the symbol stands above it. */
export const BESIDE_HEAD_NAME_PX = 47;
export const BESIDE_TALL_NAME_PX = 12;
export const HEAD_NAME_LINES = 2;
export const HEAD_GAP_PX = 20;
export const HEAD_ROW_GAP_PX = 8;

// Cells, on the screen

/** Names up to this length stand in narrow cells. */
export const SHORT_NAME = 4;
/** Of other cells, the room for a name, in two lines at most. */
export const CELL_NAME = { lines: 2, widthPx: 100, sizePx: 14 } as const;
/** More cards of the head than this come after the places: these must be in view at once. */
export const MOST_HEADS_FIRST = 9;
export const HEAD_CELL_STRIP: Size = { width: 96, height: 36 };
/** Groups of so few places stand side by side, each at least so wide. */
export const MOST_SMALL_CELLS = 6;
export const SMALL_GROUP_PX = 330;
export const GROUPS_GAP_PX = 14;
/** From this width on, the strip of a group stands beside its heading. */
export const WIDE_GROUP_PX = 560;
export const GROUP_STRIP = { besidePx: 240, lowPx: 52, highPx: 60 } as const;
/** Frame and inset of a group on both sides. */
export const GROUP_INSET_PX = 15;
