/** Which finding follows from which. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { isBroken } from "../../parts/meanings.ts";
import type { Finding, Severity } from "../finding.ts";
import { type Mechanism, mechanismOf } from "./mechanisms.ts";
import type { SignalOrder } from "./signalOrder.ts";
import { type Passed, servicesAt, type Ways } from "./ways.ts";

/** A finding with how it comes about. */
export type Node = {
  readonly finding: Finding;
  readonly mechanism: Mechanism;
  readonly culprit: PartId;
};

export type Folding = {
  readonly evaluation: Evaluation;
  readonly order: SignalOrder;
  readonly ways: Ways;
};

export const WEIGHT: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

export function nodeOf(finding: Finding): Node {
  return { finding, mechanism: mechanismOf(finding), culprit: finding.parts[0] };
}

/** The finding from which each follows in the end; of a root it is itself. */
export function rootsOf(nodes: readonly Node[], folding: Folding): ReadonlyMap<Node, Node> {
  const place = (part: PartId) => folding.order.get(part) ?? 0;
  const sorted = [...nodes].sort(
    (a, b) =>
      a.mechanism.stage - b.mechanism.stage ||
      place(a.finding.at.part) - place(b.finding.at.part) ||
      WEIGHT[a.finding.severity] - WEIGHT[b.finding.severity],
  );
  const roots = new Map<Node, Node>();
  const placed: Placed = { byCulprit: new Map(), byPlace: new Map(), quarrels: new Map() };
  for (const node of sorted) {
    const parent = originOf(node, placed, folding);
    roots.set(node, (parent && roots.get(parent)) ?? node);
    // Of findings that would be taken for the same cause by the same right, one is enough.
    const isKnown = placed.byCulprit
      .get(node.culprit)
      ?.some((n) => isLike(n, node) && roots.get(n) === roots.get(node));
    if (!isKnown) listed(placed.byCulprit, node.culprit, node);
    listed(placed.byPlace, node.finding.at.part, node);
    if (isQuarrel(node)) for (const part of new Set(node.finding.parts)) listed(placed.quarrels, part, node);
  }
  return roots;
}

/** Findings that came before: only from those can one follow, so nothing ever follows from itself. */
type Placed = {
  readonly byCulprit: Map<PartId, Node[]>;
  readonly byPlace: Map<PartId, Node[]>;
  /** Findings about several that get in each other's way, by every part that they name. */
  readonly quarrels: Map<PartId, Node[]>;
};

function isLike(a: Node, b: Node): boolean {
  return (
    a.finding.rule === b.finding.rule &&
    a.finding.severity === b.finding.severity &&
    a.mechanism.natures === b.mechanism.natures &&
    a.mechanism.takes === b.mechanism.takes
  );
}

function isQuarrel({ mechanism: { takes } }: Node): boolean {
  return !takes.includes("signal") && (takes.includes("user band") || takes.includes("command"));
}

function listed(index: Map<PartId, Node[]>, key: PartId, node: Node): void {
  const list = index.get(key);
  if (list) list.push(node);
  else index.set(key, [node]);
}

/** How sure it is that one finding follows from another. */
const SURENESS = {
  /** What it lacks is taken by the culprit that it names. */
  fromCulprit: 3,
  /** Both name the same culprit, for a like reason. */
  sameCulprit: 2,
  /** What it lacks is taken on the way to it. */
  onTheWay: 1,
} as const;

type Candidate = { readonly node: Node; readonly sureness: number; readonly distance: number };

/** The finding that explains another best: surest, gravest, earliest in kind, nearest. */
function originOf(node: Node, placed: Placed, folding: Folding): Node | undefined {
  const named = atCulprit(node, placed, folding);
  const candidates = named.length > 0 ? named : onTheWay(node, placed, folding);
  let best: Candidate | undefined;
  for (const one of candidates) if (!best || compare(one, best) < 0) best = one;
  return best?.node;
}

function compare(a: Candidate, b: Candidate): number {
  return (
    b.sureness - a.sureness ||
    WEIGHT[a.node.finding.severity] - WEIGHT[b.node.finding.severity] ||
    a.node.mechanism.stage - b.node.mechanism.stage ||
    a.distance - b.distance
  );
}

function atCulprit(
  node: Node,
  { byCulprit, byPlace, quarrels }: Placed,
  { ways, evaluation }: Folding,
): readonly Candidate[] {
  const culprit = evaluation.record(node.culprit);
  // Whatever a broken part does, it does because of its defect.
  const isDefect = culprit !== undefined && isBroken(culprit.kind, culprit.options);
  const named = (byCulprit.get(node.culprit) ?? []).flatMap((n): Candidate[] => {
    if (explains(n, node)) return [{ node: n, sureness: SURENESS.fromCulprit, distance: 0 }];
    return isDefect || isAlike(n, node) ? [{ node: n, sureness: SURENESS.sameCulprit, distance: 0 }] : [];
  });
  // Of a quarrel each takes the other for the culprit; whoever names both speaks of the quarrel.
  const both = (quarrels.get(node.culprit) ?? []).filter((n) =>
    n.finding.parts.includes(node.finding.at.part),
  );
  const there = [...(byPlace.get(node.culprit) ?? []), ...both]
    .filter((n) => explains(n, node))
    .map((n): Candidate => ({ node: n, sureness: SURENESS.fromCulprit, distance: 0 }));
  return [...named, ...there, ...onSameLoop(node, byPlace, ways)];
}

