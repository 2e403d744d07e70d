/** An island as a network of direct current: where its nodes are, and what its parts are between them. */
import type { PowerPath, Supply } from "../../parts/contract.ts";
import {
  type Conductor,
  type DcLoad,
  type DcNetwork,
  type DcSource,
  SHORT_OHMS,
} from "../../signal/directCurrent.ts";
import { remembered } from "../../signal/remember.ts";
import type { Ground, Island, Member } from "./island.ts";

export type WayUp = { readonly member: Member; readonly path: PowerPath; readonly conductor: number };
export type OwnSupply = { readonly member: Member; readonly supply: Supply; readonly at: number };
export type Drawing = {
  readonly member: Member;
  /** "own": what a part lives on; "short": a touch of inner conductor and screen. */
  readonly kind: "own" | "resistor" | "short";
  readonly at: number;
};

export type Circuit = {
  readonly nodes: number;
  /** Node of a port; −1 for one without direct current. */
  readonly nodeOf: (index: number, port: string) => number;
  readonly ways: readonly WayUp[];
  readonly conductors: readonly Conductor[];
  /** The member that each conductor belongs to, and by node those that end there. */
  readonly owners: readonly Member[];
  readonly conductorsAt: ReadonlyMap<number, readonly number[]>;
  readonly supplies: readonly OwnSupply[];
  readonly drawings: readonly Drawing[];
  /** The network in a certain state. */
  readonly networkOf: (state: CircuitState) => DcNetwork;
};

/** What may differ between two states of one circuit. */
export type CircuitState = {
  /** Volts of each supply [V]; 0: it is off. */
  readonly volts: (supply: OwnSupply) => number;
  /** Whether a way with a condition is open. */
  readonly isOpen: (way: WayUp) => boolean;
  /** Whether a supply arrives at a node. */
  readonly isFed: (node: number) => boolean;
};

export function circuitOf(island: Island, ground: Ground): Circuit {
  const nodes = numbered(island, ground);
  const ways: WayUp[] = [];
  const conductors: Conductor[] = [];
  const owners: Member[] = [];
  const conduct = (member: Member, conductor: Conductor) => {
    owners.push(member);
    conductors.push(conductor);
  };
  const supplies: OwnSupply[] = [];
  const drawings: Drawing[] = [];
  const at = (member: Member, port: string) => nodes.of(member.index, port);
  for (const member of island) {
    const { power, ports } = member;
    const own = new Set(ports);
    for (const path of power.paths ?? []) {
      if (!own.has(path.from)) continue;
      ways.push({ member, path, conductor: conductors.length });
      const isOneWay = path.dropVolts !== undefined || path.oneWay;
      conduct(member, {
        from: at(member, path.from),
        to: at(member, path.to),
        ohms: path.ohms ?? 0,
        ...(isOneWay ? { diodeVolts: path.dropVolts ?? 0 } : {}),
      });
    }
    for (const supply of power.supplies ?? [])
      if (own.has(supply.port)) supplies.push({ member, supply, at: at(member, supply.port) });
    const [first, ...others] = power.load?.ports ?? [];
    if (power.load && first !== undefined && own.has(first)) {
      // Whoever can be fed by several ports takes from the one with most volts, and keeps it out of the others.
      const inside = others.length > 0 ? nodes.add() : at(member, first);
      if (others.length > 0)
        for (const port of power.load.ports)
          conduct(member, { from: at(member, port), to: inside, ohms: 0, diodeVolts: 0 });
      drawings.push({ member, kind: "own", at: inside });
    }
    for (const { port } of power.resistors ?? [])
      if (own.has(port)) drawings.push({ member, kind: "resistor", at: at(member, port) });
    for (const port of power.shorts ?? [])
      if (own.has(port)) drawings.push({ member, kind: "short", at: at(member, port) });
  }
  const byConductor = new Map(ways.map((way) => [way.conductor, way]));
  return {
    nodes: nodes.count(),
    nodeOf: nodes.of,
    ways,
    conductors,
    owners,
    conductorsAt: byNode(conductors),
    supplies,
    drawings,
    networkOf: (state) => ({
      nodes: nodes.count(),
      conductors: conductors.map((conductor, i) => {
        const way = byConductor.get(i);
        return way && !state.isOpen(way) ? { ...conductor, ohms: Number.POSITIVE_INFINITY } : conductor;
      }),
      sources: supplies.map((own) => sourceOf(own, state, at)),
      loads: drawings.map((drawing) => loadOf(drawing, state, at)),
    }),
  };
}

function byNode(conductors: readonly Conductor[]): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>();
  conductors.forEach(({ from, to }, i) => {
    for (const node of new Set([from, to])) remembered(found, node, () => []).push(i);
  });
  return found;
}

type At = (member: Member, port: string) => number;

function sourceOf(own: OwnSupply, state: CircuitState, at: At): DcSource {
  const { member, supply } = own;
  return {
    at: own.at,
    volts: waits(own, (_, port) => at(member, port), state.isFed) ? 0 : state.volts(own),
    limitMa: supply.limitMa,
    ...(supply.shares === undefined ? {} : { group: `${member.id}/${supply.shares}` }),
  };
}

/** Whether a supply gives nothing because none arrives where its unit looks for one. */
export function waits(
  { member, supply }: OwnSupply,
  nodeOf: Circuit["nodeOf"],
  isFed: CircuitState["isFed"],
): boolean {
  return (
    supply.whileFedAt !== undefined && !supply.whileFedAt.some((port) => isFed(nodeOf(member.index, port)))
  );
}

function loadOf({ member, kind, at: node }: Drawing, state: CircuitState, at: At): DcLoad {
  if (kind === "short") return { at: node, draws: "resistance", ohms: SHORT_OHMS };
  if (kind === "resistor") {
    const own = member.power.resistors?.find(({ port }) => at(member, port) === node);
    return { at: node, draws: "resistance", ohms: own?.ohms ?? SHORT_OHMS };
  }
  const { load } = member.power;
  const { ports, milliamps: each } = load?.perFedPort ?? { ports: [], milliamps: 0 };
  const inUse = ports.filter((port) => state.isFed(at(member, port))).length;
  const milliamps = (load?.milliamps ?? 0) + each * inUse;
  if (load?.constantPowerAtVolts === undefined) return { at: node, draws: "current", milliamps };
  return {
    at: node,
    draws: "power",
    milliwatts: milliamps * load.constantPowerAtVolts,
    leastVolts: load.minVolts,
  };
}

/** A number for every node: the two ends of a wire are one. */
function numbered(island: Island, ground: Ground) {
  const known = new Map<string, number>();
  let next = 0;
  for (const { index, ports } of island)
    for (const port of ports) {
      const far = ground.neighbourOf(index, port);
      const node = (far && known.get(`${far.index}/${far.port}`)) ?? next++;
      known.set(`${index}/${port}`, node);
    }
  return {
    of: (index: number, port: string) => known.get(`${index}/${port}`) ?? -1,
    add: () => next++,
    count: () => next,
  };
}
