/** Inputs that lead to an output of a part, and what they are meant for. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { Path } from "../parts/contract.ts";
import type { Polarisation, SkyHalf } from "../signal/carrier.ts";
import { remembered } from "../signal/remember.ts";
import type { Plane } from "./missing.ts";

/** An input, with what its way to the output takes. */
export type Inlet = {
  readonly port: string;
  readonly polarisation?: Polarisation;
  readonly half?: SkyHalf;
  /** Of a switch between satellites: the position that selects this input. */
  readonly position?: string;
  /** A switch or a stacking unit expects one plane, or one polarisation, at this input. */
  readonly isMeant: boolean;
};

const known = new WeakMap<PartRecord, readonly (Inlet & { readonly to: string })[]>();

/** Inputs by which a signal can get to an output, or to any: as if the part were supplied. */
export function inletsOf(record: PartRecord, to?: string): readonly Inlet[] {
  const all = remembered(known, record, () => findInlets(record));
  return to === undefined ? all : all.filter((inlet) => inlet.to === to);
}

/** Whether a plane could come in there; a terrestrial signal comes in wherever no plane is meant. */
export function mayCarry(inlet: Inlet, plane: Plane | undefined): boolean {
  if (!plane) return !inlet.isMeant;
  if (inlet.polarisation && inlet.polarisation !== plane.polarisation) return false;
  return !inlet.half || inlet.half === plane.half;
}

function findInlets({ part, kind, options, ports }: PartRecord): readonly (Inlet & { to: string })[] {
  const declared = new Map(
    ports.flatMap((p) => (p.side === "in" && p.plane ? [[p.id, p.plane] as const] : [])),
  );
  const { paths = [], stacks = [] } = kind.signal(options, { id: part.id, powered: true });
  const isInput = (node: string) => ports.some((p) => p.id === node && p.side === "in");
  const found = new Map<string, Inlet & { to: string }>();
  const goUp = (node: string, to: string, way: Omit<Inlet, "port">, passed: readonly string[]): void => {
    if (isInput(node)) {
      const { polarisation, half, position } = declared.get(node) ?? {};
      const own = {
        ...way,
        ...(polarisation ? { polarisation, isMeant: true } : {}),
        ...(half ? { half } : {}),
        ...(position ? { position: String(position) } : {}),
      };
      found.set(JSON.stringify([node, to, own]), { ...own, port: node, to });
      return;
    }
    if (passed.includes(node)) return;
    for (const path of paths)
      if (path.to === node) goUp(path.from, to, narrowed(way, path, isInput(path.from)), [...passed, node]);
  };
  for (const { id, side } of ports) {
    if (side !== "out") continue;
    for (const path of paths)
      if (path.to === id) goUp(path.from, id, narrowed({ isMeant: false }, path, isInput(path.from)), [id]);
    for (const stack of stacks)
      if (stack.to === id) for (const node of stack.from) goUp(node, id, { isMeant: false }, [id]);
  }
  return [...found.values()];
}

/** What one more path takes. A converter picks a plane out of the sky; a switch expects one on its input. */
function narrowed(
  way: Omit<Inlet, "port">,
  { takes, condition, loMHz }: Path,
  fromInput: boolean,
): Omit<Inlet, "port"> {
  const setting = condition?.setting ?? "";
  const quadrant = /([VH])([LH])$/.exec(setting);
  const position = /^(\d+)/.exec(setting)?.[1];
  const polarisation = takes?.polarisation ?? (quadrant?.[1] as Polarisation | undefined);
  const half = takes?.half ?? (quadrant ? (quadrant[2] === "L" ? "low" : "high") : undefined);
  const isMeant = fromInput && loMHz === undefined && (polarisation !== undefined || half !== undefined);
  return {
    ...way,
    ...(polarisation ? { polarisation } : {}),
    ...(half ? { half } : {}),
    ...(position ? { position } : {}),
    isMeant: way.isMeant || isMeant,
  };
}
