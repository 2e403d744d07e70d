/** Supplies on their way up an island, and down from a head end: what of each is left at every part, and who could not give it. */
import type { Feed, Offer } from "../../signal/control.ts";
import { type DcSolution, SAG_VOLTS } from "../../signal/directCurrent.ts";
import { remembered } from "../../signal/remember.ts";
import { byTheStrongestWay, positionOf, strongestFirst, withinCount } from "../power.ts";
import type { Circuit, OwnSupply, WayUp } from "./circuit.ts";
import type { Ground, Island, Member } from "./island.ts";
import type { Solutions, SolvedState, Switched } from "./solutions.ts";

/** By part and port: what arrives at outputs, and what is handed on at inputs. */
export type Offered = {
  readonly feedAt: (index: number, port: string) => Feed | undefined;
  readonly offersAt: (index: number, port: string) => Feed | undefined;
  /** How many supplies were left out at a member. */
  readonly leftAt: (member: Member) => number;
  readonly work: number;
};

/** An offer on its way, and the states of the network in which its three voltages are. */
type Traveller = { readonly offer: Offer; readonly own: number; readonly switched?: readonly Switched[] };

/** Tells what it has taken so far. */
type Taking<T> = Generator<number, T, void>;

const PER_OFFER = 8;

/** With more supplies than this on one island all of them are taken to ask alike, where one asks for something else. */
const MOST_ASKED_ALONE = 24;

/** Yields after each part the work that was done, so that whoever runs it can hold it against a limit. */
export function* offersOnIsland(
  island: Island,
  ground: Ground,
  circuit: Circuit,
  solutions: Solutions,
): Taking<Offered> {
  const offers = new Map<string, Feed>();
  const left = new Map<Member, number>();
  const travellers = new Map<Offer, Traveller>();
  const states = statesOf(circuit, solutions);
  const waysOf = new Map<Member, WayUp[]>();
  for (const way of circuit.ways) remembered(waysOf, way.member, () => []).push(way);
  const ownOf = new Map<Member, number[]>();
  circuit.supplies.forEach(({ member }, i) => {
    remembered(ownOf, member, () => []).push(i);
  });
  const feedAt = (index: number, port: string): Feed | undefined => {
    const far = ground.neighbourOf(index, port);
    return far && offers.get(`${far.index}/${far.port}`);
  };
  let work = 0;
  const handOn = (member: Member, isDown: boolean) => {
    const gathered = new Map<string, Offer[]>();
    const give = (port: string, traveller: Traveller) => {
      travellers.set(traveller.offer, traveller);
      remembered(gathered, port, () => []).push(traveller.offer);
      work += PER_OFFER;
    };
    for (const own of ownOf.get(member) ?? []) {
      const supply = circuit.supplies[own];
      if (supply && (supply.supply.down === true) === isDown)
        give(supply.supply.port, { own, offer: given(supply, own, states) });
    }
    for (const way of waysOf.get(member) ?? []) {
      const [from, to] = isDown ? [way.path.to, way.path.from] : [way.path.from, way.path.to];
      if (isDown && !leadsDown(way)) continue;
      for (const offer of feedAt(member.index, from) ?? []) {
        const before = travellers.get(offer);
        if (before) give(to, passed(before, way, { circuit, states, isDown }));
      }
    }
    for (const [port, list] of gathered) {
      const feed = byTheStrongestWay(list.sort(strongestFirst));
      for (const offer of feed) {
        const known = travellers.get(offer) ?? travellerLike(offer, list, travellers);
        if (known) travellers.set(offer, { ...known, offer });
      }
      offers.set(`${member.index}/${port}`, withinCount(feed));
      left.set(member, Math.max(left.get(member) ?? 0, feed.length - withinCount(feed).length));
    }
  };
  // Receivers first: whatever is below a part has been asked before it.
  const fromBelow = [...island].sort((a, b) => b.place - a.place);
  const rounds = circuit.supplies.some(({ supply }) => supply.down) ? [false, true] : [false];
  for (const isDown of rounds)
    for (const member of isDown ? fromBelow.toReversed() : fromBelow) {
      handOn(member, isDown);
      yield work + solutions.work();
    }
  return {
    feedAt,
    offersAt: (index, port) => offers.get(`${index}/${port}`),
    leftAt: (member) => left.get(member) ?? 0,
    work,
  };
}

/** Ways without a diode conduct both ways; those of a position switch lead up only. */
function leadsDown({ path }: WayUp): boolean {
  return path.dropVolts === undefined && !path.oneWay && path.position === undefined;
}

/** An offer that was put together of two ways goes on as the stronger of them. */
function travellerLike(offer: Offer, list: readonly Offer[], known: ReadonlyMap<Offer, Traveller>) {
  const twin = list.find((o) => o.part === offer.part && o.port === offer.port);
  return twin && known.get(twin);
}

