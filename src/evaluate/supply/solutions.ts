/** The states of an island that are asked for: as it is now, and as it would be if somebody asked for something else. */
import { type DcNetwork, type DcSolution, dcSolver } from "../../signal/directCurrent.ts";
import { type Circuit, type OwnSupply, waits } from "./circuit.ts";

/** A state beside the present one. */
export type Variation = {
  /** One supply gives its voltage for vertical or for horizontal; −1: all that may choose do. */
  readonly supply?: number;
  readonly asks?: "V" | "H";
  /** Position switches that stand elsewhere than they are asked to. */
  readonly switched?: readonly Switched[];
};

/** A position switch by the node of its output, and where it stands. */
export type Switched = { readonly node: number; readonly position: number };

/** One state solved. */
export type SolvedState = DcSolution & {
  /** Supplies that wait for a receiver to be on, by their number in the circuit. */
  readonly waiting: ReadonlySet<number>;
};

export type Solutions = {
  /** Each state is solved once; beyond `MOST_STATES` a variation gets the state of one that is solved for all alike. */
  readonly solved: (variation: Variation) => SolvedState;
  readonly work: () => number;
  /** How many variations were answered so. */
  readonly shared: () => number;
};

/** States of one island that are solved: what a large block has of receivers, requests and switch positions; our choice. */
export const MOST_STATES = 512;

/**
 * Fewer where the network is large: no more is begun once so many steps of arithmetic are done. Steps and no time, so
 * that every machine finds the same; a house of thirty receivers takes a hundredth of it. Our choice.
 */
const MOST_WORK = 1_000_000;

/** A supply counts as arriving from so many volts on [V]; our choice, far below what anything works with. */
const ARRIVES_FROM_VOLTS = 5;

/** Fed ports are found by trying: each round can only add some. */
const MOST_FED_ROUNDS = 6;

/** `positionAt`: where the position switch with this output stands, by node. */
export function solutionsOf(circuit: Circuit, positionAt: (node: number) => number): Solutions {
  const known = new Map<string, SolvedState>();
  const beyond = new Set<string>();
  let solver: ((network: DcNetwork) => DcSolution) | undefined;
  let work = 0;
  const settled = (variation: Variation): SolvedState => {
    const fed = new Set<number>();
    const state = {
      volts: (own: OwnSupply) => voltsOf(own, circuit.supplies.indexOf(own), variation),
      isFed: (node: number) => fed.has(node),
      isOpen: ({ member, path }: Circuit["ways"][number]) => {
        if (path.position === undefined) return true;
        const node = circuit.nodeOf(member.index, path.from);
        const elsewhere = variation.switched?.find((one) => one.node === node);
        return path.position === (elsewhere?.position ?? positionAt(node));
      },
    };
    let network = circuit.networkOf(state);
    solver ??= dcSolver(network);
    let found = solver(network);
    work += found.work;
    for (let round = 0; round < MOST_FED_ROUNDS && dependsOnFed(circuit); round++) {
      const before = fed.size;
      // A supply that shut down is counted where it would arrive: what it is asked for is what shut it down.
      for (const { volts } of [found, ...found.shutDown.values()])
        volts.forEach((v, node) => {
          if (v > ARRIVES_FROM_VOLTS) fed.add(node);
        });
      if (fed.size === before) break;
      network = circuit.networkOf(state);
      found = solver(network);
      work += found.work;
    }
    const waiting = circuit.supplies.flatMap((own, i) =>
      waits(own, circuit.nodeOf, state.isFed) ? [i] : [],
    );
    return { ...found, waiting: new Set(waiting) };
  };
  return {
    solved: (variation) => {
      const key = keyOf(variation);
      const ready = known.get(key);
      if (ready) return ready;
      const isOver = (known.size >= MOST_STATES || work >= MOST_WORK) && !isCommon(variation);
      if (isOver) beyond.add(key);
      const asked = isOver ? commonOf(variation) : variation;
      const found = known.get(keyOf(asked)) ?? settled(asked);
      known.set(keyOf(asked), found);
      return found;
    },
    work: () => work,
    shared: () => beyond.size,
  };
}

function keyOf({ supply, asks, switched = [] }: Variation): string {
  return `${supply ?? ""}/${asks ?? ""}/${switched.map(({ node, position }) => `${node}:${position}`).join(",")}`;
}

/** The state that stands for a variation where there are too many: switches as now, and all ask alike. */
function commonOf({ asks }: Variation): Variation {
  return asks === undefined ? {} : { supply: -1, asks };
}

function isCommon({ supply, switched = [] }: Variation): boolean {
  return switched.length === 0 && (supply === undefined || supply === -1);
}

function dependsOnFed({ drawings, supplies }: Circuit): boolean {
  return (
    drawings.some(({ kind, member }) => kind === "own" && member.power.load?.perFedPort) ||
    supplies.some(({ supply }) => supply.whileFedAt)
  );
}

function voltsOf({ supply }: OwnSupply, index: number, { supply: who, asks }: Variation): number {
  const isAsked = who === index || (who === -1 && supply.kind === "commands");
  const polarisation = isAsked ? asks : supply.request?.polarisation;
  return polarisation === "V" ? supply.volts13 : supply.volts18;
}