/** Parts in one circle are one fault. */
function onSameLoop({ finding }: Node, byPlace: Placed["byPlace"], ways: Ways): readonly Candidate[] {
  if (finding.rule !== "loop") return [];
  const here = finding.at.part;
  const around = ways
    .signalTo(here)
    .filter(({ part }) => part !== here && ways.signalTo(part).some((p) => p.part === here));
  return around.flatMap(({ part, distance }) =>
    (byPlace.get(part) ?? [])
      .filter((n) => n.finding.rule === "loop")
      .map((n): Candidate => ({ node: n, sureness: SURENESS.sameCulprit, distance })),
  );
}

/** Whether one takes what the other lacks; what is taken from one service is not lacking to another. */
function explains(cause: Node, victim: Node): boolean {
  const [service, lacking] = [cause.finding.at.service, victim.finding.at.service];
  if (service !== undefined && lacking !== undefined && service !== lacking) return false;
  return cause.mechanism.takes.some((good) => victim.mechanism.lacks.includes(good));
}

function isAlike(a: Node, b: Node): boolean {
  if (a.mechanism.natures.includes("own")) return a.finding.rule === b.finding.rule;
  return a.mechanism.natures.some((nature) => b.mechanism.natures.includes(nature));
}

/** What lies on the way to a finding's place and takes what is lacking there. */
function onTheWay(node: Node, placed: Placed, folding: Folding): readonly Candidate[] {
  return [...onTheLine(node, placed, folding), ...aboveIt(node, placed, folding)];
}

/** Of what is fed or told from below: whoever takes the supply from its line. */
function onTheLine(node: Node, { byCulprit, byPlace }: Placed, { ways }: Folding): readonly Candidate[] {
  if (!node.mechanism.lacks.includes("supply")) return [];
  return ways
    .supplyTo(node.finding.at.part)
    .flatMap(({ part, distance }) =>
      [...(byCulprit.get(part) ?? []), ...(byPlace.get(part) ?? [])]
        .filter((n) => n.mechanism.takes.includes("supply"))
        .map((n): Candidate => ({ node: n, sureness: SURENESS.onTheWay, distance })),
    );
}

/** Of what comes from above: whatever it passed that takes of it what is lacking. */
function aboveIt(
  node: Node,
  { byPlace, byCulprit }: Placed,
  { ways, evaluation }: Folding,
): readonly Candidate[] {
  const { at } = node.finding;
  if (node.mechanism.lacks.length === 0) return [];
  // Who names another culprit knows better, unless nothing at all comes through, or both speak of it.
  const isTrusted = (n: Node) =>
    node.culprit === at.part ||
    n.mechanism.takes.includes("signal") ||
    n.finding.parts.includes(node.culprit);
  const candidates: Candidate[] = [];
  const look = (passed: Passed) => {
    // What a feed is good for shows at the receivers; who makes it stands above.
    const sent = (byCulprit.get(passed.part) ?? []).filter((n) =>
      n.mechanism.takes.includes("suitable feed"),
    );
    for (const n of [...(byPlace.get(passed.part) ?? []), ...sent])
      if (explains(n, node) && n.finding.severity !== "note" && isTrusted(n))
        if (concerns(n, node, passed, evaluation) && isInLine(n, node, ways))
          candidates.push({ node: n, sureness: SURENESS.onTheWay, distance: passed.distance });
  };
  look({ part: at.part, port: at.port ?? "", distance: 0 });
  for (const passed of ways.signalTo(at.part)) look(passed);
  return candidates;
}

/** Whether a cause lies on the way of the culprit that a finding names already: before it or behind it, not beside it. */
function isInLine({ finding }: Node, victim: Node, ways: Ways): boolean {
  const [{ at }, { culprit }] = [finding, victim];
  const there = victim.finding.at.part;
  const leads = (from: PartId, to: PartId) => from === to || ways.signalTo(to).some((p) => p.part === from);
  if (culprit === there || at.part === there || finding.parts.includes(culprit)) return true;
  return !leads(culprit, there) || leads(culprit, at.part) || leads(at.part, culprit);
}

/** Whether what a finding takes is taken from this way, this service and this receiver. */
function concerns(
  { finding, mechanism }: Node,
  victim: Node,
  passed: Passed,
  evaluation: Evaluation,
): boolean {
  const record = evaluation.record(finding.at.part);
  if (!record) return false;
  const { port, service } = finding.at;
  const isOutput = record.ports.some((p) => p.id === port && p.side === "out");
  if (passed.distance > 0 && isOutput && port !== passed.port) return false;
  const wanted = victim.finding.at.service;
  if (wanted !== undefined) {
    const there = service === undefined ? servicesAt(record) : new Set([service]);
    if (there.size > 0 && !there.has(wanted)) return false;
  }
  const isReceiver = (part: PartId) => evaluation.record(part)?.kind.reception !== undefined;
  if (mechanism.takes.includes("signal") || !isReceiver(victim.finding.at.part)) return true;
  const named = finding.parts.filter(isReceiver);
  return named.length === 0 || named.includes(victim.finding.at.part);
}
