/**
 * Wires that change places: one arrives at the height at which another leaves. Its last stretch then lies on the first
 * of the other, unless it turns only behind the place where the other has turned. Where both do that to each other, no
 * order helps: one of them steps over in two, out before the other turns and in behind it.
 */
import type { BoxIndex } from "./boxIndex.ts";
import type { Point } from "./layout.ts";
import { bentNearInput, isLevelFree, STUB_PX, type Way } from "./way.ts";

/** Heights nearer to each other than this lie on each other [px]. */
const SAME_PX = 4;

/** Stretches no further apart than this stand in one gap between cards [px]. */
const ONE_GAP_PX = 24;

/** How far beside another wire one runs that has no other place [px]. */
const BESIDE_PX = 12;

type Wire = { readonly from: Point; readonly to: Point; way: Way };

/** Changes the ways of wires with one upright stretch that would lie on another such wire. */
export function avoidLyingOn(wires: readonly Wire[], boxes: BoxIndex): void {
  const leaving = new Map<number, Wire[]>();
  for (const wire of wires) {
    const key = Math.round(wire.from.y / SAME_PX);
    leaving.set(key, [...(leaving.get(key) ?? []), wire]);
  }
  for (const wire of wires) {
    if (!isBent(wire)) continue;
    const key = Math.round(wire.to.y / SAME_PX);
    const near = [key - 1, key, key + 1].flatMap((k) => leaving.get(k) ?? []);
    const other = near.find((each) => each !== wire && isBent(each) && liesOn(wire, each));
    if (!other) continue;
    wire.way = isAt(other.to, wire.from)
      ? inTwoSteps(wire, other)
      : (turnedLate(wire, other, boxes) ?? ledBeside(wire, other, boxes) ?? wire.way);
  }
}

const isBent = ({ way }: Wire) => way.uprights.length === 1;
const isAt = (a: Point, b: Point) => Math.abs(a.y - b.y) < SAME_PX;
const turnOf = ({ way }: Wire) => way.uprights[0] ?? 0;

/** Whether the last stretch of a wire and the first one of another share a height and may share a place. */
function liesOn(wire: Wire, other: Wire): boolean {
  return isAt(wire.to, other.from) && wire.to.x > other.from.x && turnOf(wire) <= turnOf(other);
}

/** Two upright stretches as far apart as the ends of both wires leave room for. */
function inTwoSteps({ from, to, way }: Wire, other: Wire): Way {
  const low = Math.max(from.x, other.from.x) + STUB_PX;
  const high = Math.min(to.x, other.to.x) - STUB_PX;
  return low < high ? { uprights: [low, high], levels: [from.y, (from.y + to.y) / 2, to.y] } : way;
}

/** The way that turns next to its input, if that is where the other turns: lanes then put it behind. */
function turnedLate({ from, to }: Wire, other: Wire, boxes: BoxIndex): Way | undefined {
  const late = bentNearInput(from, to, boxes);
  return late && (late.uprights[0] ?? 0) >= turnOf(other) - ONE_GAP_PX ? late : undefined;
}

/** The way that runs a little below or above the other one until that has turned. */
function ledBeside(wire: Wire, other: Wire, boxes: BoxIndex): Way | undefined {
  const { from, to } = wire;
  const [first, last] = [turnOf(wire), to.x - STUB_PX];
  if (last < turnOf(other)) return undefined;
  const level = [to.y + BESIDE_PX, to.y - BESIDE_PX].find(
    (y) =>
      isLevelFree(boxes, y, first, last) &&
      [first, last].every((x) =>
        boxes.isFree({ left: x - 1, right: x + 1, top: Math.min(y, to.y), bottom: Math.max(y, to.y) }),
      ),
  );
  return level === undefined ? undefined : { uprights: [first, last], levels: [from.y, level, to.y] };
}
