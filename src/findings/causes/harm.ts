/** Who suffers from a cause, and which causes do most harm. */
import type { PartId } from "../../design/design.ts";
import type { Cause, Finding, Severity, Verdict } from "../finding.ts";
import { WEIGHT } from "./fold.ts";
import { type Good, mechanismOf } from "./mechanisms.ts";
import type { SignalOrder } from "./signalOrder.ts";
import type { Ways } from "./ways.ts";

/** A root with all that follows from it, before it is known who suffers. */
export type Group = { readonly root: Finding; readonly findings: readonly Finding[] };

type Setting = {
  readonly verdicts: readonly Verdict[];
  readonly order: SignalOrder;
  readonly ways: Ways;
};

/** Groups as causes, those that take most from most people first, then in the order of the signal. */
export function inHarmOrder(groups: readonly Group[], setting: Setting): readonly Cause[] {
  const suffering = sufferersOf(groups, setting);
  const place = (part: PartId) => setting.order.get(part) ?? 0;
  const weighed = groups.map((group) => {
    const cause = causeOf(group, suffering.get(group) ?? []);
    const count = (severity: Severity) => cause.findings.filter((f) => f.severity === severity).length;
    const services = (suffering.get(group) ?? []).reduce((sum, v) => sum + servicesLost(v), 0);
    return { cause, services, warnings: count("error") + count("warning") };
  });
  weighed.sort(
    (a, b) =>
      WEIGHT[a.cause.severity] - WEIGHT[b.cause.severity] ||
      b.cause.receivers.length - a.cause.receivers.length ||
      b.services - a.services ||
      b.cause.outlets.length - a.cause.outlets.length ||
      b.warnings - a.warnings ||
      place(a.cause.root.parts[0]) - place(b.cause.root.parts[0]) ||
      place(a.cause.root.at.part) - place(b.cause.root.at.part),
  );
  return weighed.map(({ cause }) => cause);
}

function servicesLost(verdict: Verdict): number {
  return verdict.role === "outlet" ? 0 : verdict.services.filter((s) => s.got < s.wanted).length;
}

/** Verdicts that suffer from each group, in the order of their places. */
function sufferersOf(
  groups: readonly Group[],
  { verdicts, order, ways }: Setting,
): ReadonlyMap<Group, readonly Verdict[]> {
  const groupsAt = new Map<PartId, Group[]>();
  const noted = (part: PartId, group: Group) => {
    const list = groupsAt.get(part);
    if (!list) groupsAt.set(part, [group]);
    else if (list[list.length - 1] !== group) list.push(group);
  };
  for (const group of groups)
    for (const finding of group.findings) if (finding.severity !== "note") noted(finding.at.part, group);
  const byCulprit = new Map<PartId, Group[]>();
  for (const group of groups) {
    const [culprit] = group.root.parts;
    byCulprit.set(culprit, [...(byCulprit.get(culprit) ?? []), group]);
  }
  const suffering = new Map<Group, Verdict[]>();
  const inPlace = [...verdicts].sort((a, b) => (order.get(a.part) ?? 0) - (order.get(b.part) ?? 0));
  for (const verdict of inPlace) {
    // Somebody who has all that he wants does not suffer; of an outlet its own figures are looked at as well.
    if (verdict.role === "receiver" && verdict.state === "works") continue;
    const own = new Set(groupsAt.get(verdict.part) ?? []);
    for (const { service, missing } of verdict.services)
      for (const { culprit } of missing)
        if (culprit)
          // From a mere note nobody suffers, even if it is about the part that is to blame.
          for (const group of byCulprit.get(culprit.part) ?? [])
            if (
              takesSomething(group) &&
              (group.root.at.service === undefined || group.root.at.service === service)
            )
              own.add(group);
    for (const group of killing(verdict, groups, ways)) own.add(group);
    if (own.size === 0 && verdict.state === "fails")
      for (const group of above(verdict, groupsAt, ways)) own.add(group);
    if (own.size === 0 && verdict.state === "fails")
      for (const group of groups) if (isNamedIn(group, verdict.part)) own.add(group);
    for (const group of own) suffering.set(group, [...(suffering.get(group) ?? []), verdict]);
  }
  return suffering;
}

function takesSomething({ root }: Group): boolean {
  return root.severity !== "note" || mechanismOf(root).takes.length > 0;
}

/** Of somebody who fails although all arrives: what names a part on the way to him, by a rule that he fails by. */
function killing({ part, failsBy }: Verdict, groups: readonly Group[], ways: Ways): readonly Group[] {
  if (!failsBy) return [];
  const passed = new Set(ways.signalTo(part).map((p) => p.part));
  return groups.filter(({ findings }) =>
    findings.some((f) => failsBy.some(({ rule }) => rule === f.rule) && f.parts.some((p) => passed.has(p))),
  );
}

/** Of somebody who is not connected yet, say: what only mentions him. */
function isNamedIn({ findings }: Group, part: PartId): boolean {
  return findings.some((f) => f.parts.includes(part));
}

const ANY_SIGNAL: readonly Good[] = ["signal", "plane", "band", "quality"];

/** Of somebody at whom nothing is found: what lies before him, the nearest that takes away most. */
function above(
  { part }: Verdict,
  groupsAt: ReadonlyMap<PartId, readonly Group[]>,
  ways: Ways,
): readonly Group[] {
  for (const good of ANY_SIGNAL)
    for (const passed of ways.signalTo(part)) {
      const groups = (groupsAt.get(passed.part) ?? []).filter((group) =>
        group.findings.some((f) => f.at.part === passed.part && mechanismOf(f).takes.includes(good)),
      );
      if (groups.length > 0) return groups;
    }
  return [];
}

/** Causes by their root: the same object as long as nothing about it changed. */
const known = new WeakMap<Finding, Cause>();

function causeOf({ root, findings }: Group, sufferers: readonly Verdict[]): Cause {
  const parts = (role: Verdict["role"]) => sufferers.filter((v) => v.role === role).map((v) => v.part);
  const severity = findings.reduce(
    (worst, f) => (WEIGHT[f.severity] < WEIGHT[worst] ? f.severity : worst),
    root.severity,
  );
  const cause: Cause = {
    id: root.id,
    root,
    severity,
    findings,
    receivers: parts("receiver"),
    outlets: parts("outlet"),
  };
  const former = known.get(root);
  if (former && isSame(former, cause)) return former;
  known.set(root, cause);
  return cause;
}

function isSame(a: Cause, b: Cause): boolean {
  return (["findings", "receivers", "outlets"] as const).every(
    (list) => a[list].length === b[list].length && a[list].every((x, i) => x === b[list][i]),
  );
}
