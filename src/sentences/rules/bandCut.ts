import { type CutFacts, isCutBy } from "../../findings/rules/bandCut.ts";
import { televisionIn } from "../../findings/television.ts";
import { numeral } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../explain/picture.ts";
import { capital, plainName, roughly } from "../explain/plainWords.ts";
import { addedChannels, hasChannelList } from "../lossWords.ts";
import { type Counted, carriers, list, nameOfBand, partName, share } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";

type Here = Told<"band-cut">;

export const bandCut: RuleWords<"band-cut"> = {
  title: "Part of a band is cut off",
  explain:
    "Filters, separating outlets and some splitters pass a range of frequencies that was right for the old system. " +
    "A band that reaches beyond the range loses the carriers outside it, while the rest works and hides the fault.",
  source: "Pass range of the part; a carrier is lost when less than 90 % of its power gets through",
  severities: ["error", "warning", "note"],
  message: (told) => {
    const { at } = told.finding;
    const { lost, of } = sums(told);
    const kept = share(of - lost, of, countedAs(told));
    return (
      `${partName(at.part)} passes ${lost < of ? "only " : ""}${kept} of ${bandsCut(told)}: ` +
      `${plural(lost, { one: "one is outside its range", other: (n) => `${n} are outside its range` })}.`
    );
  },
  cure: ({ finding: { at }, record }) =>
    at.service === "satellite"
      ? `Replace ${partName(at.part)} with a part that passes the whole feed, or use a feed that fits into its range.`
      : hasChannelList(record)
        ? addedChannels(at.part)
        : `Replace ${partName(at.part)} with a part of wider range, if these carriers are wanted.`,
  customer: (told) => {
    const { at } = told.finding;
    const { lost, of } = sums(told);
    return `${capital(plainName(told, at.part))} was made for another kind of signal. It lets through ${roughly(of - lost, of, { service: at.service, ...televisionIn(told.evaluation) })}.`;
  },
  trade: (told) => {
    const { at, facts } = told.finding;
    const { lost, of } = sums(told);
    const part = partName(at.part);
    const where = facts.cuts.flatMap((cut) => cut.stretches.map(stretchWords));
    return (
      `Of ${carriers(of, countedAs(told))} of ${bandsCut(told)}, ${plural(lost, {
        one: (n) => `${n} is outside the pass range of ${part}`,
        other: (n) => `${n} are outside the pass range of ${part}`,
      })}. What is outside: ${list([...new Set(where)])}. A carrier counts as lost when less than 90 % of its power gets through. ` +
      "A filter stops it by about 20 dB beside the edge and by its full rejection further off. So a rest may still show on a meter."
    );
  },
  measure: ({ finding: { at, facts } }) => {
    const example = facts.cuts[0]?.example;
    const spot = example ? `at ${numeral(example.centreMHz)} MHz` : "outside its range";
    const behind = example
      ? `about ${numeral(example.levelDbuv)} dBµV or less behind it`
      : "next to nothing behind it";
    return `Spectrum meter before and behind ${partName(at.part)}, ${spot}: full level before, ${behind}. Carriers inside its range lose only a few decibels. That proves the part.`;
  },
  neighbours: ["receiver-misses", "wrong-feed", "shared-frequencies"],
  picture: (told) => {
    const { at } = told.finding;
    const spot = spotOf(told);
    if (!spot) return null;
    const marks = markCarriers(
      spectrumAt(told, spot),
      (band, i) => band.origin.service === at.service && isCutBy(band, i, at.part),
      { kind: "lost", label: `stopped by ${partName(at.part)}` },
    );
    return pictureOf(told, spot, marks);
  },
};

function sums({ finding }: Here): { readonly lost: number; readonly of: number } {
  const { cuts } = finding.facts;
  const sum = (figure: (cut: CutFacts) => number) => cuts.reduce((all, cut) => all + figure(cut), 0);
  return { lost: sum((cut) => cut.lost), of: sum((cut) => cut.of) };
}

function countedAs({ finding: { at, facts } }: Here): Counted {
  return facts.cuts[0]?.band.sort === "user bands" ? "user band" : (at.service ?? "tv");
}

/** "Satellite V from …", "Satellite V and H from …": bands of one source in one phrase. */
function bandsCut({ finding: { facts } }: Here): string {
  return list([...new Set(facts.cuts.map((cut) => nameOfBand(cut.band)))]);
}

function stretchWords({ fromMHz, toMHz }: CutFacts["stretches"][number]): string {
  return `${numeral(fromMHz, 0)} to ${numeral(toMHz, 0)} MHz`;
}
