/** One island worked out: volts and milliamperes at every port, switches of position where they are asked to stand. */
import type { PartId } from "../../design/design.ts";
import { type Demand, type Feed, NO_DEMAND } from "../../signal/control.ts";
import type { DcSolution } from "../../signal/directCurrent.ts";
import { positionOf } from "../power.ts";
import { type Circuit, circuitOf } from "./circuit.ts";
import { type Flows, flowsOf } from "./flows.ts";
import type { Ground, Island, Member } from "./island.ts";
import { type Offered, offersOnIsland } from "./offers.ts";
import { type Solutions, solutionsOf } from "./solutions.ts";

export type SettledIsland = {
  readonly feedAt: (member: Member, port: string) => Feed | undefined;
  readonly offersAt: (member: Member, port: string) => Feed | undefined;
  /** What hangs on an output, or on what an input is joined to. */
  readonly demandAt: (member: Member, port: string) => Demand;
  /** What a part draws itself, a short aside [mA]. */
  readonly drawsMa: (member: Member) => number;
  /** Own supplies that shut down, by port. */
  readonly shutDown: (member: Member) => readonly string[];
  /** Supplies that shut down because of a short at this part. */
  readonly shorts: (member: Member) => readonly PartId[];
  readonly left: (member: Member) => number;
  /** Requests and switch positions that were not solved by themselves; told of the first part that supplies. */
  readonly statesLeft: (member: Member) => number;
  /** Most that a part gets when all who may choose ask for vertical at once [V]; undefined where its offers tell. */
  readonly verticalVolts: (member: Member) => number | undefined;
  readonly work: number;
};

/** A switch of position may depend on volts that depend on it: tried so often, then it stands as it stands. */
const MOST_POSITION_ROUNDS = 4;

/** Works out an island, and yields the work so far; undefined where nothing on it supplies anything. */
export function* settleIsland(
  island: Island,
  ground: Ground,
): Generator<number, SettledIsland | undefined, void> {
  if (!island.some(({ power, ports }) => power.supplies?.some(({ port }) => ports.includes(port))))
    return undefined;
  const circuit = circuitOf(island, ground);
  let positions = new Map<number, number>();
  let work = island.length;
  for (let round = 1; ; round++) {
    const solutions = solutionsOf(circuit, (node) => positions.get(node) ?? 1);
    const before = work;
    const steps = offersOnIsland(island, ground, circuit, solutions);
    let step = steps.next();
    for (; !step.done; step = steps.next()) yield before + step.value;
    const offered = step.value;
    const asked = positionsAsked(circuit, offered);
    work += solutions.work() + offered.work;
    const isSettled = [...asked].every(([node, position]) => (positions.get(node) ?? 1) === position);
    if (isSettled || round === MOST_POSITION_ROUNDS)
      return settledAs(island, ground, { circuit, solutions, offered, work });
    positions = asked;
  }
}

/** Where every position switch is asked to stand, by the node of its output. */
function positionsAsked(circuit: Circuit, offered: Offered): Map<number, number> {
  const asked = new Map<number, number>();
  for (const { member, path } of circuit.ways) {
    const [first] = path.position === undefined ? [] : (offered.feedAt(member.index, path.from) ?? []);
    if (first) asked.set(circuit.nodeOf(member.index, path.from), positionOf(first, path.heeds));
  }
  return asked;
}

