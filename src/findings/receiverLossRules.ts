/** What the rules on missing carriers have in common: one finding for each loss, by the culprit that the loss leads to. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { Service } from "../signal/carrier.ts";
import type { Draft } from "./finding.ts";
import type { Culprit, Missing } from "./missing.ts";
import { receiverLosses } from "./receiverLosses.ts";
import type { MissingGroup } from "./reception.ts";
import { type RuleView, wireIdsAt } from "./rule.ts";
import { idleReason } from "./verdict.ts";
import { planeKey } from "./wanted.ts";

/** Of a receiver's missing carriers, or of one of its tuners'. */
export type ReceiverLossFacts = {
  readonly service: Service;
  readonly wanted: number;
  readonly got: number;
  /** What is missing by this loss, and why. */
  readonly missing: Missing;
  /** What a tradesman would take in hand; two losses with one culprit and one kind of reason are one cause. */
  readonly culprit: Culprit;
};

export type LossRule = "plane-missing" | "wrong-feed" | "receiver-misses";

/** A draft of any of these rules: they have the same facts. */
export type LossDraft = { [K in keyof Draft<LossRule>]: Draft<LossRule>[K] };

/** The rule that speaks of a group: the wrong kind of feed, whole planes, or whatever else is missing. */
function ruleOf({ why, planes, count }: MissingGroup, wanted: number): LossRule | undefined {
  // A blocked tuner has a rule of its own, with figures.
  if (why === "blocked") return undefined;
  if (why === "wrong feed") return "wrong-feed";
  // Too weak or disturbed it does arrive, even where that befalls a whole plane.
  if (why === "noisy" || why === "disturbed") return "receiver-misses";
  return planes.length > 0 && count < wanted ? "plane-missing" : "receiver-misses";
}

/** Drafts of one of the rules; `blameLoss` brings them to their culprits, and those that belong together to one. */
export function lossDrafts({ record, reception }: RuleView, rule: LossRule): readonly LossDraft[] {
  if (!reception || idleReason(record, reception)) return [];
  const part = record.part.id;
  const wires = record.ports.flatMap((p) => wireIdsAt(record, p.id));
  const draft = (
    { service, wanted, got }: Pick<ReceiverLossFacts, "service" | "wanted" | "got">,
    { key, sample: _, ...missing }: MissingGroup,
    tuner?: number,
  ): LossDraft => ({
    severity: "error",
    at: {
      part,
      service,
      band: key,
      ...(missing.why === "noisy" ? { side: "too little" } : {}),
      ...(tuner === undefined ? {} : { tuner }),
    },
    parts: [part],
    wires,
    value: got,
    limit: wanted,
    unit: "carriers",
    facts: { service, wanted, got, missing, culprit: missing.culprit ?? { part } },
  });
  const ofService = reception.services.flatMap((s) =>
    (allAbsent(s.missing, s.wanted) ? s.missing.map((m) => ({ ...m, planes: [] })) : s.missing)
      .filter((group) => ruleOf(group, s.wanted) === rule)
      .map((group) => draft(s, group)),
  );
  const common = new Set(reception.services.flatMap((s) => s.missing.map((m) => m.key)));
  const ofTuners = reception.tuners.flatMap(({ service, number, together, missing }) => {
    const all = allAbsent(missing, together.of);
    return missing
      .filter((group) => !common.has(group.key))
      .map((group) => (all ? { ...group, planes: [] } : group))
      .filter((group) => ruleOf(group, together.of) === rule)
      .map((group) => draft({ service, wanted: together.of, got: together.got }, group, number));
  });
  return [...ofService, ...ofTuners];
}

/** Where nothing at all arrives, no plane is to be told apart. */
function allAbsent(missing: readonly MissingGroup[], wanted: number): boolean {
  const absent = missing.filter((m) => m.why === "absent").reduce((sum, m) => sum + m.count, 0);
  return wanted > 0 && absent === wanted;
}

/** The draft with its culprit; undefined where the loss of another draft is the same one. */
export function blameLoss(draft: LossDraft, evaluation: Evaluation): LossDraft | undefined {
  const { at } = draft;
  const record = evaluation.record(at.part);
  const loss =
    record &&
    receiverLosses(evaluation, record).find(
      (l) => l.service === at.service && l.tuner === at.tuner && l.groups.includes(at.band ?? ""),
    );
  if (!record || !loss) return draft;
  if (loss.groups[0] !== at.band) return undefined;
  const { missing, service, wanted, got } = loss;
  const culprit = missing.culprit ?? { part: at.part };
  const named = culprit.port === undefined ? [] : wiresAt(evaluation, culprit);
  return {
    ...draft,
    at: { ...at, band: bandOf(missing, culprit) },
    parts: [culprit.part, ...(culprit.part === at.part ? [] : [at.part])],
    wires: [...new Set([...named, ...draft.wires])],
    facts: { service, wanted, got, missing, culprit },
  };
}

function wiresAt(evaluation: Evaluation, { part, port }: Culprit): readonly string[] {
  const record = evaluation.record(part);
  return record && port !== undefined ? wireIdsAt(record, port) : [];
}

/** The planes, or else the kind of the loss and its culprit: tells a receiver's losses apart without a figure. */
function bandOf({ planes, reason, userBand }: Missing, { part, port }: Culprit): string {
  const what = planes.length > 0 ? planes.map(planeKey).sort().join("+") : reason.kind;
  return [what, part, port, userBand].filter((x) => x !== undefined).join(" ");
}
