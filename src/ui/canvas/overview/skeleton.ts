/**
 * What an overview shows of a design: the parts of the head and those that feed places as cards, each place as one, and
 * between them the lines, without the cables, diplexers and splitters that only lie on the way.
 */
import { type Design, type PartId, type PortId, type Wire, wireId } from "../../../design/design.ts";
import { type FedPlace, type FeedingGroup, feedingGroupsOf } from "../../../design/feeding/feedingGroups.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { metresOf } from "../../../parts/meanings.ts";
import { remembered } from "../../../signal/remember.ts";
import { type Frame, frameOf } from "../frames.ts";

/** A line from one thing shown to the next, over whatever lies between. */
export type Link = {
  /** Part id of a card, or key of a place. */
  readonly from: string;
  readonly fromPort: PortId;
  readonly to: string;
  readonly toPort: PortId;
  /** Cable on the way [m]. */
  readonly cableM: number;
  /** Its wires (`wireId`), the first one leaves `from`. */
  readonly wires: readonly string[];
};

export type ShownCard = { readonly id: PartId; readonly name: string; readonly frame: Frame };

export type Skeleton = {
  /** From the sources on; the feeders last. */
  readonly cards: readonly ShownCard[];
  /** How many of the cards belong to the head. */
  readonly heads: number;
  readonly groups: readonly FeedingGroup[];
  readonly links: readonly Link[];
};

const known = new WeakMap<Design, Skeleton>();

export function skeletonOf(design: Design): Skeleton {
  return remembered(known, design, () => made(design));
}

/** All places, group by group. */
export function placesIn({ groups }: Skeleton): readonly FedPlace[] {
  return groups.flatMap((group) => group.places);
}

/** The parts that a thing of the overview stands for: a card, a place, or what feeds a group. */
export function partsOfItem({ cards, groups }: Skeleton, shown: string): readonly PartId[] {
  const item = isStripItem(shown) ? shown.slice(STRIP.length) : shown;
  if (cards.some((card) => card.id === item)) return [item];
  for (const { key, feeder, places } of groups) {
    if (key === item && feeder !== undefined) return [feeder];
    const place = places.find((p) => p.key === item);
    if (place) return partsOfPlace(place);
  }
  return [];
}

/** No part id has a blank. */
const STRIP = "strip ";

/** The strip that stands beside a thing, as a thing of its own. */
export function stripItem(item: string): string {
  return `${STRIP}${item}`;
}

export function isStripItem(item: string): boolean {
  return item.startsWith(STRIP);
}

export function partsOfPlace({ outlets, receivers }: FedPlace): readonly PartId[] {
  return [...outlets, ...receivers];
}

/** The thing that shows the first of these parts; null where not all of them are shown. */
export function itemOfParts({ cards, groups }: Skeleton, parts: readonly PartId[]): string | null {
  const shown = new Map<PartId, string>(cards.map(({ id }) => [id, id]));
  for (const { key, feeder, places } of groups) {
    if (feeder !== undefined) shown.set(feeder, key);
    for (const place of places) for (const id of partsOfPlace(place)) shown.set(id, place.key);
  }
  const [first] = parts;
  return first !== undefined && parts.every((id) => shown.has(id)) ? (shown.get(first) ?? null) : null;
}

function made(design: Design): Skeleton {
  const { head, groups } = feedingGroupsOf(design);
  const parts = new Map(design.parts.map((part) => [part.id, part] as const));
  const owner = new Map<PartId, string>();
  const cards: ShownCard[] = [];
  const addCard = (id: PartId) => {
    const part = parts.get(id);
    if (!part || owner.has(id)) return;
    const frame = frameOf(design, part);
    // A run of cable is part of its line.
    if (frame.look === "pill") return;
    cards.push({ id, name: part.label || (kindOf(part.kind)?.name ?? part.kind), frame });
    owner.set(id, id);
  };
  for (const id of head) addCard(id);
  const heads = cards.length;
  for (const { feeder } of groups) if (feeder !== undefined) addCard(feeder);
  for (const { places } of groups)
    for (const { key, outlets, receivers } of places)
      for (const id of [...outlets, ...receivers]) owner.set(id, key);
  return { cards, heads, groups, links: linksOf(design, owner) };
}

function linksOf(design: Design, owner: ReadonlyMap<PartId, string>): readonly Link[] {
  const parts = new Map(design.parts.map((part) => [part.id, part] as const));
  const into = new Map<PartId, Wire[]>();
  for (const wire of design.wires) into.set(wire.to[0], [...(into.get(wire.to[0]) ?? []), wire]);
  const links = new Map<string, Link>();
  const cableOf = (id: PartId) => {
    const part = parts.get(id);
    const kind = part && kindOf(part.kind);
    return (kind && metresOf(kind, part.options)) ?? 0;
  };
  for (const last of design.wires) {
    const to = owner.get(last.to[0]);
    if (to === undefined) continue;
    const seen = new Set<PartId>();
    /** Upstream from a wire, to whatever is shown there. */
    const follow = (wire: Wire, cableM: number, after: readonly string[]): void => {
      const [part, port] = wire.from;
      const from = owner.get(part);
      const wires = [wireId(wire), ...after];
      if (from !== undefined) {
        const key = `${from} ${port} ${to}`;
        if (from !== to && !links.has(key))
          links.set(key, { from, fromPort: port, to, toPort: last.to[1], cableM, wires });
        return;
      }
      if (seen.has(part)) return;
      seen.add(part);
      for (const before of into.get(part) ?? []) follow(before, cableM + cableOf(part), wires);
    };
    follow(last, 0, []);
  }
  return [...links.values()];
}
