/**
 * Where parts go when a design is laid out from the roof to the sockets: in columns that are as far apart as the wires
 * between them need, so that the whole can be shown as large as possible.
 */
import type { ELK } from "elkjs/lib/elk-api.js";
import type { Design, Part } from "../../design/design.ts";
import { boxOf } from "./boxes.ts";
import { frameOf } from "./frames.ts";
import { type Chosen, type Layered, type Layering, layered, ROW_GAP_PX } from "./layers.ts";
import { type Box, boundsOf, GRID_PX, overlaps, type Size } from "./layout.ts";
import { freeBelow, snapped } from "./rooms.ts";

export type Places = ReadonlyMap<string, readonly [x: number, y: number]>;

/** Room between columns without and with wires that bend there, and for each of these [px]. */
const GAP_PX = 16;
const CARD_GAP_PX = 24;
const LANE_PX = 7;
/** Room between groups that no wire joins [px]. */
const GROUP_GAP_PX = 4 * GRID_PX;

/** About the shape of the canvas beside the verdict: what fills it well is shown large. */
const PANE: Size = { width: 1064, height: 788 };
/** How much larger a drawing must come out that has its receivers here and there instead of in one column. */
const WORTH_IT = 1.08;
/** Above this number of parts one way of laying out is all there is time for. */
const MOST_TRIED = 300;

/** New places for all parts, from (0, 0) on. */
export async function arranged(design: Design, elk: Pick<ELK, "layout">): Promise<Places> {
  return (await bestDrawn({ design, parts: design.parts }, elk)).places;
}

/** New places for some parts, beginning where they begin now, or as little away from there as the others allow. */
export async function arrangedAmong(
  design: Design,
  ids: ReadonlySet<string>,
  elk: Pick<ELK, "layout">,
): Promise<Places> {
  const parts = design.parts.filter((p) => ids.has(p.id));
  const { places } = await bestDrawn({ design, parts }, elk);
  const now = boundsOf(parts.map((p) => boxOf(design, p)));
  const others = design.parts.filter((p) => !ids.has(p.id)).map((p) => boxOf(design, p));
  const boxes = parts.map((p) => {
    const [x, y] = places.get(p.id) ?? p.at;
    return { ...boxOf(design, p), x: x + snapped(now?.x ?? 0), y: y + snapped(now?.y ?? 0) };
  });
  const aside = freeShift(boxes, others);
  return new Map(parts.map((p, i) => [p.id, [boxes[i]?.x ?? 0, (boxes[i]?.y ?? 0) + aside] as const]));
}

/**
 * New places for all parts but some, which stay where they were put: the others come to lie as they would in an
 * arrangement of the whole, drawn to the kept ones, and below whatever is in their way.
 */
export async function arrangedAround(
  design: Design,
  kept: ReadonlySet<string>,
  elk: Pick<ELK, "layout">,
): Promise<Places> {
  const whole = await arranged(design, elk);
  const stays = design.parts.filter((p) => kept.has(p.id));
  const [right, down] = ([0, 1] as const).map((axis) =>
    middleOf(stays.map((p) => p.at[axis] - (whole.get(p.id)?.[axis] ?? 0))),
  );
  const taken = stays.map((p) => boxOf(design, p));
  const places = new Map<string, readonly [number, number]>();
  const wanted = design.parts
    .filter((p) => !kept.has(p.id))
    .map((p) => {
      const [x, y] = whole.get(p.id) ?? p.at;
      return { id: p.id, box: { ...boxOf(design, p), x: x + (right ?? 0), y: y + (down ?? 0) } };
    })
    .sort((a, b) => a.box.y - b.box.y || a.box.x - b.box.x);
  for (const { id, box } of wanted) {
    const y = freeBelow(taken, box);
    taken.push({ ...box, y });
    places.set(id, [box.x, y]);
  }
  return places;
}

function middleOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

/** How far up or down, whichever is less, until none of the boxes lies on one of the others [px]. */
function freeShift(boxes: readonly Box[], others: readonly Box[]): number {
  const [down, up] = [1, -1].map((way) => {
    let shift = 0;
    for (;;) {
      const steps = boxes.flatMap((b) =>
        others
          .filter((o) => overlaps(withAir({ ...b, y: b.y + shift }), o))
          .map((o) => (way > 0 ? o.y + o.height + ROW_GAP_PX - b.y : o.y - ROW_GAP_PX - b.height - b.y)),
      );
      if (steps.length === 0) return shift;
      shift = way > 0 ? onGridAbove(Math.max(...steps)) : -onGridAbove(-Math.min(...steps));
    }
  });
  return Math.abs(down ?? 0) <= Math.abs(up ?? 0) ? (down ?? 0) : (up ?? 0);
}

const withAir = (b: Box): Box => ({
  x: b.x - GRID_PX,
  y: b.y - GRID_PX,
  width: b.width + 2 * GRID_PX,
  height: b.height + 2 * GRID_PX,
});
const onGridAbove = (px: number) => Math.ceil(px / GRID_PX) * GRID_PX;

async function bestDrawn(chosen: Chosen, elk: Pick<ELK, "layout">): Promise<Drawn> {
  const { parts } = chosen;
  if (parts.length === 0) return { places: new Map(), width: 0, height: 0 };
  if (parts.length > MOST_TRIED) return drawn(chosen, "near", elk);
  const [last, near] = [await drawn(chosen, "receivers-last", elk), await drawn(chosen, "near", elk)];
  return zoomOf(near) > WORTH_IT * zoomOf(last) ? near : last;
}

