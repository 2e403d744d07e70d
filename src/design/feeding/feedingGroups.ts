/**
 * The places that a design serves, grouped under the part that feeds them: the flats under their multiswitch, the
 * rooms under the splitter in the loft. For views that show a whole house at once.
 */
import type { DesignContent, PartId, PortId } from "../design.ts";
import { type FeedingGraph, type FeedingNode, feedingGraph } from "./feedingGraph.ts";
import { byOutput, feederOrder, fromTheSources, isFeeder } from "./feedingOrder.ts";
import { nearestAbove, type Reach } from "./nearest.ts";
import {
  type Looked,
  liftSingleFlats,
  type PlaceDraft,
  type PlacesByFeeder,
  placesByFeeder,
} from "./places.ts";

/** A flat or a room: an outlet with the receivers behind it, or a receiver that no outlet stands before. */
export type FedPlace = {
  /** Its first outlet, or its receiver: stays as long as that does. */
  readonly key: PartId;
  /** Of the outlets that bear the same one; absent where none is given. */
  readonly dwelling?: string;
  readonly outlets: readonly PartId[];
  readonly receivers: readonly PartId[];
  /** Cable between the part that feeds it and its furthest outlet [m]. */
  readonly cableM: number;
};

export type FeedingGroup = {
  /** Stays while feeder and riser do. */
  readonly key: string;
  /** Absent: nothing feeds these places. */
  readonly feeder?: PartId;
  /** The output of the feeder from which a line runs from place to place. */
  readonly riser?: PortId;
  /** In the order of the feeder's outputs, along a riser in the order of the line. */
  readonly places: readonly FedPlace[];
  /** What else belongs to them: cables, diplexers, loads, splitters within a flat. */
  readonly between: readonly PartId[];
};

export type FeedingGroups = {
  /** Parts that belong to no group, from the sources on: aerials, dishes, amplifiers, trunk cables. */
  readonly head: readonly PartId[];
  /** A feeder comes before those that it feeds; places that nothing feeds come last. */
  readonly groups: readonly FeedingGroup[];
};

/**
 * Every outlet and every receiver is in one group, every other part is a feeder, lies between, or belongs to the
 * head. A feeder is the nearest part upstream that gives signal off by two outputs or begins a riser; a splitter that
 * serves one flat alone belongs to the flat. Where nothing of the kind is there, the nearest part not in line.
 */
export function feedingGroupsOf(design: DesignContent): FeedingGroups {
  const graph = feedingGraph(design);
  const all = () => true;
  const behindOutlet = nearestAbove(graph, {
    isSeed: (node) => node.role === "outlet",
    leaves: (edge) => !edge.isTrunk,
  });
  const feeders = nearestAbove(graph, { isSeed: isFeeder, leaves: all });
  const others = nearestAbove(graph, { isSeed: (node) => node.role === "other", leaves: all });
  const reachOf = (id: PartId): Reach | undefined => feeders.get(id) ?? others.get(id);

  const places = placesByFeeder(design, graph, { behindOutlet, reachOf });
  const order = feederOrder([...graph.nodes.values()], feeders);
  const lifted = liftSingleFlats(order, feeders, places);
  const groups = groupsIn(order, places);
  return withTheRest(design, graph, { groups, lifted, behindOutlet, reachOf });
}

type OpenGroup = Omit<FeedingGroup, "between"> & {
  readonly node: FeedingNode | null;
  readonly between: PartId[];
};

function groupsIn(order: readonly FeedingNode[], places: PlacesByFeeder): readonly OpenGroup[] {
  return [...order, null].flatMap((node) => {
    const own = [...(places.get(node)?.values() ?? [])].sort(byOutput);
    const byRiser = new Map<PortId | undefined, FedPlace[]>();
    for (const place of own) {
      const list = byRiser.get(place.riser) ?? [];
      byRiser.set(place.riser, list);
      list.push(placeOf(place));
    }
    return [...byRiser].map(([riser, fed]): OpenGroup => {
      const key = [node?.id ?? "", ...(riser === undefined ? [] : [riser])].join(".");
      return {
        key,
        node,
        ...(node ? { feeder: node.id } : {}),
        ...(riser === undefined ? {} : { riser }),
        places: fed,
        between: [],
      };
    });
  });
}

function placeOf({ node, dwelling, outlets, receivers, cableM }: PlaceDraft): FedPlace {
  return { key: node.id, ...(dwelling === "" ? {} : { dwelling }), outlets, receivers, cableM };
}

type Sorted = Omit<Looked, "reachOf"> & {
  readonly groups: readonly OpenGroup[];
  readonly lifted: ReadonlyMap<FeedingNode, FeedingNode>;
  readonly reachOf: Looked["reachOf"];
};

/** Parts that are neither feeder nor place: they lie between, or belong to the head. */
function withTheRest(design: DesignContent, graph: FeedingGraph, sorted: Sorted): FeedingGroups {
  const { groups, lifted, behindOutlet, reachOf } = sorted;
  const byPlace = new Map<PartId, OpenGroup>();
  const byFeeder = new Map<FeedingNode, OpenGroup[]>();
  for (const group of groups) {
    for (const { outlets, receivers } of group.places)
      for (const id of [...outlets, ...receivers]) byPlace.set(id, group);
    if (group.node) byFeeder.set(group.node, [...(byFeeder.get(group.node) ?? []), group]);
  }
  /** A riser of its own where there is one, else the first group of the feeder. */
  const fedBy = (feeder: FeedingNode, port: PortId | undefined): OpenGroup | undefined => {
    let node = feeder;
    for (let above = lifted.get(node); above; above = lifted.get(node)) node = above;
    const own = byFeeder.get(node);
    return own?.find((group) => group.riser === port) ?? own?.[0];
  };
  const groupOf = (node: FeedingNode): OpenGroup | undefined => {
    const place = byPlace.get(node.id) ?? byPlace.get(behindOutlet.get(node.id)?.seed.id ?? "");
    if (place) return place;
    if (lifted.has(node)) return fedBy(node, undefined);
    const reach = reachOf(node.id);
    return reach && fedBy(reach.seed, reach.first.port);
  };
  const isFeederOfGroup = (id: PartId): boolean => {
    const node = graph.nodes.get(id);
    return node !== undefined && byFeeder.has(node);
  };
  const head: PartId[] = [];
  for (const { id } of design.parts) {
    if (byPlace.has(id) || isFeederOfGroup(id)) continue;
    const node = graph.nodes.get(id);
    const start = node ? undefined : graph.lineStarts.get(id);
    let group: OpenGroup | undefined;
    if (node) group = groupOf(node);
    else if (start)
      group = isFeederOfGroup(start.node.id) ? fedBy(start.node, start.port) : groupOf(start.node);
    if (group) group.between.push(id);
    else head.push(id);
  }
  return { head: fromTheSources(design, head), groups: groups.map(({ node: _, ...group }) => group) };
}
