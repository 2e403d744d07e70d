import type { EchoFacts } from "../../findings/rules/echo.ts";
import { notchDepthDb } from "../../rf/echo.ts";
import { numeral } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { pictureOf, spotOf } from "../explain/picture.ts";
import { plainName } from "../explain/plainWords.ts";
import { list, nameOfBand, partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";
import { outputShown } from "./outputShown.ts";

export const echo: RuleWords<"same-signal-twice"> = {
  title: "The same signal by two ways",
  explain:
    "When one signal is split and combined again, or two aerials hear one transmitter, the two copies arrive at different times. They cancel at some " +
    "frequencies and add at others. How badly depends on the lengths of cable, which is not calculated.",
  source: "common practice, no source",
  severities: ["warning", "note"],
  message: ({ finding: { at, facts } }) => {
    const bands = facts.bands.map(nameOfBand);
    const here = partName(at.part);
    const meets = plural(bands.length, {
      one: `${list(bands)} comes into ${here} by two ways and meets itself.`,
      other: `${list(bands)} come into ${here} by two ways each and meet themselves.`,
    });
    return `${meets} ${harm(facts)}`;
  },
  cure: ({ finding }) =>
    `Remove one of the two ways into ${partName(finding.at.part)}, or stop it with a filter.`,
  customer: (told) =>
    `The same signal reaches ${plainName(told, told.finding.at.part)} by two cables and gets in its own way. ${
      told.finding.facts.grade === "slight"
        ? "That will hardly be noticed."
        : "That can blot out some channels."
    }`,
  trade: ({ finding: { at, facts } }) => {
    const bands = facts.bands.map(nameOfBand);
    const here = partName(at.part);
    return (
      `${plural(bands.length, {
        one: `${list(bands)} comes into ${here} by two ways.`,
        other: `${list(bands)} come into ${here} by two ways each.`,
      })} Of two copies d metres of cable apart, one is late by about d/${numeral(0.25, 2)} ns (velocity ${numeral(0.83, 2)} of light in foam). ` +
      "They cancel every 250/d MHz. So 10 m put a notch into the band every 25 MHz. Copies of like level cancel wholly, one 10 dB below makes ripple of about 6 dB. " +
      `${harm(facts)} Where the notches lie depends on lengths and is not calculated.`
    );
  },
  measure: ({ finding }) =>
    `Spectrum meter behind ${partName(finding.at.part)}: the level over the band goes up and down like a comb. Unplug one of the two inputs: if the comb turns into a smooth line, the second way is proved.`,
  neighbours: ["loop", "shared-frequencies", "open-end"],
  picture: (told) => {
    const port = outputShown(told.record, told.finding.at.port);
    const spot = port === undefined ? null : spotOf(told, port);
    const { fromMHz, toMHz } = told.finding.facts;
    return pictureOf(told, spot, [{ kind: "clash", fromMHz, toMHz, label: "twice" }]);
  },
};

/** What the copies do to each other by how far they are apart. */
function harm({ differenceDb, grade }: EchoFacts): string {
  const apart = `${numeral(differenceDb)} dB apart`;
  const depth = notchDepthDb(differenceDb);
  if (depth > DEEPEST_DB) return "The copies are as strong as each other, so they can cancel wholly.";
  const notches = `The copies are ${apart}, so they cut notches of ${numeral(depth)} dB into channels`;
  return grade === "slight" ? `${notches}: that is slight.` : `${notches}.`;
}

/** Deeper than this nobody measures a notch [dB]. */
const DEEPEST_DB = 30;
