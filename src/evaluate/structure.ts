/** The graph behind a design: who is joined to whom, in which order to work, and what lies on a loop. */
import type { Design, PartId } from "../design/design.ts";

type Ends = Readonly<Record<string, readonly [PartId, string]>>;

/** The same by index, for the sweeps: a look-up of an id per port and part is what they would spend most on. */
type Neighbours = Readonly<Record<string, { readonly index: number; readonly port: string }>>;

export type Structure = {
  readonly indexOf: ReadonlyMap<PartId, number>;
  /** For each part: port id → [part, port] at the other end. */
  readonly joined: readonly Ends[];
  readonly neighbours: readonly Neighbours[];
  /** Indices of the parts from sources to receivers; parts on loops stand where their loop does. */
  readonly order: Int32Array;
  /** Where each part stands in the order. */
  readonly place: Int32Array;
  /** 1 for a part that lies on a loop. */
  readonly looped: Uint8Array;
};

/** Structure of a design; the former one when neither the wires nor the list of part ids changed. */
export function structureOf(design: Design, before?: { design: Design; structure: Structure }): Structure {
  if (before && before.design.wires === design.wires && sameIds(before.design, design))
    return before.structure;
  const { parts, wires } = design;
  const indexOf = new Map(parts.map((part, i) => [part.id, i]));
  // Null prototypes: a port could bear any name, and "constructor" is not a joint.
  const joined = parts.map((): Record<string, readonly [PartId, string]> => Object.create(null));
  const neighbours = parts.map((): Record<string, { index: number; port: string }> => Object.create(null));
  const downstream: number[][] = parts.map(() => []);
  for (const { from, to } of wires) {
    const a = indexOf.get(from[0]);
    const b = indexOf.get(to[0]);
    const endA = a === undefined ? undefined : joined[a];
    const endB = b === undefined ? undefined : joined[b];
    if (a === undefined || b === undefined || !endA || !endB) continue;
    if (endA[from[1]] || endB[to[1]]) continue;
    endA[from[1]] = to;
    endB[to[1]] = from;
    Object.assign(neighbours[a] ?? {}, { [from[1]]: { index: b, port: to[1] } });
    Object.assign(neighbours[b] ?? {}, { [to[1]]: { index: a, port: from[1] } });
    downstream[a]?.push(b);
  }
  const { order, looped } = sorted(downstream);
  const place = new Int32Array(parts.length);
  order.forEach((i, k) => {
    place[i] = k;
  });
  return { indexOf, joined, neighbours, order, place, looped };
}

function sameIds(a: Design, b: Design): boolean {
  if (a.parts === b.parts) return true;
  if (a.parts.length !== b.parts.length) return false;
  for (let i = 0; i < a.parts.length; i++) {
    const part = a.parts[i];
    if (part !== b.parts[i] && part?.id !== b.parts[i]?.id) return false;
  }
  return true;
}

/**
 * Tarjan's strongly connected components, without recursion: a component comes out after everything
 * downstream of it, so the reverse is the working order; one with an inner edge is a loop.
 */
function sorted(downstream: readonly (readonly number[])[]): { order: Int32Array; looped: Uint8Array } {
  const n = downstream.length;
  const seen = new Int32Array(n);
  const low = new Int32Array(n);
  const next = new Int32Array(n);
  const open = new Uint8Array(n);
  const looped = new Uint8Array(n);
  const backwards: number[] = [];
  const stack: number[] = [];
  let clock = 0;

  for (let root = 0; root < n; root++) {
    if (seen[root]) continue;
    const path = [root];
    while (path.length > 0) {
      const v = path[path.length - 1] ?? root;
      if (!seen[v]) {
        clock++;
        seen[v] = clock;
        low[v] = clock;
        open[v] = 1;
        stack.push(v);
      }
      const targets = downstream[v] ?? [];
      const step = next[v] ?? 0;
      if (step < targets.length) {
        next[v] = step + 1;
        const w = targets[step] ?? v;
        if (!seen[w]) path.push(w);
        else if (open[w]) low[v] = Math.min(low[v] ?? 0, seen[w] ?? 0);
        continue;
      }
      path.pop();
      const parent = path[path.length - 1];
      if (parent !== undefined) low[parent] = Math.min(low[parent] ?? 0, low[v] ?? 0);
      if (low[v] === seen[v]) closeComponent(v, downstream, { stack, open, looped, backwards });
    }
  }
  return { order: Int32Array.from(backwards.reverse()), looped };
}

function closeComponent(
  root: number,
  downstream: readonly (readonly number[])[],
  state: { stack: number[]; open: Uint8Array; looped: Uint8Array; backwards: number[] },
): void {
  const members: number[] = [];
  for (;;) {
    const v = state.stack.pop();
    if (v === undefined) break;
    state.open[v] = 0;
    members.push(v);
    if (v === root) break;
  }
  const onLoop = members.length > 1 || (downstream[root] ?? []).includes(root);
  for (const v of members) {
    if (onLoop) state.looped[v] = 1;
    state.backwards.push(v);
  }
}
