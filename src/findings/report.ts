/** Asks every rule about every part, and sums receivers and outlets up. */
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { finished, type Steps } from "../evaluate/steps.ts";
import type { PartKind } from "../parts/contract.ts";
import type { Finding, Report, Severity, Verdict } from "./finding.ts";
import { type Profile, profileOf } from "./limits.ts";
import { receive } from "./reception.ts";
import { DESIGN_RULES, RULES } from "./rules/index.ts";
import { outletVerdict, receiverVerdict } from "./verdict.ts";
import { carriersSent } from "./wanted.ts";
import { withLabels } from "./words.ts";

/** Findings and verdicts of an evaluation. Parts whose records are unchanged are not asked again. */
export function report(evaluation: Evaluation): Report {
  return finished(reportInSteps(evaluation));
}

/** The same, part by part and rule by rule. The work with each step is counted before it is done. */
export function* reportInSteps(evaluation: Evaluation): Steps<Report> {
  const { records } = evaluation;
  const sources = records.filter((r) => r.kind.family === "receive");
  const profile = profileOf(evaluation.design);
  const label = (id: string) => evaluation.record(id)?.part.label || id;
  const setting: Setting = { sources, profile, kindOf: (id) => evaluation.record(id)?.kind };
  const total = records.length * (1 + DESIGN_RULES.length);
  const findings: Finding[] = [];
  const verdicts: Verdict[] = [];
  let done = 0;
  let work = 0;
  for (const record of records) {
    if (!isSaid(record, setting)) work += workOfAsking(record, sources);
    yield { done, total, work };
    done++;
    const said = saidOf(record, setting);
    for (const f of said.findings) findings.push(labelled(f, label));
    if (said.verdict) verdicts.push(labelledVerdict(said.verdict, label));
  }
  for (const rule of DESIGN_RULES) {
    const asking = rule.checkDesign(evaluation, profile);
    let step = asking.next();
    for (let n = 0; !step.done; step = asking.next()) {
      work += step.value;
      n++;
      yield { done: done + Math.min(n, records.length), total, work };
    }
    done += records.length;
    for (const f of step.value) findings.push(labelled({ rule: rule.id, ...f }, label));
  }
  // A stable sort: findings of equal weight stay in the order of the design and of the rules.
  findings.sort((a, b) => WEIGHT[a.severity] - WEIGHT[b.severity]);
  return { findings, verdicts };
}

/** Carriers that are looked at: of all inputs, of all meetings, and for a receiver all that it could wish for. */
function workOfAsking(record: PartRecord, sources: readonly PartRecord[]): number {
  let work = 1;
  for (const spectrum of Object.values(record.inputs))
    for (const band of spectrum.bands) work += band.level.length;
  for (const meeting of record.meetings) work += meeting.carriers.length;
  if (!record.kind.reception) return work;
  const above = new Set(record.sources);
  let all = 0;
  let upstream = 0;
  for (const source of sources) {
    const sent = carriersSent(source);
    all += sent;
    if (above.has(source.part.id)) upstream += sent;
  }
  return work + sources.length + (upstream > 0 ? upstream : all);
}

const WEIGHT: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

type Said = {
  readonly findings: readonly Finding[];
  readonly verdict: Verdict | undefined;
  /** What a receiver's wants were reckoned with: the source records at that time. */
  readonly sources: readonly PartRecord[] | null;
  readonly profile: Profile;
};

const sayings = new WeakMap<PartRecord, Said>();

type Setting = {
  readonly sources: readonly PartRecord[];
  readonly profile: Profile;
  readonly kindOf: (id: string) => PartKind | undefined;
};

/** Whether a part need not be asked again. */
function isSaid(record: PartRecord, { sources, profile }: Setting): boolean {
  const known = sayings.get(record);
  return known?.profile === profile && (known.sources === null || sameRecords(known.sources, sources));
}

function saidOf(record: PartRecord, setting: Setting): Said {
  const known = sayings.get(record);
  if (known && isSaid(record, setting)) return known;
  const { sources, profile, kindOf } = setting;
  const reception = receive(record, sources);
  const kindAt = (port: string) => kindOf(record.joined[port]?.[0] ?? "");
  const findings = RULES.flatMap((rule) =>
    rule.check({ record, reception, profile, kindAt }).map((f): Finding => ({ rule: rule.id, ...f })),
  );
  const verdict = reception ? receiverVerdict(record, reception) : outletVerdict(record);
  const said: Said = { findings, verdict, sources: reception ? sources : null, profile };
  sayings.set(record, said);
  return said;
}

function sameRecords(a: readonly PartRecord[], b: readonly PartRecord[]): boolean {
  return a.length === b.length && a.every((record, i) => record.outputs === b[i]?.outputs);
}

/** Findings with labels filled in, by the finding without: the same object as long as the labels stay. */
const spoken = new WeakMap<Finding, Finding>();

function labelled(f: Finding, label: (id: string) => string): Finding {
  const message = withLabels(f.message, label);
  const cure = f.cure === undefined ? undefined : withLabels(f.cure, label);
  const former = spoken.get(f);
  if (former && former.message === message && former.cure === cure) return former;
  const made: Finding = { ...f, message, ...(cure === undefined ? {} : { cure }) };
  spoken.set(f, made);
  return made;
}

function labelledVerdict(v: Verdict, label: (id: string) => string): Verdict {
  return {
    ...v,
    sentence: withLabels(v.sentence, label),
    services: v.services.map((s) => ({ ...s, reasons: s.reasons.map((r) => withLabels(r, label)) })),
  };
}
