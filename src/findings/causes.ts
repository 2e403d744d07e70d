/** Which findings are causes, what follows from each, and who suffers; the gravest first. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import { type Node, nodeOf, rootsOf, WEIGHT } from "./causes/fold.ts";
import { type Group, inHarmOrder } from "./causes/harm.ts";
import type { SignalOrder } from "./causes/signalOrder.ts";
import { waysOf } from "./causes/ways.ts";
import type { Cause, Finding, Verdict } from "./finding.ts";

/** The causes of a design, worst first. `findings` come in the order in which they are shown. */
export function causesOf(
  findings: readonly Finding[],
  verdicts: readonly Verdict[],
  { evaluation, order }: { readonly evaluation: Evaluation; readonly order: SignalOrder },
): readonly Cause[] {
  if (findings.length === 0) return [];
  const ways = waysOf(evaluation);
  const nodes = findings.map(nodeOf);
  const roots = rootsOf(nodes, { evaluation, order, ways });
  return inHarmOrder(groupsOf(nodes, roots), { verdicts, order, ways });
}

/** Findings by their root; who speaks for them is chosen anew among those that found the same there. */
function groupsOf(nodes: readonly Node[], roots: ReadonlyMap<Node, Node>): readonly Group[] {
  const byRoot = new Map<Node, Node[]>();
  for (const node of nodes) {
    const root = roots.get(node) ?? node;
    const group = byRoot.get(root);
    if (group) group.push(node);
    else byRoot.set(root, [node]);
  }
  return [...byRoot].map(([first, group]) => {
    const root = spokesman(first, group);
    return { root: root.finding, findings: [root, ...group.filter((n) => n !== root)].map((n) => n.finding) };
  });
}

/** A grave finding rather than a mere note, the earliest in kind, the gravest, the first in the order shown. */
function spokesman(first: Node, group: readonly Node[]): Node {
  const isNote = (node: Node) => Number(node.finding.severity === "note");
  return group
    .filter((node) => node.culprit === first.culprit)
    .reduce((best, node) => {
      const order =
        isNote(node) - isNote(best) ||
        node.mechanism.stage - best.mechanism.stage ||
        WEIGHT[node.finding.severity] - WEIGHT[best.finding.severity];
      return order < 0 ? node : best;
    }, first);
}