function settledAs(
  island: Island,
  ground: Ground,
  o: {
    readonly circuit: Circuit;
    readonly solutions: Solutions;
    readonly offered: Offered;
    readonly work: number;
  },
): SettledIsland {
  const { circuit, solutions, offered } = o;
  const now = solutions.solved({});
  const present = flowsOf(circuit, now);
  // What the supplies that shut down would have had to give, each in the state in which it did.
  const wanted = [...new Set(now.shutDown.values())].map((state) => flowsOf(circuit, state));
  const byIndex = new Map(island.flatMap((m) => m.ports.map((port) => [`${m.index}/${port}`, m] as const)));
  const upInto = (member: Member, port: string): Demand => {
    const demand = present.upInto(member, port);
    return demand === NO_DEMAND ? mostOf(wanted.map((flows) => flows.upInto(member, port))) : demand;
  };
  const shorted = shortedSupplies(circuit, now);
  return {
    feedAt: (member, port) => offered.feedAt(member.index, port),
    offersAt: (member, port) => offered.offersAt(member.index, port),
    demandAt: (member, port) => {
      const far = ground.neighbourOf(member.index, port);
      const above = far && byIndex.get(`${far.index}/${far.port}`);
      // What a head end feeds flows down: out of an output that is offered something, into the part below.
      if (
        far &&
        (offered.offersAt(member.index, port)?.length ?? 0) > 0 &&
        above &&
        above.place > member.place
      )
        return upInto(above, far.port);
      if (offered.feedAt(member.index, port)?.length && above && above.place < member.place)
        return upInto(member, port);
      // An input is below whatever it is joined to: that is what hangs on it.
      return above && far && above.place < member.place ? upInto(above, far.port) : upInto(member, port);
    },
    drawsMa: (member) =>
      circuit.drawings.reduce(
        (sum, drawing, i) =>
          drawing.member === member && drawing.kind !== "short"
            ? sum + Math.round((now.loadMa[i] ?? 0) * 1000) / 1000
            : sum,
        0,
      ),
    shutDown: (member) =>
      circuit.supplies.flatMap((own, i) =>
        own.member === member && now.shutDown.has(i) ? [own.supply.port] : [],
      ),
    shorts: (member) => shorted.get(member.id) ?? NOBODY,
    left: offered.leftAt,
    statesLeft: (member) => (circuit.supplies[0]?.member === member ? solutions.shared() : 0),
    verticalVolts: (member) => verticalVolts(member, o),
    work: o.work + present.work + wanted.reduce((sum, flows) => sum + flows.work, 0),
  };
}

/** Offers have their volts for vertical with all others as they are; where one of those asks for horizontal, that is not all. */
function verticalVolts(
  { index, power, ports }: Member,
  o: { readonly circuit: Circuit; readonly solutions: Solutions; readonly offered: Offered },
): number | undefined {
  const fedBy = (power.load?.ports ?? []).filter((port) => ports.includes(port));
  if (power.selfPowered || fedBy.length === 0) return undefined;
  const choosing = o.circuit.supplies.filter(({ supply }) => supply.kind === "commands");
  const isElsewhere = fedBy.every((port) => (o.offered.feedAt(index, port) ?? []).every((of) => of.dormant));
  if (isElsewhere || choosing.length < 2) return undefined;
  if (choosing.every(({ supply }) => supply.request?.polarisation === "V")) return undefined;
  const { volts } = o.solutions.solved({ supply: -1, asks: "V" });
  const most = Math.max(...fedBy.map((port) => volts[o.circuit.nodeOf(index, port)] ?? 0));
  return Math.round(most * 1e6) / 1e6;
}

const NOBODY: readonly PartId[] = [];

function mostOf(demands: readonly Demand[]): Demand {
  return demands.reduce((most, demand) => {
    if (most.shortedBy !== null) return most;
    return demand.shortedBy !== null || demand.milliamps > most.milliamps ? demand : most;
  }, NO_DEMAND);
}

/** By the part that shorts: the supplies that it shuts down, in order of name. */
function shortedSupplies(circuit: Circuit, now: DcSolution): ReadonlyMap<PartId, readonly PartId[]> {
  const found = new Map<PartId, Set<PartId>>();
  const flows = new Map<DcSolution, Flows>();
  for (const [i, state] of now.shutDown) {
    const own = circuit.supplies[i];
    const known = flows.get(state) ?? flowsOf(circuit, state);
    flows.set(state, known);
    const by = own && known.shortBehind(own.at);
    if (own && by) found.set(by, (found.get(by) ?? new Set()).add(own.member.id));
  }
  return new Map([...found].map(([by, supplies]) => [by, [...supplies].sort()]));
}
