/** Which of the ports that may be joined is meant, by what the line carries: TV to the TV side, satellite to its own. */
import type { PortRef } from "../../design/design.ts";
import { isAlike } from "../../design/edits/alike.ts";
import { joinTargets } from "../../design/edits/join.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { SERVICES } from "../../signal/carrier.ts";
import { carriedAt } from "../carried.ts";
import { isInputFor, isOutputFor } from "./inputs.ts";

/**
 * Free ports of a part that a port may be joined to, without those that have nothing for it while others do.
 * Of ports that are as good as one another, the first alone.
 */
export function partnersIn(evaluation: Evaluation, from: PortRef, id: string): readonly PortRef[] {
  const record = evaluation.record(id);
  if (!record) return [];
  const open = joinTargets(evaluation.design, from).filter(([part]) => part === id);
  const meant = open.filter((ref) => isMeant(evaluation, from, ref));
  const kept = meant.length > 0 ? meant : open;
  const portOf = (ref: PortRef | undefined) => record.ports.find((p) => p.id === ref?.[1]);
  return kept.filter((ref, i) => {
    const port = portOf(ref);
    return !kept.slice(0, i).some((earlier) => {
      const other = portOf(earlier);
      return port && other && isAlike(record.part, other, port);
    });
  });
}

/** The pair of free ports of two parts by which they belong together; undefined where they don't. */
export function bestPair(
  evaluation: Evaluation,
  a: string,
  b: string,
): readonly [PortRef, PortRef] | undefined {
  const free = evaluation.record(a)?.ports.map((p): PortRef => [a, p.id]) ?? [];
  for (const from of free) {
    const [to] = partnersIn(evaluation, from, b).filter((ref) => isMeant(evaluation, from, ref));
    if (to) return [from, to];
  }
  return undefined;
}

/** Whether what leaves the one is something that the other takes; a line that carries nothing yet suits anything. */
export function isMeant(evaluation: Evaluation, a: PortRef, b: PortRef): boolean {
  const portA = evaluation.record(a[0])?.ports.find((p) => p.id === a[1]);
  const [out, into] = portA?.side === "out" ? [a, b] : [b, a];
  const source = evaluation.record(out[0]);
  const target = evaluation.record(into[0]);
  const output = source?.ports.find((p) => p.id === out[1]);
  if (!source || !target || !output) return false;
  const { services } = carriedAt(evaluation, out);
  const given = services.size > 0 ? [...services] : SERVICES.filter((s) => isOutputFor(source, output, s));
  return given.some((service) => isInputFor(target, into[1], service));
}
