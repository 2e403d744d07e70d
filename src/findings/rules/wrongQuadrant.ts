import type { PartId, PortRef } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { traceCarrier } from "../../evaluate/trace.ts";
import type { Draft } from "../finding.ts";
import { isAsked, type LooseFeed, missingPlanes, type PlaneInput, planeInputs } from "../planeInputs.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";

export type WrongQuadrantFacts =
  /** Two leads, or more in a ring, sit on each other's inputs. */
  | { readonly kind: "swapped"; readonly ports: readonly string[] }
  /** One lead sits where another plane belongs; `foreign`: where it comes from another satellite. */
  | {
      readonly kind: "misplaced";
      readonly expects: string;
      readonly gets: string;
      readonly foreign?: { readonly dish: PartId; readonly satellite: string };
    }
  /** An LNB whose outputs hold no quadrant of their own. */
  | {
      readonly kind: "no quattro";
      readonly feed: LooseFeed;
      readonly ports: readonly string[];
      readonly converter: PartId;
    }
  /** Nothing is connected, so the plane is missing for all behind. */
  | { readonly kind: "open"; readonly expects: string };

type Drafted = Draft<"wrong-quadrant">;

/** A multiswitch input that is not fed with the quadrant it is meant for. */
export const wrongQuadrant: RuleOf<"wrong-quadrant"> = {
  id: "wrong-quadrant",
  check: ({ record }) => {
    const inputs = planeInputs(record);
    return inputs.length === 0
      ? []
      : [...looseFeeds(record, inputs), ...wrongLeads(record, inputs), ...openPlanes(record)];
  },
  blame: (draft, evaluation) => {
    const { facts, at } = draft;
    if (facts.kind === "open") return draft;
    if (facts.kind === "no quattro") {
      const converter = converterAbove(evaluation, at.part, at.port ?? "") ?? facts.converter;
      return { ...draft, parts: culpritFirst(converter, [at.part]), facts: { ...facts, converter } };
    }
    const first = firstWrong(evaluation, at.part, at.port ?? "");
    return first === at.part ? draft : { ...draft, parts: culpritFirst(first, [at.part, ...draft.parts]) };
  },
};

function common(record: PartRecord, ports: readonly string[]) {
  return {
    severity: "error" as const,
    parts: [record.part.id] as const,
    wires: ports.flatMap((port) => wireIdsAt(record, port)),
  };
}

/** One finding for each LNB that does not hold the quadrants apart. */
function looseFeeds(record: PartRecord, inputs: readonly PlaneInput[]): readonly Drafted[] {
  const byDish = new Map<PartId, { readonly feed: LooseFeed; readonly ports: string[] }>();
  for (const { port, gets } of inputs) {
    if (gets.kind !== "loose") continue;
    const known = byDish.get(gets.dish);
    if (known) known.ports.push(port);
    else byDish.set(gets.dish, { feed: gets.feed, ports: [port] });
  }
  return [...byDish].map(([dish, { feed, ports }]) => ({
    ...common(record, ports),
    at: { part: record.part.id, port: ports[0] ?? "", service: "satellite", band: feed },
    facts: { kind: "no quattro", feed, ports, converter: dish },
  }));
}

/** Leads on inputs of other planes: swaps are one finding, whatever else is wrong is one for each lead. */
function wrongLeads(record: PartRecord, inputs: readonly PlaneInput[]): readonly Drafted[] {
  const home = homes(inputs);
  const moved = new Map<string, string | undefined>();
  for (const input of inputs) {
    const { gets } = input;
    if (gets.kind !== "plane") continue;
    const to = home.get(`${satelliteKey(gets)}/${gets.quadrant}`);
    if (to !== input.port) moved.set(input.port, to);
  }
  const found: Drafted[] = [];
  const told = new Set<string>();
  for (const input of inputs) {
    const { port, gets, plane } = input;
    if (!moved.has(port) || told.has(port) || gets.kind !== "plane") continue;
    const ring = ringFrom(port, moved);
    for (const each of ring ?? [port]) told.add(each);
    const at = { part: record.part.id, port, service: "satellite" as const };
    if (ring) {
      const ports = inputs.map((i) => i.port).filter((p) => ring.includes(p));
      found.push({ ...common(record, ports), at, facts: { kind: "swapped", ports } });
      continue;
    }
    const isForeign = gets.quadrant === input.quadrant;
    found.push({
      ...common(record, [port]),
      at,
      facts: {
        kind: "misplaced",
        expects: plane,
        gets: gets.quadrant,
        ...(isForeign ? { foreign: { dish: gets.dish, satellite: gets.satellite } } : {}),
      },
    });
  }
  return found;
}

