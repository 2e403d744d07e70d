/** A design under several conditions, for `check --conditions`: as an object for other programs, and as plain text. */
import type { PlaceStandings, Standing, UnderConditions } from "../../findings/underConditions.ts";
import { numeral } from "../../words/numbers.ts";
import { conditionName, conditionSentence, conditionsHeadline } from "../conditions.ts";
import { plainLabelOf } from "../phrases.ts";
import { stateName, verdictSentence } from "../verdict.ts";

/** Names of its fields are kept: scripts read them. Margins in dB. */
export function conditionsRecord(under: UnderConditions) {
  return {
    headline: conditionsHeadline(under),
    conditions: under.columns.map((column) => conditionName(column)),
    places: under.places.map((place) => ({
      id: place.part,
      label: labelOf(place),
      role: place.role,
      ...(place.worst ? { worst: conditionName(place.worst) } : {}),
      under: [...place.standings].map(([column, { verdict, evaluation }]) => ({
        condition: conditionName(column),
        state: verdict.state,
        ...(verdict.idle ? { idle: verdict.idle } : {}),
        ...(verdict.marginDb !== undefined && Number.isFinite(verdict.marginDb)
          ? { marginDb: verdict.marginDb }
          : {}),
        message: verdictSentence(verdict, evaluation),
      })),
    })),
  };
}

/** The headline, what each condition assumes, and place by place how it stands under each. */
export function conditionsText(under: UnderConditions): string {
  const assumed = under.columns.flatMap((column) => {
    const condition = under.conditions.find(({ type }) => type === column);
    return condition ? [`  ${conditionName(column)}: ${conditionSentence(condition)}`] : [];
  });
  const lines = [
    `Conditions: ${conditionsHeadline(under)}`,
    ...assumed,
    ...under.places.flatMap((place) => [`“${labelOf(place)}”`, ...standingLines(place)]),
  ];
  return `${lines.join("\n")}\n`;
}

function standingLines({ standings, worst }: PlaceStandings): readonly string[] {
  return [...standings].map(([column, standing]) => {
    const mark = column === worst && standings.size > 1 ? " (the worst)" : "";
    return `  ${conditionName(column)}: ${standingWords(standing)}${mark}`;
  });
}

/** "works, 4.2 dB to spare". */
export function standingWords({ verdict }: Pick<Standing, "verdict">): string {
  const { marginDb } = verdict;
  const state = stateName(verdict);
  if (marginDb === undefined || verdict.idle) return state;
  return marginDb < 0
    ? `${state}, ${numeral(-marginDb)} dB beyond a limit`
    : `${state}, ${numeral(marginDb)} dB to spare`;
}

function labelOf({ part, standings }: PlaceStandings): string {
  const [first] = standings.values();
  const label = first ? plainLabelOf(first.evaluation, part) : part;
  return label.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, " ");
}
