/** Asks every rule about every part, and sums receivers and outlets up. */
import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { finished, type Steps } from "../evaluate/steps.ts";
import type { PartKind } from "../parts/contract.ts";
import type { Service } from "../signal/carrier.ts";
import { signalOrderOf } from "./causes/signalOrder.ts";
import { causesOf } from "./causes.ts";
import type { RuleId } from "./facts.ts";
import type { Draft, Finding, Report, Verdict } from "./finding.ts";
import { type Profile, profileOf } from "./limits.ts";
import { type Margin, marginsOf } from "./margin.ts";
import { outletMargins } from "./outletMargin.ts";
import { type ReceiverLoss, receiverLosses } from "./receiverLosses.ts";
import { type ReceptionResult, receive, sendTheSame } from "./reception.ts";
import { inReportOrder } from "./reportOrder.ts";
import type { Rule, RuleView } from "./rule.ts";
import { DESIGN_RULES, RULES } from "./rules/index.ts";
import { outletVerdict, receiverVerdict, withMargins } from "./verdict.ts";
import { carriersSent } from "./wanted.ts";

/** Findings and verdicts of an evaluation. Parts whose records are unchanged are not asked again. */
export function report(evaluation: Evaluation): Report {
  return finished(reportInSteps(evaluation));
}

/** The same, part by part and rule by rule. The work with each step is counted before it is done. */
export function* reportInSteps(evaluation: Evaluation): Steps<Report> {
  const { records } = evaluation;
  const sources = records.filter((r) => r.kind.family === "receive");
  const profile = profileOf(evaluation.design);
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
    for (const { rule, draft } of said.drafts) {
      const finding = found(rule, draft, evaluation);
      if (finding) findings.push(finding);
    }
    const verdict = said.verdict
      ? outletOf(record, said.verdict, evaluation)
      : said.reception && verdictOf(record, said.reception, evaluation);
    if (verdict) verdicts.push(verdict);
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
    for (const f of step.value) findings.push(identified(rule.id, f));
  }
  work += records.length + findings.length;
  yield { done, total, work };
  const order = signalOrderOf(evaluation);
  const shown = inReportOrder(findings, { evaluation, order, rules: RULE_ORDER });
  const agreed = agreeing(verdicts, shown);
  return { causes: causesOf(shown, agreed, { evaluation, order }), findings: shown, verdicts: agreed };
}

const RULE_ORDER = [...RULES, ...DESIGN_RULES].map((rule) => rule.id);

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

type Said = {
  readonly drafts: readonly Drafted[];
  /**
   * Of an outlet, without its margins: those are asked anew for every report, and so is all of a receiver, since
   * what they rest on lies elsewhere.
   */
  readonly verdict: Verdict | undefined;
  readonly reception: ReceptionResult | undefined;
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
  return known?.profile === profile && (known.sources === null || sendTheSame(known.sources, sources));
}

function saidOf(record: PartRecord, setting: Setting): Said {
  const known = sayings.get(record);
  if (known && isSaid(record, setting)) return known;
  const { sources, profile, kindOf } = setting;
  const reception = receive(record, sources);
  const kindAt = (port: string) => kindOf(record.joined[port]?.[0] ?? "");
  const view = { record, reception, profile, kindAt };
  const drafts = RULES.flatMap((rule) => draftsOf(rule, view));
  const verdict = reception ? undefined : outletVerdict(record);
  const said: Said = { drafts, verdict, reception, sources: reception ? sources : null, profile };
  sayings.set(record, said);
  return said;
}

type Drafted = { readonly rule: AnyRuleOf; readonly draft: Draft<RuleId> };

/** A rule without its type of facts: it is only ever given drafts that it made itself. */
type AnyRuleOf = {
  readonly id: RuleId;
  readonly blame?: (draft: Draft<RuleId>, evaluation: Evaluation) => Draft<RuleId> | undefined;
};

function draftsOf(rule: Rule, view: RuleView): Drafted[] {
  // The one cast from a rule with its own facts to any rule; its drafts stay beside it.
  const any = rule as unknown as AnyRuleOf;
  return rule.check(view).map((draft) => ({ rule: any, draft }));
}

type FindingOfDraft = { readonly finding: Finding; readonly blamed: Draft<RuleId> };

/** Findings by the draft that they were made of: the same object as long as the culprit and his facts stay. */
const findingsByDraft = new WeakMap<object, FindingOfDraft>();

