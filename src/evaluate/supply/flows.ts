/** Whose current flows where: every milliampere followed from a wire to the part that draws it. */
import type { PartId } from "../../design/design.ts";
import { type Demand, type Draw, NO_DEMAND } from "../../signal/control.ts";
import type { DcSolution } from "../../signal/directCurrent.ts";
import { remembered } from "../../signal/remember.ts";
import type { Circuit, Drawing } from "./circuit.ts";
import type { Member } from "./island.ts";

export type Flows = {
  /** What flows from the wire at this output up into the part: what hangs there. */
  readonly upInto: (member: Member, port: string) => Demand;
  /** What takes most of the current that leaves a node, where that is a short. */
  readonly shortBehind: (node: number) => PartId | null;
  readonly work: number;
};

/** Who gets so much of a current, as shares that come to one, by the number of the drawing. */
type Shares = ReadonlyMap<number, number>;

type Leaving = { readonly ma: number; readonly to?: number; readonly drawing?: number };

/** Less than this is what no meter shows [mA]. */
const LEAST_MA = 0.01;

export function flowsOf(circuit: Circuit, solution: DcSolution): Flows {
  const { conductors, drawings } = circuit;
  const leaving = new Map<number, Leaving[]>();
  const leave = (node: number, way: Leaving) => {
    if (way.ma >= LEAST_MA) remembered(leaving, node, () => []).push(way);
  };
  conductors.forEach(({ from, to }, i) => {
    const ma = solution.conductorMa[i] ?? 0;
    leave(ma > 0 ? from : to, { ma: Math.abs(ma), to: ma > 0 ? to : from });
  });
  drawings.forEach(({ at }, i) => {
    leave(at, { ma: solution.loadMa[i] ?? 0, drawing: i });
  });
  const { sharesAt, work } = sharesByNode(leaving, solution.volts);
  return {
    work,
    upInto: (member, port) => {
      const node = circuit.nodeOf(member.index, port);
      const sums = new Map<number, number>();
      let net = 0;
      for (const i of circuit.conductorsAt.get(node) ?? []) {
        const ends = conductors[i];
        if (!ends || circuit.owners[i] !== member || ends.from === ends.to) continue;
        const ma = (ends.from === node ? 1 : -1) * (solution.conductorMa[i] ?? 0);
        net += ma;
        if (ma >= LEAST_MA) addTo(sums, sharesAt(ends.from === node ? ends.to : ends.from), ma);
      }
      drawings.forEach((drawing, i) => {
        const ma = solution.loadMa[i] ?? 0;
        if (drawing.member !== member || drawing.at !== node) return;
        net += ma;
        if (ma >= LEAST_MA) addTo(sums, new Map([[i, 1]]), ma);
      });
      return net >= LEAST_MA ? demandOf(sums, drawings) : NO_DEMAND;
    },
    shortBehind: (node) => mostlyShort(sharesAt(node), drawings),
  };
}

function addTo(sums: Map<number, number>, shares: Shares, ma: number): void {
  for (const [drawing, share] of shares) sums.set(drawing, (sums.get(drawing) ?? 0) + share * ma);
}

/** From the lowest voltage upwards: current only falls, so what is behind a node is known before the node is asked. */
function sharesByNode(
  leaving: ReadonlyMap<number, readonly Leaving[]>,
  volts: Float64Array,
): { readonly sharesAt: (node: number) => Shares; readonly work: number } {
  const known = new Map<number, Shares>();
  let work = 0;
  const rising = [...leaving.keys()].sort((a, b) => (volts[a] ?? 0) - (volts[b] ?? 0));
  for (const node of rising) {
    const ways = leaving.get(node) ?? [];
    const total = ways.reduce((sum, way) => sum + way.ma, 0);
    const shares = new Map<number, number>();
    for (const { ma, to, drawing } of ways) {
      const behind = drawing === undefined ? (known.get(to ?? -1) ?? NOBODY) : new Map([[drawing, 1]]);
      addTo(shares, behind, ma / total);
      work += behind.size;
    }
    known.set(node, shares);
  }
  return { sharesAt: (node) => known.get(node) ?? NOBODY, work };
}

const NOBODY: Shares = new Map();

function mostlyShort(shares: Shares, drawings: readonly Drawing[]): PartId | null {
  for (const [i, share] of shares) {
    const drawing = drawings[i];
    if (drawing?.kind === "short" && share > 0.5) return drawing.member.id;
  }
  return null;
}

function demandOf(sums: ReadonlyMap<number, number>, drawings: readonly Drawing[]): Demand {
  const draws = new Map<PartId, number>();
  let most = 0;
  let shortMa = 0;
  let shortedBy: PartId | null = null;
  for (const [i, ma] of [...sums].sort((a, b) => a[0] - b[0])) {
    const drawing = drawings[i];
    if (!drawing) continue;
    if (drawing.kind !== "short") {
      draws.set(drawing.member.id, (draws.get(drawing.member.id) ?? 0) + ma);
      continue;
    }
    shortMa += ma;
    if (ma > most) shortedBy = drawing.member.id;
    most = Math.max(most, ma);
  }
  const list = [...draws].map(([part, ma]): Draw => ({ part, milliamps: rounded(ma) }));
  const milliamps = rounded([...draws.values()].reduce((sum, ma) => sum + ma, 0));
  return { milliamps, draws: list, shortedBy: shortMa > milliamps ? shortedBy : null };
}

/** To a thousandth of a milliampere, so that the last digits of the arithmetic are no news. */
function rounded(ma: number): number {
  return Math.round(ma * 1000) / 1000;
}
