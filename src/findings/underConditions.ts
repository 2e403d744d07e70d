/** One design under several conditions: what each receiver and outlet gets under each, and which of them is the worst. */
import type { Design, PartId } from "../design/design.ts";
import { designUnder, type OperatingCondition, operatingConditions } from "../design/operatingConditions.ts";
import { evaluate } from "../evaluate/evaluate.ts";
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { Verdict } from "./finding.ts";
import { report } from "./report.ts";

/** Conditions that are looked at side by side; each receiver alone is one of them, whichever receiver it is. */
export type ConditionColumn = OperatingCondition["type"];

/** What becomes of one receiver or outlet under one condition; absent where the condition has nothing to do with it. */
export type Standing = {
  readonly verdict: Verdict;
  /** The evaluation that it was judged in. */
  readonly evaluation: Evaluation;
  readonly condition: OperatingCondition;
};

export type PlaceStandings = {
  readonly part: PartId;
  readonly role: Verdict["role"];
  readonly standings: ReadonlyMap<ConditionColumn, Standing>;
  /** The condition under which it is worst off; the one that is drawn where no other is worse. Absent where nothing is judged. */
  readonly worst?: ConditionColumn;
};

export type UnderConditions = {
  /** In the order in which they are shown. */
  readonly conditions: readonly OperatingCondition[];
  readonly columns: readonly ConditionColumn[];
  readonly places: readonly PlaceStandings[];
};

export type ConditionsProgress = { readonly done: number; readonly of: number };

/** Judges a design under all its conditions, one with each step. `drawn`: its evaluation, where there is one already. */
export function* judgedUnderConditions(
  design: Design,
  drawn: Evaluation = evaluate(design),
): Generator<ConditionsProgress, UnderConditions, void> {
  const conditions = operatingConditions(design);
  const standings = new Map<PartId, Map<ConditionColumn, Standing>>();
  const roles = new Map<PartId, Verdict["role"]>();
  for (const [done, condition] of conditions.entries()) {
    yield { done, of: conditions.length };
    const evaluation =
      condition.type === "as drawn" ? drawn : evaluate(designUnder(design, condition), drawn);
    for (const verdict of report(evaluation).verdicts) {
      if (condition.type === "one on" && verdict.part !== condition.receiver) continue;
      const own = standings.get(verdict.part) ?? new Map<ConditionColumn, Standing>();
      own.set(condition.type, { verdict, evaluation, condition });
      standings.set(verdict.part, own);
      roles.set(verdict.part, verdict.role);
    }
  }
  const places = [...standings].map(([part, own]): PlaceStandings => {
    const worst = worstOf(own);
    return { part, role: roles.get(part) ?? "outlet", standings: own, ...(worst ? { worst } : {}) };
  });
  return { conditions, columns: [...new Set(conditions.map((c) => c.type))], places };
}

function worstOf(standings: ReadonlyMap<ConditionColumn, Standing>): ConditionColumn | undefined {
  let worst: Standing | undefined;
  for (const standing of standings.values()) {
    if (standing.verdict.idle) continue;
    if (!worst || isWorse(standing.verdict, worst.verdict)) worst = standing;
  }
  return worst?.condition.type;
}

const GRAVITY: Readonly<Record<Verdict["state"], number>> = { works: 0, edge: 1, fails: 2 };

/** Whether somebody is worse off: by the state, then by what is missing, then by what is to spare. */
export function isWorse(a: Verdict, b: Verdict): boolean {
  if (a.state !== b.state) return GRAVITY[a.state] > GRAVITY[b.state];
  const [missing, former] = [missingShare(a), missingShare(b)];
  if (missing !== former) return missing > former;
  return (a.marginDb ?? Number.POSITIVE_INFINITY) < (b.marginDb ?? Number.POSITIVE_INFINITY);
}

/** Of the service that lacks most, the share of carriers that are missing. */
function missingShare({ services }: Verdict): number {
  return Math.max(0, ...services.map(({ got, wanted }) => (wanted === 0 ? 0 : 1 - got / wanted)));
}

/** How the receivers stand under one condition. */
export type ColumnCount = { readonly judged: number; readonly working: number; readonly onEdge: number };

/** Counts receivers, not outlets; one that is off or not connected is not judged. */
export function countUnder(
  { places }: Pick<UnderConditions, "places">,
  column: ConditionColumn,
): ColumnCount {
  const verdicts = places
    .filter(({ role }) => role === "receiver")
    .flatMap(({ standings }) => standings.get(column)?.verdict ?? [])
    .filter(({ idle }) => !idle);
  return {
    judged: verdicts.length,
    working: verdicts.filter(({ state }) => state !== "fails").length,
    onEdge: verdicts.filter(({ state }) => state === "edge").length,
  };
}