function found(rule: AnyRuleOf, draft: Draft<RuleId>, evaluation: Evaluation): Finding | undefined {
  const former = findingsByDraft.get(draft);
  const blamed = rule.blame ? rule.blame(draft, evaluation) : draft;
  if (!blamed) return undefined;
  if (former?.blamed === blamed) return former.finding;
  const made = identified(rule.id, blamed);
  const isAsBefore = former && JSON.stringify(former.finding) === JSON.stringify(made);
  const finding = isAsBefore ? former.finding : made;
  findingsByDraft.set(draft, { finding, blamed });
  return finding;
}

/** The identity of a finding: its rule and its place, nothing that changes with a number. */
function identified(rule: RuleId, draft: Draft<RuleId>): Finding {
  const { part, port, service, side, band, tuner } = draft.at;
  const id = [rule, part, port, service, side, band, tuner].map((x) => x ?? "").join("|");
  // Rule and facts belong together: the draft was made by this rule.
  return { id, rule, ...draft } as Finding;
}

/**
 * Whoever stands at an input that is open, or never gets to an input where a satellite is: what other settings would
 * bring is not what the receiver is set to.
 */
function leftWithout(finding: Finding): readonly PartId[] {
  if (finding.rule === "command-lost") return "positions" in finding.facts ? [finding.facts.receiver] : [];
  return finding.rule === "not-connected" && finding.facts.kind === "missed" ? finding.facts.receivers : [];
}

const failedVerdicts = new WeakMap<Verdict, Verdict>();

/** A receiver with an error at it fails, whatever it gets: an overloaded supply does not hold, for one. */
function agreeing(verdicts: readonly Verdict[], findings: readonly Finding[]): readonly Verdict[] {
  const errors = new Map<string, Finding[]>();
  for (const finding of findings) {
    const { severity, at, rule } = finding;
    if (severity !== "error") continue;
    for (const part of [at.part, ...leftWithout(finding)]) {
      const known = errors.get(part) ?? [];
      if (part === at.part || !known.some((f) => f.rule === rule)) errors.set(part, [...known, finding]);
    }
  }
  return verdicts.map((verdict) => {
    const [first, ...others] = errors.get(verdict.part) ?? [];
    if (!first || verdict.role !== "receiver" || verdict.state === "fails" || verdict.idle) return verdict;
    const failsBy = [first, ...others] as const;
    const former = failedVerdicts.get(verdict);
    if (former?.failsBy && isSame(former.failsBy, failsBy)) return former;
    const { marginDb: _, tightest: __, edge: ___, culprit: ____, ...rest } = verdict;
    const failed: Verdict = { ...rest, state: "fails", failsBy };
    failedVerdicts.set(verdict, failed);
    return failed;
  });
}

function isSame(a: readonly Finding[], b: readonly Finding[]): boolean {
  return a.length === b.length && a.every((finding, i) => finding === b[i]);
}

type Judged = {
  readonly losses: readonly ReceiverLoss[];
  readonly margins: ReadonlyMap<Service, Margin>;
  readonly verdict: Verdict;
};

const judgedBy = new WeakMap<ReceptionResult, Judged>();

/** The verdict on a receiver: the same object while it gets the same, loses it to the same and has as much to spare. */
function verdictOf(record: PartRecord, reception: ReceptionResult, evaluation: Evaluation): Verdict {
  const losses = receiverLosses(evaluation, record);
  const margins = marginsOf(evaluation, record, reception);
  const former = judgedBy.get(reception);
  if (former && former.losses === losses && former.margins === margins) return former.verdict;
  const made = receiverVerdict(record, reception, losses, margins);
  const isAsBefore = former && JSON.stringify(former.verdict) === JSON.stringify(made);
  const verdict = isAsBefore ? former.verdict : made;
  judgedBy.set(reception, { losses, margins, verdict });
  return verdict;
}

type OutletJudged = { readonly margins: ReadonlyMap<Service, Margin>; readonly verdict: Verdict };

const judgedOutlets = new WeakMap<Verdict, OutletJudged>();

/** The verdict on an outlet with its margins: the same object while it hands on the same and has as much to spare. */
function outletOf(record: PartRecord, bare: Verdict, evaluation: Evaluation): Verdict {
  const margins = outletMargins(evaluation, record, bare);
  const former = judgedOutlets.get(bare);
  if (former?.margins === margins) return former.verdict;
  const made = withMargins(bare, margins);
  const isAsBefore = former && JSON.stringify(former.verdict) === JSON.stringify(made);
  const verdict = isAsBefore ? former.verdict : made;
  judgedOutlets.set(bare, { margins, verdict });
  return verdict;
}
