/** Outlets and receivers put together into places, each under the part that feeds it. */
import type { DesignContent, PartId, PortId } from "../design.ts";
import type { FeedingGraph, FeedingNode } from "./feedingGraph.ts";
import type { Reach } from "./nearest.ts";

/** A place while it is put together. */
export type PlaceDraft = {
  readonly node: FeedingNode;
  readonly dwelling: string;
  readonly reach: Reach | undefined;
  readonly riser: PortId | undefined;
  readonly outlets: PartId[];
  readonly receivers: PartId[];
  readonly cableM: number;
};

/** Places by their feeder (null: nothing feeds them), and within it by flat, or by outlet where no flat is named. */
export type PlacesByFeeder = Map<FeedingNode | null, Map<string, PlaceDraft>>;

export type Looked = {
  readonly behindOutlet: ReadonlyMap<PartId, Reach>;
  readonly reachOf: (id: PartId) => Reach | undefined;
};

export function placesByFeeder(design: DesignContent, graph: FeedingGraph, looked: Looked): PlacesByFeeder {
  const places: PlacesByFeeder = new Map();
  const byOutlet = new Map<PartId, PlaceDraft>();
  for (const { id, options } of design.parts) {
    const node = graph.nodes.get(id);
    if (!node || node.role === "other") continue;
    if (node.role === "receiver" && looked.behindOutlet.has(id)) continue;
    const isOutlet = node.role === "outlet";
    const dwelling = isOutlet && typeof options.dwelling === "string" ? options.dwelling.trim() : "";
    const reach = looked.reachOf(id);
    const runsOn = reach?.runsOn === true || node.edges.some((edge) => edge.isTrunk);
    const draft = addPlace(places, reach?.seed ?? null, {
      node,
      dwelling,
      reach,
      riser: runsOn ? reach?.first.port : undefined,
      outlets: isOutlet ? [id] : [],
      receivers: isOutlet ? [] : [id],
      cableM: reach?.cableM ?? 0,
    });
    if (isOutlet) byOutlet.set(id, draft);
  }
  for (const { id } of design.parts) {
    const outlet = looked.behindOutlet.get(id)?.seed;
    if (outlet && graph.nodes.get(id)?.role === "receiver") byOutlet.get(outlet.id)?.receivers.push(id);
  }
  return places;
}

/** Puts a place in, or its outlets and receivers into that of the same flat. */
function addPlace(places: PlacesByFeeder, feeder: FeedingNode | null, place: PlaceDraft): PlaceDraft {
  const own = places.get(feeder) ?? new Map<string, PlaceDraft>();
  places.set(feeder, own);
  const key = place.dwelling === "" ? `part ${place.node.id}` : `flat ${place.dwelling}`;
  const same = own.get(key);
  if (!same) {
    own.set(key, place);
    return place;
  }
  same.outlets.push(...place.outlets);
  same.receivers.push(...place.receivers);
  const merged = { ...same, cableM: Math.max(same.cableM, place.cableM) };
  own.set(key, merged);
  return merged;
}

/** A splitter whose outlets all belong to one flat is part of that flat: what feeds the splitter feeds the flat. */
export function liftSingleFlats(
  order: readonly FeedingNode[],
  feeders: ReadonlyMap<PartId, Reach>,
  places: PlacesByFeeder,
): ReadonlyMap<FeedingNode, FeedingNode> {
  const lifted = new Map<FeedingNode, FeedingNode>();
  for (const feeder of [...order].reverse()) {
    const own = places.get(feeder);
    const [only] = own?.values() ?? [];
    const reach = feeders.get(feeder.id);
    if (!only || own?.size !== 1 || only.outlets.length < 2 || only.dwelling === "" || !reach) continue;
    places.delete(feeder);
    lifted.set(feeder, reach.seed);
    const cableM = reach.cableM + only.cableM;
    addPlace(places, reach.seed, {
      ...only,
      reach,
      cableM,
      riser: reach.runsOn ? reach.first.port : undefined,
    });
  }
  return lifted;
}
