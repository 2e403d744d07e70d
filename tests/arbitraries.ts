/**
 * Arbitrary designs from the catalogue: any kinds, any options within their ranges, any legal wires. What a
 * person would draw is among them, and much that nobody would.
 */
import fc from "fast-check";
import type { z } from "zod";
import { type Design, type Part, type PortRef, type Wire, wireId } from "../src/design/design.ts";
import { planJoin } from "../src/design/edits/join.ts";
import { portsOf } from "../src/design/lookup.ts";
import { checkOptions } from "../src/design/options.ts";
import { SETTINGS } from "../src/design/settings.ts";
import { CATALOGUE } from "../src/parts/catalogue.ts";
import type { AnyOptions, PartKind } from "../src/parts/contract.ts";
import { fieldMeta } from "../src/parts/fields.ts";

type Shape = Readonly<Record<string, z.ZodType>>;

/** Options of a kind: each left at its default, or anywhere in its range, ends included. */
export function anyOptions(kind: PartKind): fc.Arbitrary<AnyOptions> {
  return anyFields(kind.options.shape as Shape).map((raw) => {
    // A rule across fields may refuse a combination; the defaults then stand for it.
    const checked = checkOptions(kind, raw);
    return checked.ok ? checked.options : kind.options.parse({});
  });
}

function anyFields(shape: Shape): fc.Arbitrary<Record<string, unknown>> {
  const fields = Object.entries(shape).map(([key, schema]) => [key, anyValue(schema)] as const);
  return fc.record(Object.fromEntries(fields), { requiredKeys: [] });
}

function anyValue(schema: z.ZodType): fc.Arbitrary<unknown> {
  const meta = fieldMeta(schema);
  const [min, max] = [meta?.min ?? 0, meta?.max ?? 1];
  switch (meta?.control) {
    case "number":
      return fc.oneof(
        fc.constantFrom(min, max),
        // Minus zero is zero in a file.
        meta.step === 1
          ? fc.integer({ min: Math.ceil(min), max: Math.floor(max) })
          : fc.double({ min, max, noNaN: true }).map((n) => n + 0),
      );
    case "choice":
      return fc.constantFrom(...(meta.choices ?? []).map((choice) => choice.value));
    case "switch":
      return fc.boolean();
    case "text":
      return anyText(20);
    case "rows":
      return fc.array(anyFields((meta.row?.shape ?? {}) as Shape), { maxLength: 5 });
    default:
      return fc.constant(undefined);
  }
}

export function anyPart(kind: PartKind, id: string): fc.Arbitrary<Part> {
  const coordinate = fc.oneof(
    fc.integer({ min: -100, max: 100 }).map((n) => n * 8),
    fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((n) => n + 0),
  );
  return fc.record({
    id: fc.constant(id),
    kind: fc.constant(kind.kind),
    label: fc.oneof(fc.constant(`${kind.name} ${id}`), anyText(200)),
    options: anyOptions(kind),
    at: fc.tuple(coordinate, coordinate),
  });
}

/** Mostly short, sometimes as long as allowed (counted as JavaScript counts: a sign beyond 16 bits is two). */
function anyText(maxLength: number): fc.Arbitrary<string> {
  return fc.oneof(
    { weight: 4, arbitrary: fc.string({ unit: "binary", maxLength: Math.min(maxLength, 30) / 2 }) },
    { weight: 1, arbitrary: fc.string({ unit: "binary-ascii", minLength: maxLength / 2, maxLength }) },
  );
}

/** Ids as the program gives them, and as other hands might. */
const ID_STYLES: readonly ((prefix: string, n: number) => string)[] = [
  (prefix, n) => `${prefix}${n}`,
  (prefix, n) => `${prefix}0${n}`,
  (prefix, n) => `roof-${prefix}_${n}`,
  (_, n) => `${n}`,
];

export type AnyDesign = {
  readonly maxParts?: number;
  readonly kinds?: readonly PartKind[];
  /** Whether wires may close a circle, as they may in a file. */
  readonly loops?: boolean;
};

export function anyDesign({
  maxParts = 25,
  kinds = CATALOGUE,
  loops = false,
}: AnyDesign = {}): fc.Arbitrary<Design> {
  const parts = fc.array(fc.constantFrom(...kinds), { maxLength: maxParts }).chain((chosen) => {
    const ids = fc.constantFrom(...ID_STYLES);
    return ids.chain((id) => fc.tuple(...chosen.map((kind, i) => anyPart(kind, id(kind.prefix, i + 1)))));
  });
  const wishes = fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: maxParts * 3 });
  const settings = fc.option(anyFields(SETTINGS.shape as Shape).map((raw) => SETTINGS.parse(raw)));
  return fc
    .tuple(fc.string({ maxLength: 20 }), fc.option(fc.string({ maxLength: 40 })), settings, parts, wishes)
    .map(([title, lesson, set, all, wanted]) =>
      joined(
        {
          title,
          ...(lesson === null ? {} : { lesson }),
          ...(set === null ? {} : { settings: set }),
          parts: all,
          wires: [],
        },
        wanted,
        loops,
      ),
    );
}

/** A design with other designs resting in it as variants, at most as many parts in all as it may hold. */
export function anyVariants(o: AnyDesign = {}): fc.Arbitrary<Design> {
  const name = fc.string({ unit: "binary", minLength: 1, maxLength: 20 }).filter((s) => s.trim() !== "");
  const resting = fc.uniqueArray(fc.tuple(name, anyDesign({ maxParts: 8, ...o })), {
    maxLength: 4,
    selector: ([called]) => called,
  });
  return fc
    .tuple(anyDesign({ maxParts: 8, ...o }), fc.option(name), resting)
    .map(([design, called, list]) => {
      const variants = list
        .filter(([each]) => each !== (called ?? "As built"))
        .map(([each, { parts, wires }]) => ({ name: each, parts, wires }));
      return {
        ...design,
        ...(called === null ? {} : { variant: called }),
        ...(variants.length === 0 ? {} : { variants }),
      };
    });
}

/** Joins free outputs to free inputs as the numbers choose, so that shrinking the numbers shrinks the wiring. */
function joined(start: Design, wishes: readonly (readonly [number, number])[], loops: boolean): Design {
  let design = start;
  const free = start.parts.flatMap((part) =>
    portsOf(part).map((port) => ({ port, ref: refOf(part, port.id) })),
  );
  for (const [a, b] of wishes) {
    const source = pick(
      free.filter(({ port }) => port.side === "out"),
      a,
    );
    if (!source) break;
    const { medium } = source.port;
    const target = pick(
      free.filter(({ port }) => port.side === "in" && port.medium === medium),
      b,
    );
    if (!target) continue;
    const wire: Wire = { from: source.ref, to: target.ref };
    const edit = planJoin(design, wire.from, wire.to);
    if (!edit.ok && !loops) continue;
    design = edit.ok ? edit.design : { ...design, wires: [...design.wires, wire] };
    for (const used of [source, target]) free.splice(free.indexOf(used), 1);
  }
  return design;
}

function refOf(part: Part, port: string): PortRef {
  return [part.id, port];
}

function pick<T>(list: readonly T[], n: number): T | undefined {
  return list[n % Math.max(1, list.length)];
}

/** Ids of some of the parts and wires of a design. */
export function someOf(design: Design): fc.Arbitrary<{ parts: Set<string>; wires: Set<string> }> {
  const subset = (ids: string[]) => fc.subarray(ids).map((chosen) => new Set(chosen));
  return fc.record({
    parts: subset(design.parts.map((part) => part.id)),
    wires: subset(design.wires.map(wireId)),
  });
}
