/** Who is served how, before a change and after it. */

import type { ServiceVerdict, TunerVerdict, Verdict, VerdictState } from "../findings/finding.ts";
import type { Missing, Plane } from "../findings/missing.ts";
import type { Site } from "./site.ts";

const RANK: Readonly<Record<VerdictState, number>> = { works: 2, edge: 1, fails: 0 };

/** Every receiver keeps its state, services, tuners and planes; every outlet hands on as large a share. */
export function everybodyServed(before: Site, after: Site): boolean {
  const now = new Map(after.report.verdicts.map((v) => [v.part, v]));
  return before.report.verdicts.every((was) => {
    const is = now.get(was.part);
    if (was.role === "receiver") return is !== undefined && receivesAsMuch(was, is);
    return handsOnAsMuch(was, is, before, after);
  });
}

/** Whether a receiver gets more of some service, or with more tuners, or more surely. */
export function isServedMore(was: Verdict, is: Verdict): boolean {
  return (
    RANK[is.state] > RANK[was.state] ||
    is.services.some((s) => s.got > (serviceOf(was, s)?.got ?? 0)) ||
    servedTuners(is.tuners) > servedTuners(was.tuners)
  );
}

function receivesAsMuch(was: Verdict, is: Verdict): boolean {
  // One that was off, or not connected yet, was judged by nothing: whatever it gets now is more.
  if (was.idle) return true;
  if (is.idle || (RANK[is.state] < RANK[was.state] && !isByNewcomers(was, is))) return false;
  if (servedTuners(is.tuners) < servedTuners(was.tuners)) return false;
  return was.services.every((s) => {
    if (s.wanted === 0 || s.got === 0) return true;
    const same = serviceOf(is, s);
    return same !== undefined && same.wanted >= s.wanted && same.got >= s.got && keepsPlanes(s, same);
  });
}

/** Whether a receiver stands on the edge only since it gets more than before, of which some is weaker. */
function isByNewcomers(was: Verdict, is: Verdict): boolean {
  return is.state === "edge" && is.services.some((s) => s.got > (serviceOf(was, s)?.got ?? 0));
}

function serviceOf(verdict: Verdict, { service }: ServiceVerdict): ServiceVerdict | undefined {
  return verdict.services.find((s) => s.service === service);
}

function servedTuners(tuners: readonly TunerVerdict[]): number {
  return tuners.filter((t) => t.got > 0).length;
}

/** As many carriers may be others: no plane may be missing that was there. */
function keepsPlanes(was: ServiceVerdict, is: ServiceVerdict): boolean {
  const missed = planesOf(was.missing);
  return [...planesOf(is.missing)].every((plane) => missed.has(plane));
}

function planesOf(missing: readonly Missing[]): ReadonlySet<string> {
  const key = ({ source, polarisation, half }: Plane) => `${source}|${polarisation}|${half}`;
  return new Set(missing.flatMap((m) => m.planes.map(key)));
}

/** A service may leave an outlet only for another plate that is new or changed, and did not hand it on before. */
function handsOnAsMuch(was: Verdict, is: Verdict | undefined, before: Site, after: Site): boolean {
  const share = (s: ServiceVerdict | undefined) => (s && s.wanted > 0 ? s.got / s.wanted : 0);
  return was.services.every((s) => {
    if (share(is && serviceOf(is, s)) >= share(s)) return true;
    return after.report.verdicts.some((other) => {
      if (other.role !== "outlet" || other.part === was.part) return false;
      const formerOther = before.report.verdicts.find((v) => v.part === other.part);
      if (formerOther && share(serviceOf(formerOther, s)) > 0) return false;
      const kindBefore = before.evaluation.record(other.part)?.part.kind;
      const isNew = kindBefore !== after.evaluation.record(other.part)?.part.kind;
      return isNew && share(serviceOf(other, s)) > 0;
    });
  });
}
