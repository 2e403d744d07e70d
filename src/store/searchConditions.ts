/** A design judged under its conditions, beside the page: what comes out is plain data, so that it passes from a worker. */
import type { Design, PartId } from "../design/design.ts";
import { evaluate } from "../evaluate/evaluate.ts";
import type { Verdict } from "../findings/finding.ts";
import {
  type ConditionColumn,
  judgedUnderConditions,
  type PlaceStandings,
  type UnderConditions,
} from "../findings/underConditions.ts";
import { conditionName, conditionSentence, conditionsHeadline } from "../sentences/conditions.ts";
import { verdictSentence } from "../sentences/verdict.ts";

export type ConditionsTask = { readonly design: Design };

/** How a place stands under one condition, and what is said of it. */
export type ConditionCell = Pick<Verdict, "state" | "idle" | "marginDb"> & {
  readonly column: ConditionColumn;
  readonly sentence: string;
};

export type ConditionPlace = {
  readonly part: PartId;
  readonly role: Verdict["role"];
  readonly cells: readonly ConditionCell[];
  readonly worst: ConditionColumn | null;
};

export type JudgedConditions = {
  readonly headline: string;
  readonly columns: readonly {
    readonly column: ConditionColumn;
    readonly name: string;
    readonly sentence: string;
  }[];
  readonly places: readonly ConditionPlace[];
};

export type ConditionsSearch = {
  readonly done: number;
  readonly of: number;
  /** Null until all conditions are judged. */
  readonly table: JudgedConditions | null;
};

export function* searchConditions({
  design,
}: ConditionsTask): Generator<ConditionsSearch, ConditionsSearch, void> {
  const judging = judgedUnderConditions(design, evaluate(design));
  for (;;) {
    const step = judging.next();
    if (step.done) {
      const of = step.value.conditions.length;
      return { done: of, of, table: tableOf(step.value) };
    }
    yield { ...step.value, table: null };
  }
}

function tableOf(under: UnderConditions): JudgedConditions {
  return {
    headline: conditionsHeadline(under),
    columns: under.columns.flatMap((column) => {
      const condition = under.conditions.find(({ type }) => type === column);
      return condition
        ? [{ column, name: conditionName(column), sentence: conditionSentence(condition) }]
        : [];
    }),
    places: under.places.map(placeOf),
  };
}

function placeOf({ part, role, standings, worst }: PlaceStandings): ConditionPlace {
  const cells = [...standings].map(([column, { verdict, evaluation }]): ConditionCell => {
    const { state, idle, marginDb } = verdict;
    return {
      column,
      state,
      ...(idle ? { idle } : {}),
      ...(marginDb === undefined ? {} : { marginDb }),
      sentence: verdictSentence(verdict, evaluation),
    };
  });
  return { part, role, cells, worst: worst ?? null };
}
