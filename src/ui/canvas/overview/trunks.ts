/** The lines of a façade: from card to card of the head, and down to the frames, past those above at the side. */
import type { Box, Point } from "../layout.ts";
import type { PlacedFrame } from "./facadeLayout.ts";
import type { HeadRow } from "./headRow.ts";
import { HEAD_CARD_PX, HEAD_STRIP_GAP_PX, TRUNK_CLEAR_PX, TRUNK_PITCH_PX } from "./sizes.ts";
import type { Link, Skeleton } from "./skeleton.ts";

export type Trunk = { readonly link: Link; readonly points: readonly Point[] };

type Placed = {
  readonly head: HeadRow;
  readonly frames: readonly PlacedFrame[];
  /** Lines into feeders. */
  readonly into: readonly Link[];
  /** Where the run beside the frames begins. */
  readonly right: number;
};

export function trunksOf(skeleton: Skeleton, { head, frames, into, right }: Placed): readonly Trunk[] {
  const frameOf = new Map<string, PlacedFrame>();
  for (const frame of frames) {
    const { feeder } = frame.group;
    if (feeder !== undefined && !frameOf.has(feeder)) frameOf.set(feeder, frame);
  }
  const firstTop = frames[0]?.box.y ?? 0;
  let headLane = 0;
  let sideLane = 0;
  const entries = new Map<string, number>();
  const entry = (feeder: string) => {
    const n = entries.get(feeder) ?? 0;
    entries.set(feeder, n + 1);
    return n;
  };
  const nextHeadLane = () => head.height + TRUNK_CLEAR_PX + headLane++ * TRUNK_PITCH_PX;
  const lines: Trunk[] = head.direct.flatMap((link) => {
    const [from, to] = [head.cards.get(link.from), head.cards.get(link.to)];
    if (!from || !to || from.y !== to.y) return [];
    const mates = head.direct.filter((other) => other.from === link.from && other.to === link.to);
    const step = TRUNK_PITCH_PX * (mates.indexOf(link) - (mates.length - 1) / 2);
    const y = from.y + head.namePx + HEAD_CARD_PX.strip / 2 + step;
    return [
      {
        link,
        points: [
          { x: from.x + from.width, y },
          { x: to.x, y },
        ],
      },
    ];
  });
  for (const link of head.loose) {
    const [from, to] = [head.cards.get(link.from), head.cards.get(link.to)];
    if (!from || !to) continue;
    const x0 = leaves(skeleton, head, link, from);
    const x1 = to.x + 16 + 10 * entry(link.to);
    const y = nextHeadLane();
    lines.push({
      link,
      points: [
        { x: x0, y: from.y + from.height },
        { x: x0, y },
        { x: x1, y },
        { x: x1, y: to.y + to.height },
      ],
    });
  }
  for (const link of into) {
    const target = frameOf.get(link.to);
    if (!target || head.stripWidth === 0) continue;
    const { box } = target;
    const card = head.cards.get(link.from);
    const x0 = card && leaves(skeleton, head, link, card);
    const bottom = card ? card.y + card.height : 0;
    if (x0 !== undefined && box.y === firstTop && x0 > box.x + 8 && x0 < box.x + box.width - 8) {
      lines.push({
        link,
        points: [
          { x: x0, y: bottom },
          { x: x0, y: box.y },
        ],
      });
      continue;
    }
    const above = frameOf.get(link.from)?.box;
    if (x0 === undefined && !above) continue;
    const n = entry(link.to);
    const side = right + sideLane++ * TRUNK_PITCH_PX;
    const start: readonly Point[] =
      x0 !== undefined
        ? downTo(x0, bottom, nextHeadLane(), side)
        : above
          ? [
              { x: above.x + above.width, y: above.y + TRUNK_CLEAR_PX + n * TRUNK_PITCH_PX },
              { x: side, y: above.y + TRUNK_CLEAR_PX + n * TRUNK_PITCH_PX },
            ]
          : [];
    const isLast = !frames.some((f) => f.box.y === box.y && f.box.x > box.x);
    const y = isLast
      ? box.y + TRUNK_CLEAR_PX + n * TRUNK_PITCH_PX
      : box.y - TRUNK_CLEAR_PX - n * TRUNK_PITCH_PX;
    const x1 = isLast ? box.x + box.width : box.x + box.width - 16 - n * 8;
    lines.push({
      link,
      points: [...start, { x: side, y }, { x: x1, y }, ...(isLast ? [] : [{ x: x1, y: box.y }])],
    });
  }
  return lines;
}

function downTo(x: number, from: number, lane: number, side: number): readonly Point[] {
  return [
    { x, y: from },
    { x, y: lane },
    { x: side, y: lane },
  ];
}

/** Below the strip of the output that a line leaves by; the outputs that share a strip lie side by side. */
function leaves({ cards, links }: Skeleton, head: HeadRow, link: Link, box: Box): number {
  const card = cards.find((c) => c.id === link.from);
  const strips = card?.frame.strips ?? [];
  const shown = card ? head.stripsOf(card) : 0;
  const own = strips.findIndex((strip) => strip.port === link.fromPort);
  const mates = links.filter((other) => other.from === link.from);
  const step = 8 * (mates.indexOf(link) - (mates.length - 1) / 2);
  if (shown > 1 && own >= 0 && own < shown && mates.length <= strips.length)
    return box.x + HEAD_CARD_PX.inset + (own + 0.5) * (head.stripWidth + HEAD_STRIP_GAP_PX);
  return box.x + box.width / 2 + step;
}
