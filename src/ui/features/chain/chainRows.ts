/** The design as a list: each run from a source downwards, indented only where it splits. */
import { type Design, type PartId, type Wire, wireId } from "../../../design/design.ts";

export type ChainRow = {
  /** Unique in the list: a part that is reached by two ways stands in it twice. */
  readonly key: string;
  readonly type: "part" | "wire";
  /** Part id or wire id. */
  readonly id: string;
  /** Depth of nesting, from 1: how many splits lie above. */
  readonly level: number;
  /** The part stands further up already, with all that follows it. */
  readonly again: boolean;
  /** Ways out of a part that splits; 0 for all others. */
  readonly branches: number;
};

type Task = { readonly part: PartId; readonly wire?: Wire; readonly level: number };

/**
 * Rows from the sources to the receivers; parts in `folded` keep their branches to themselves.
 * Every part is listed, also on loops and where nothing is joined.
 */
export function chainRows(design: Design, folded: ReadonlySet<PartId>): readonly ChainRow[] {
  const outgoing = new Map<PartId, Wire[]>();
  const fed = new Set<PartId>();
  for (const wire of design.wires) {
    const list = outgoing.get(wire.from[0]);
    if (list) list.push(wire);
    else outgoing.set(wire.from[0], [wire]);
    fed.add(wire.to[0]);
  }
  const rows: ChainRow[] = [];
  const seen = new Set<PartId>();
  const follow = (start: PartId) => {
    // A stack of our own: a chain of thousands of parts must not exhaust the call stack.
    const tasks: Task[] = [{ part: start, level: 1 }];
    for (let task = tasks.pop(); task; task = tasks.pop()) {
      const { part, wire, level } = task;
      if (wire) {
        const id = wireId(wire);
        rows.push({ key: id, type: "wire", id, level, again: false, branches: 0 });
      }
      const again = seen.has(part);
      seen.add(part);
      const ways = again ? [] : (outgoing.get(part) ?? []);
      const splits = ways.length > 1;
      // The wire that leads to a repeated part tells its rows apart, whatever else the design gains or loses.
      const key = again && wire ? `${part} by ${wireId(wire)}` : part;
      rows.push({ key, type: "part", id: part, level, again, branches: splits ? ways.length : 0 });
      const next = ways.map((way) => ({ part: way.to[0], wire: way, level: splits ? level + 1 : level }));
      if (splits && folded.has(part)) hide(next, seen, outgoing);
      else tasks.push(...next.reverse());
    }
  };
  for (const part of design.parts) if (!fed.has(part.id)) follow(part.id);
  // What is left lies on loops, and has no beginning.
  for (const part of design.parts) if (!seen.has(part.id)) follow(part.id);
  return rows;
}

/** Marks what hangs below a folded part as listed, so that it doesn't turn up as a loop of its own. */
function hide(
  tasks: readonly Task[],
  seen: Set<PartId>,
  outgoing: ReadonlyMap<PartId, readonly Wire[]>,
): void {
  const rest = tasks.map((t) => t.part);
  for (let part = rest.pop(); part !== undefined; part = rest.pop()) {
    if (seen.has(part)) continue;
    seen.add(part);
    rest.push(...(outgoing.get(part) ?? []).map((w) => w.to[0]));
  }
}
