/** Where parts stand among each other, by the signal and never by the order in which they were drawn. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { remembered } from "../../signal/remember.ts";

/** Place of each part: sources first, receivers last. */
export type SignalOrder = ReadonlyMap<PartId, number>;

/**
 * Parts by their distance from the sources; at the same distance in the order of the outputs that feed them, so that
 * rooms stand in the order of a multiswitch. Sources, and what else is left, by what they are and what they are joined
 * to, and only among twins by label and by where they lie on the canvas. Neither ids nor the order of drawing matter.
 */
export function signalOrderOf(evaluation: Evaluation): SignalOrder {
  return remembered(known, evaluation, () => orderOf(evaluation));
}

const known = new WeakMap<Evaluation, SignalOrder>();

type Ranked = { readonly record: PartRecord; readonly depth: number; readonly shape: number };

function orderOf(evaluation: Evaluation): SignalOrder {
  const { records } = evaluation;
  const depths = depthsOf(records);
  const shape = shapesOf(records, depths);
  const byDepth = new Map<number, Ranked[]>();
  records.forEach((record, i) => {
    const depth = depths[i] ?? 0;
    byDepth.set(depth, [...(byDepth.get(depth) ?? []), { record, depth, shape: shape[i] ?? 0 }]);
  });
  const order = new Map<PartId, number>();
  for (const depth of [...byDepth.keys()].sort((a, b) => a - b)) {
    const fed = (byDepth.get(depth) ?? []).map((one) => ({
      ...one,
      by: feederOf(one.record, evaluation, order),
    }));
    fed.sort((a, b) => compareFeeders(a.by, b.by) || compareTwins(a, b));
    for (const { record } of fed) order.set(record.part.id, order.size);
  }
  return order;
}

/** The first part that feeds it, by its place, and by which of its outputs; absent at a source. */
type Feeder = readonly [place: number, output: number];

function feederOf(record: PartRecord, evaluation: Evaluation, order: SignalOrder): Feeder | undefined {
  return inputsOf(record)
    .flatMap(([id, port]): Feeder[] => {
      const place = order.get(id);
      if (place === undefined) return [];
      return [[place, evaluation.record(id)?.ports.findIndex((p) => p.id === port) ?? 0]];
    })
    .sort(compareFeeders)[0];
}

function compareFeeders(a: Feeder | undefined, b: Feeder | undefined): number {
  if (!a || !b) return Number(!a) - Number(!b);
  return a[0] - b[0] || a[1] - b[1];
}

function compareTwins(a: Ranked, b: Ranked): number {
  return (
    a.shape - b.shape ||
    inOrder(a.record.part.label, b.record.part.label) ||
    a.record.part.at[1] - b.record.part.at[1] ||
    a.record.part.at[0] - b.record.part.at[0]
  );
}

/** The longest way from any source, counted in parts; wires within a loop do not count. */
function depthsOf(records: readonly PartRecord[]): readonly number[] {
  const indexOf = new Map(records.map((r, i) => [r.part.id, i]));
  const known = new Map<number, number>();
  const above = (i: number) =>
    inputsOf(records[i]).flatMap(([id]) => {
      const from = indexOf.get(id);
      return from === undefined || (records[from]?.looped && records[i]?.looped) ? [] : [from];
    });
  for (const start of records.keys()) {
    const open = [start];
    while (open.length > 0) {
      const i = open[open.length - 1] ?? start;
      const before = known.has(i) ? [] : above(i);
      const unknown = before.filter((n) => !known.has(n));
      if (unknown.length > 0) {
        open.push(...unknown);
        continue;
      }
      if (!known.has(i))
        known.set(
          i,
          before.reduce((most, n) => Math.max(most, (known.get(n) ?? 0) + 1), 0),
        );
      open.pop();
    }
  }
  return records.map((_, i) => known.get(i) ?? 0);
}

function inputsOf(record: PartRecord | undefined): readonly (readonly [PartId, string])[] {
  return (record?.ports ?? []).flatMap((port) => {
    const end = port.side === "in" ? record?.joined[port.id] : undefined;
    return end ? [end] : [];
  });
}

/** Rounds after which parts that still look alike are taken for twins. */
const MOST_ROUNDS = 16;

/** A number for each part, equal only where the surroundings are: refined from neighbour to neighbour. */
function shapesOf(records: readonly PartRecord[], depths: readonly number[]): readonly number[] {
  const indexOf = new Map(records.map((r, i) => [r.part.id, i]));
  const joints = records.map(({ joined }) =>
    Object.entries(joined).map(([own, [id, other]]) => ({
      ends: `${own}>${other}`,
      to: indexOf.get(id) ?? -1,
    })),
  );
  let shapes = ranked(records.map((r, i) => `${depths[i]} ${r.kind.kind} ${textOf(r.part.options)}`));
  for (let round = 0; round < MOST_ROUNDS && shapes.count < records.length; round++) {
    const { of } = shapes;
    const next = ranked(
      joints.map(
        (joint, i) =>
          `${of[i]} ${joint
            .map(({ ends, to }) => `${ends}${of[to]}`)
            .sort()
            .join(" ")}`,
      ),
    );
    if (next.count === shapes.count) break;
    shapes = next;
  }
  return shapes.of;
}

/** Texts as places in their order; equal texts share one. */
function ranked(texts: readonly string[]): { readonly of: readonly number[]; readonly count: number } {
  const rank = new Map([...new Set(texts)].sort(inOrder).map((text, n) => [text, n]));
  return { of: texts.map((text) => rank.get(text) ?? 0), count: rank.size };
}

function inOrder(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

const texts = new WeakMap<object, string>();

/** Options as a text; they are complete and stand in the order of their schema. */
function textOf(options: object): string {
  return remembered(texts, options, () => JSON.stringify(options));
}