/** The three states in which an offer has its voltages: as it is now, and if it asked for vertical or horizontal. */
type States = (t: Pick<Traveller, "own" | "switched">) => {
  readonly now: SolvedState;
  readonly vertical: SolvedState;
  readonly horizontal: SolvedState;
};

function statesOf(circuit: Circuit, solutions: Solutions): States {
  const choosing = circuit.supplies.filter(({ supply }) => supply.kind === "commands").length;
  return ({ own, switched }) => {
    const at = switched === undefined ? {} : { switched };
    const supply = circuit.supplies[own]?.supply;
    const now = solutions.solved(at);
    if (!supply || supply.volts13 === supply.volts18) return { now, vertical: now, horizontal: now };
    const who = choosing > MOST_ASKED_ALONE ? -1 : own;
    const asking = (asks: "V" | "H") =>
      (supply.request?.polarisation ?? "H") === asks && who === own
        ? now
        : solutions.solved({ ...at, supply: who, asks });
    return { now, vertical: asking("V"), horizontal: asking("H") };
  };
}

/** A supply as it is put on its own port. */
function given(own: OwnSupply, index: number, states: States): Offer {
  const { supply, member } = own;
  const { now, vertical, horizontal } = states({ own: index });
  const volts = supply.request?.polarisation === "V" ? supply.volts13 : supply.volts18;
  return {
    part: member.id,
    port: supply.port,
    kind: supply.kind,
    volts13: held(own, index, { volts: supply.volts13, state: vertical }),
    volts18: held(own, index, { volts: supply.volts18, state: horizontal }),
    volts: held(own, index, { volts, state: now }),
    ohms: 0,
    dropVolts: 0,
    limitMa: supply.limitMa,
    toneArrives: true,
    ...(supply.request ? { request: supply.request } : {}),
    dormant: false,
    ...(supply.whileFedAt ? { sleeps: true } : {}),
  };
}

/** What a supply holds: its voltage, less what it sags at its limit; nothing once it has shut down, or while it waits. */
function held(
  own: OwnSupply,
  index: number,
  o: { readonly volts: number; readonly state: SolvedState },
): number {
  const { volts, state } = o;
  if (state.shutDown.has(index) || state.waiting.has(index)) return 0;
  const sag = (state.sourceMa[index] ?? 0) > 0 ? volts - (state.volts[own.at] ?? 0) : 0;
  return sag > LEAST_SAG_VOLTS && sag <= SAG_VOLTS ? rounded(volts - sag) : volts;
}

const LEAST_SAG_VOLTS = 0.001;

function passed(
  before: Traveller,
  way: WayUp,
  {
    circuit,
    states,
    isDown,
  }: { readonly circuit: Circuit; readonly states: States; readonly isDown: boolean },
): Traveller {
  const { path, member } = way;
  const { offer, own } = before;
  const isElsewhere = path.position !== undefined && positionOf(offer, path.heeds) !== path.position;
  const common = {
    ...offer,
    ohms: offer.ohms + (path.ohms ?? 0),
    toneArrives: offer.toneArrives && path.tone,
    dormant: offer.dormant || isElsewhere,
  };
  if (isElsewhere && path.position !== undefined) {
    // As it would be if the switch stood here, and so did those before it.
    const here = { node: circuit.nodeOf(member.index, path.from), position: path.position };
    const switched = [...(before.switched ?? []), here];
    const { now, vertical, horizontal } = states({ own, switched });
    const node = circuit.nodeOf(member.index, path.to);
    const at = (state: DcSolution, most: number) =>
      rounded(Math.min(most, Math.max(0, state.volts[node] ?? 0)));
    const volts = at(now, offer.volts);
    return {
      own,
      switched,
      offer: {
        ...common,
        volts13: at(vertical, offer.volts13),
        volts18: at(horizontal, offer.volts18),
        volts,
        dropVolts: rounded(offer.dropVolts + offer.volts - volts),
      },
    };
  }
  const { now, vertical, horizontal } = states(before);
  const drop = (state: DcSolution) => dropOf(way, state, isDown);
  const less = (volts: number, taken: number) => Math.max(0, rounded(volts - taken));
  return {
    ...before,
    offer: {
      ...common,
      volts13: less(offer.volts13, drop(vertical)),
      volts18: less(offer.volts18, drop(horizontal)),
      volts: less(offer.volts, drop(now)),
      dropVolts: rounded(offer.dropVolts + drop(now)),
    },
  };
}

/** What a way takes: its diode, whether it is open now or not, and its resistance as much as flows. [V] */
function dropOf({ path, conductor }: WayUp, state: DcSolution, isDown: boolean): number {
  const upMa = state.conductorMa[conductor] ?? 0;
  const milliamps = Math.max(0, Math.round((isDown ? -upMa : upMa) * 1000) / 1000);
  return (path.dropVolts ?? 0) + ((path.ohms ?? 0) * milliamps) / 1000;
}

/** To a microvolt, so that the last digits of the arithmetic are no news. */
function rounded(volts: number): number {
  return Math.round(volts * 1e6) / 1e6;
}
