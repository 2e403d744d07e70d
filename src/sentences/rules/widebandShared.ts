import { numeral } from "../../words/numbers.ts";
import { pictureOf, spotOf } from "../explain/picture.ts";
import { plainName } from "../explain/plainWords.ts";
import { partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";
import { outputShown } from "./outputShown.ts";

export const widebandShared: RuleWords<"wideband-shared"> = {
  title: "Wideband satellite and terrestrial TV on one cable",
  explain:
    "A wideband LNB fills its cables from about 300 to 2350 MHz, so it lies over terrestrial TV. A plain combiner lets the two drown each other; " +
    "a diplexer stops the lower part of the one or the upper part of the other. The feed needs two cables of its own.",
  source: `IF = RF − LO with an oscillator at ${numeral(10_400)} MHz; common practice, no source`,
  severities: ["error", "note"],
  message: ({ finding: { facts } }) =>
    facts.isEveryLine
      ? `${partName(facts.converter)} is a wideband LNB: its feed lies over terrestrial TV and cannot share a cable with it, as behind ${partName(facts.joiner)}.`
      : `${partName(facts.joiner)} puts TV from ${partName(facts.terrestrial)} onto a wideband lead of ${partName(facts.converter)}: the two lie over each other.`,
  cure: ({ finding: { facts } }) =>
    facts.isEveryLine
      ? `Replace ${partName(facts.converter)} with an SCR/dSCR LNB, or give the wideband receivers two cables of their own.`
      : `Run TV from ${partName(facts.terrestrial)} on a cable of its own.`,
  customer: (told) =>
    `The new unit at the dish and the aerial cannot share one cable, as they do behind ${plainName(told, told.finding.facts.joiner)}.`,
  trade: ({ finding: { facts } }) =>
    `TV from ${partName(facts.terrestrial)} lies between ${numeral(facts.fromMHz, 0)} and ${numeral(facts.toMHz, 0)} MHz; ${partName(facts.converter)} sends transponders from about 300 MHz upwards. ` +
    "No filter can keep both: whatever passes TV whole takes these transponders away, and whatever passes the feed whole lets the two drown each other.",
  measure: ({ finding: { facts } }) =>
    `Spectrum meter behind ${partName(facts.joiner)}: unplug the aerial, and power remains between ${numeral(facts.fromMHz, 0)} and ${numeral(facts.toMHz, 0)} MHz, or nothing below 950 MHz where a diplexer stops it.`,
  neighbours: ["shared-frequencies", "band-cut", "wrong-feed"],
  picture: (told) => {
    const { at, facts } = told.finding;
    const port = outputShown(told.record, at.port);
    const spot = port === undefined ? null : spotOf(told, port);
    return pictureOf(told, spot, [
      { kind: "clash", fromMHz: facts.fromMHz, toMHz: facts.toMHz, label: "both here" },
    ]);
  },
};
