/** Dead ends of cable: what hangs on a joint of lines and ends open or shorted. */
import type { DeadEnd, Path, SignalTreatment } from "../parts/contract.ts";
import { metresOf } from "../parts/meanings.ts";
import type { Stub } from "../rf/stub.ts";
import { gainDbAt } from "../signal/gain.ts";
import { flat, type Response, series } from "../signal/response.ts";
import { type Cell, NOTHING } from "./cell.ts";
import { neighbourOf, ownCell, type Sweep } from "./sweep.ts";

/** A passive part that loses more than this lets nothing through that would be worth a notch [dB]. */
const STOPS_DB = 12;
/** The frequency at which that is asked [MHz]. */
const MIDDLE_MHZ = 600;

/** Looks along the legs of every joint; one on which something else hangs than before is marked for the signals. */
export function findDeadEnds(sweep: Sweep): void {
  for (let i = 0; i < sweep.cells.length; i++) {
    const cell = sweep.cells[i];
    if (!cell?.traits.kind.joinsLines || cell.looped) continue;
    const now = deadEndsOf(sweep, i, cell);
    if (isSame(now, cell.deadEnds)) continue;
    const own = ownCell(sweep, i);
    if (!own) continue;
    own.deadEnds = now;
    own.treatment = undefined;
    sweep.signals[sweep.structure.place[i] ?? 0] = 1;
  }
}

function deadEndsOf(sweep: Sweep, i: number, { traits }: Cell): Readonly<Record<string, DeadEnd>> {
  const found = traits.outputs.flatMap((leg): [string, DeadEnd][] => {
    const dead = deadEndAt(sweep, i, leg);
    return dead ? [[leg, dead]] : [];
  });
  return found.length > 0 ? Object.fromEntries(found) : NOTHING;
}

function isSame(a: Readonly<Record<string, DeadEnd>>, b: Readonly<Record<string, DeadEnd>>): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}

/** What hangs on an output, if it is a length of cable that ends open or shorted; undefined where the line is in use. */
function deadEndAt(sweep: Sweep, i: number, port: string): DeadEnd | undefined {
  const seen = new Set<number>();
  const parts: string[] = [];
  const losses: Response[] = [];
  let electricalM = 0;
  let lengthM = 0;
  let end: Stub["end"] = "open";
  let next = neighbourOf(sweep, i, port);
  while (next) {
    const { index, port: input } = next;
    const cell = sweep.cells[index];
    if (!cell || cell.looped || seen.has(index)) return undefined;
    const treatment = treatmentOf(cell);
    const ways = (treatment.paths ?? []).filter((path) => path.from === input);
    const [way] = ways;
    if (!way || ways.length > 1 || !isPassive(way)) return undefined;
    seen.add(index);
    parts.push(cell.part.id);
    if (cell.traits.kind.trade.defect && -gainDbAt(way.response, MIDDLE_MHZ) > STOPS_DB) {
      end = cell.traits.power.shorts?.length ? "shorted" : "open";
      break;
    }
    losses.push(way.response);
    electricalM += treatment.electricalM ?? 0;
    lengthM += metresOf(cell.traits.kind, cell.part.options) ?? 0;
    next = neighbourOf(sweep, index, way.to);
  }
  if (electricalM === 0) return undefined;
  const [only, ...more] = losses;
  return {
    stub: { electricalM, end },
    loss: !only ? flat(0) : more.length > 0 ? series(...losses) : only,
    lengthM,
    parts,
  };
}

/** Supplies are settled by now: what a part does to signals can be asked before they come by. */
function treatmentOf(cell: Cell): SignalTreatment {
  const { part, traits, powered } = cell;
  return cell.treatment ?? traits.kind.signal(part.options, { id: part.id, powered });
}

function isPassive({ noiseFigureDb, rating, loMHz }: Path): boolean {
  return noiseFigureDb === undefined && rating === undefined && !loMHz;
}