type Drawn = Size & { readonly places: Places };

const zoomOf = ({ width, height }: Size) => Math.min(PANE.width / width, PANE.height / height);

async function drawn(chosen: Chosen, layering: Layering, elk: Pick<ELK, "layout">): Promise<Drawn> {
  const { design } = chosen;
  const parts = new Map(chosen.parts.map((p) => [p.id, p]));
  const groups = await layered(chosen, layering, elk);
  const joined = groups.filter((g) => g.places.size > 1);
  const alone = groups.filter((g) => g.places.size === 1).flatMap((g) => [...g.places.keys()]);
  // One below the other, or in two sheets and more beside each other: whatever comes out larger.
  const tries = [1, 2, 3].map((sheets) => sideBySide(design, shares(joined, sheets), parts));
  const best = tries.reduce((a, b) => (zoomOf(b) > zoomOf(a) ? b : a));
  return withLone(
    design,
    alone.flatMap((id) => parts.get(id) ?? []),
    best,
  );
}

/** Cut into parts of about equal height, in order. */
function shares(groups: readonly Layered[], count: number): readonly (readonly Layered[])[] {
  const whole = groups.reduce((sum, g) => sum + g.height + GROUP_GAP_PX, 0);
  const sheets: Layered[][] = Array.from({ length: count }, () => []);
  let above = 0;
  for (const group of groups) {
    const middle = above + group.height / 2;
    sheets[Math.min(count - 1, Math.floor((middle / whole) * count))]?.push(group);
    above += group.height + GROUP_GAP_PX;
  }
  return sheets.filter((sheet) => sheet.length > 0);
}

function sideBySide(
  design: Design,
  sheets: readonly (readonly Layered[])[],
  parts: ReadonlyMap<string, Part>,
): Drawn {
  const places = new Map<string, readonly [number, number]>();
  let left = 0;
  let height = 0;
  for (const sheet of sheets) {
    const each = stacked(design, sheet, parts);
    for (const [id, [x, y]] of each.places) places.set(id, [left + x, y]);
    left += each.width + GROUP_GAP_PX;
    height = Math.max(height, each.height);
  }
  return { places, width: Math.max(0, left - GROUP_GAP_PX), height };
}

/** Groups one below the other. They share their columns, counted from the last, so that receivers stand in one. */
function stacked(design: Design, groups: readonly Layered[], parts: ReadonlyMap<string, Part>): Drawn {
  const count = Math.max(...groups.map((g) => g.columns));
  const columns: { part: Part; y: number }[][] = Array.from({ length: count }, () => []);
  const lanes: number[] = Array.from({ length: count }, () => 0);
  let top = 0;
  for (const group of groups) {
    const first = count - group.columns;
    for (const [id, { column, y }] of group.places) {
      const part = parts.get(id);
      if (part) columns[first + column]?.push({ part, y: top + y });
    }
    group.lanes.forEach((n, i) => {
      lanes[first + i] = Math.max(lanes[first + i] ?? 0, n);
    });
    top += group.height + GROUP_GAP_PX;
  }
  const places = new Map<string, readonly [number, number]>();
  let left = 0;
  let right = 0;
  columns.forEach((column, i) => {
    const frames = column.map(({ part }) => frameOf(design, part));
    const width = Math.max(...frames.map((f) => f.width));
    column.forEach(({ part, y }, n) => {
      const frame = frames[n];
      // A pill stands close to what its cable feeds.
      const indent = frame?.look === "pill" ? width - frame.width : 0;
      places.set(part.id, [left + indent, y]);
    });
    right = left + width;
    left =
      right +
      gapBehind(
        lanes[i] ?? 0,
        frames.some((f) => f.look !== "pill"),
      );
  });
  return { places, width: right, height: top - GROUP_GAP_PX };
}

function gapBehind(lanes: number, isBehindCards: boolean): number {
  const needed = Math.max(GAP_PX + LANE_PX * lanes, isBehindCards ? CARD_GAP_PX : GAP_PX);
  return onGridAbove(needed);
}

/** What no wire joins yet stands in rows below the rest. */
function withLone(design: Design, lone: readonly Part[], rest: Drawn): Drawn {
  if (lone.length === 0) return rest;
  const frames = lone.map((part) => frameOf(design, part));
  const area = frames.reduce((sum, f) => sum + (f.width + ROW_GAP_PX) * (f.height + ROW_GAP_PX), 0);
  const width = Math.max(rest.width, Math.sqrt((area * PANE.width) / PANE.height));
  const places = new Map(rest.places);
  let [x, y, rowHeight, right] = [0, rest.height > 0 ? rest.height + GROUP_GAP_PX : 0, 0, rest.width];
  lone.forEach((part, i) => {
    const { width: own = 0, height = 0 } = frames[i] ?? {};
    if (x > 0 && x + own > width) {
      x = 0;
      y += rowHeight + ROW_GAP_PX;
      rowHeight = 0;
    }
    places.set(part.id, [x, y]);
    right = Math.max(right, x + own);
    x += own + ROW_GAP_PX;
    rowHeight = Math.max(rowHeight, height);
  });
  return { places, width: right, height: y + rowHeight };
}
