/** The order in which findings are shown: the same however a design was drawn. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import { WEIGHT } from "./causes/fold.ts";
import type { SignalOrder } from "./causes/signalOrder.ts";
import type { RuleId } from "./facts.ts";
import type { Finding } from "./finding.ts";

/** Worst first, then along the signal, then in the order of the rules and of the ports. */
export function inReportOrder(
  findings: readonly Finding[],
  setting: {
    readonly evaluation: Evaluation;
    readonly order: SignalOrder;
    readonly rules: readonly RuleId[];
  },
): readonly Finding[] {
  const { evaluation, order } = setting;
  const rules = new Map(setting.rules.map((id, n) => [id, n]));
  const place = (part: string) => order.get(part) ?? 0;
  const port = ({ at }: Finding) =>
    evaluation.record(at.part)?.ports.findIndex((p) => p.id === at.port) ?? -1;
  return [...findings].sort(
    (a, b) =>
      WEIGHT[a.severity] - WEIGHT[b.severity] ||
      place(a.at.part) - place(b.at.part) ||
      (rules.get(a.rule) ?? 0) - (rules.get(b.rule) ?? 0) ||
      port(a) - port(b) ||
      inOrder(a.at.service, b.at.service) ||
      inOrder(a.at.side, b.at.side) ||
      (a.at.tuner ?? 0) - (b.at.tuner ?? 0) ||
      byPlaces(a.parts.map(place), b.parts.map(place)) ||
      inOrder(a.at.band, b.at.band),
  );
}

function inOrder(a = "", b = ""): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function byPlaces(a: readonly number[], b: readonly number[]): number {
  const n = a.findIndex((place, i) => place !== b[i]);
  return n < 0 ? a.length - b.length : (a[n] ?? 0) - (b[n] ?? 0);
}