/** A satellite as one dish sees it: two LNBs beside each other have one dish and two satellites. */
function satelliteKey({ dish, satellite }: { readonly dish: PartId; readonly satellite: string }): string {
  return `${dish}/${satellite}`;
}

/** The input where each plane belongs: every satellite of the part is the one that most of its inputs get. */
function homes(inputs: readonly PlaneInput[]): ReadonlyMap<string, string> {
  const counts = new Map<string, Map<string, number>>();
  for (const { satellite, gets } of inputs) {
    if (gets.kind !== "plane") continue;
    const own = counts.get(satellite) ?? new Map<string, number>();
    const key = satelliteKey(gets);
    counts.set(satellite, own.set(key, (own.get(key) ?? 0) + 1));
  }
  const taken = new Set<string>();
  const home = new Map<string, string>();
  const byCertainty = [...counts].sort((a, b) => most(b[1]) - most(a[1]));
  for (const [satellite, arriving] of byCertainty) {
    const [key] = [...arriving].filter(([each]) => !taken.has(each)).sort((a, b) => b[1] - a[1])[0] ?? [];
    if (key === undefined) continue;
    taken.add(key);
    for (const input of inputs)
      if (input.satellite === satellite) home.set(`${key}/${input.quadrant}`, input.port);
  }
  return home;
}

function most(counts: ReadonlyMap<string, number>): number {
  return Math.max(...counts.values());
}

/** Ports whose leads sit in a ring on each other's places; undefined where the way does not come back. */
function ringFrom(start: string, moved: ReadonlyMap<string, string | undefined>) {
  const ring = [start];
  for (let next = moved.get(start); next !== undefined; next = moved.get(next)) {
    if (next === start) return ring;
    if (ring.includes(next)) return undefined;
    ring.push(next);
  }
  return undefined;
}

function openPlanes(record: PartRecord): readonly Drafted[] {
  if (!isAsked(record)) return [];
  // An LNB that holds the quadrants together has no outputs for the open ones.
  const loose = new Set(planeInputs(record).flatMap((i) => (i.gets.kind === "loose" ? [i.satellite] : [])));
  return missingPlanes(record)
    .filter(({ gets, satellite }) => gets.kind === "nothing connected" && !loose.has(satellite))
    .map(({ port, plane }) => ({
      ...common(record, []),
      at: { part: record.part.id, port, service: "satellite", band: plane },
      facts: { kind: "open", expects: plane },
    }));
}

/** The part that brings the sky band down, on the way to an input. */
function converterAbove(evaluation: Evaluation, part: PartId, port: string): PartId | undefined {
  const record = evaluation.record(part);
  const far = record?.joined[port];
  const gets = record && planeInputs(record).find((input) => input.port === port)?.gets;
  if (!far || gets?.kind !== "loose") return undefined;
  if (gets.band.stack) return gets.band.stack.part;
  const carrier = { origin: gets.band.origin.key, index: gets.band.grid.index[0] ?? 0 };
  const steps = traceCarrier(evaluation, { part: far[0], port: far[1] }, carrier);
  return steps.find((step) => step.loMHz !== undefined)?.part;
}

/** The first unit of a cascade at which a lead is wrong: those behind it only hand it on. */
function firstWrong(evaluation: Evaluation, part: PartId, port: string): PartId {
  let wrong = part;
  let here: PortRef | undefined = evaluation.record(part)?.joined[port];
  // A cascade is no longer than the design; loops bring no signal, so this only guards.
  for (let guard = evaluation.records.length; here && guard > 0; guard--) {
    const [id, output] = here;
    const above = evaluation.record(id);
    const from = above?.treatment.paths?.find((p) => p.to === output && !p.condition)?.from;
    if (!above || from === undefined) break;
    const isWrong = wrongLeads(above, planeInputs(above)).some(
      ({ at, facts }) => at.port === from || (facts.kind === "swapped" && facts.ports.includes(from)),
    );
    if (isWrong) wrong = id;
    here = above.joined[from];
  }
  return wrong;
}
