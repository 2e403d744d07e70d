/** Ways through a design along which a fault is felt. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { Service } from "../../signal/carrier.ts";
import { remembered } from "../../signal/remember.ts";

/** A part on a way, the port at which the way comes to it, and after how many joints. */
export type Passed = { readonly part: PartId; readonly port: string; readonly distance: number };

export type Ways = {
  /** What a signal passes before it comes to a part, nearest first, with the output that it leaves by. */
  readonly signalTo: (part: PartId) => readonly Passed[];
  /** What could feed a part and what lies between, nearest first, with the input that leads there. */
  readonly supplyTo: (part: PartId) => readonly Passed[];
};

/** The ways of one evaluation; each is gone once. */
export function waysOf(evaluation: Evaluation): Ways {
  const above = new Map<PartId, readonly Passed[]>();
  const below = new Map<PartId, readonly Passed[]>();
  return {
    signalTo: (part) => remembered(above, part, () => walk(evaluation, part, inputsOf)),
    supplyTo: (part) =>
      remembered(below, part, () =>
        walk(evaluation, part, (record, from) =>
          from === null ? fedAt(record) : suppliesBehind(record, from),
        ),
      ),
  };
}

type Onwards = (record: PartRecord, from: string | null) => readonly string[];

/** From joint to joint, each once. */
function walk(evaluation: Evaluation, start: PartId, onwards: Onwards): readonly Passed[] {
  const passed: Passed[] = [];
  const seen = new Set<string>();
  let row: readonly { readonly part: PartId; readonly port: string | null }[] = [{ part: start, port: null }];
  for (let distance = 1; row.length > 0; distance++) {
    const next: Passed[] = [];
    for (const { part, port } of row) {
      const record = evaluation.record(part);
      for (const own of record ? onwards(record, port) : []) {
        const end = record?.joined[own];
        if (!end || seen.has(`${end[0]}/${end[1]}`)) continue;
        seen.add(`${end[0]}/${end[1]}`);
        next.push({ part: end[0], port: end[1], distance });
      }
    }
    passed.push(...next);
    row = next;
  }
  return passed;
}

const inputs = new WeakMap<PartRecord, readonly string[]>();

function inputsOf(record: PartRecord): readonly string[] {
  return remembered(inputs, record, () => record.ports.filter((p) => p.side === "in").map((p) => p.id));
}

/** Where a part takes its supply, or is told how to stand. */
function fedAt(record: PartRecord): readonly string[] {
  return [...new Set([...(record.power.load?.ports ?? []), ...Object.keys(record.switches)])];
}

/** Outputs through which a part takes supply for one of its inputs; none where it blocks, or feeds it itself. */
function suppliesBehind({ power }: PartRecord, input: string): readonly string[] {
  if (power.supplies?.some((s) => s.port === input)) return [];
  return (power.paths ?? []).filter((p) => p.to === input).map((p) => p.from);
}

const services = new WeakMap<PartRecord, ReadonlySet<Service>>();

/** Services that come to a part or leave it, lost carriers included. */
export function servicesAt(record: PartRecord): ReadonlySet<Service> {
  return remembered(services, record, () => {
    const spectra = [...Object.values(record.inputs), ...Object.values(record.outputs)];
    return new Set(spectra.flatMap((s) => s.bands.map((b) => b.origin.service)));
  });
}
