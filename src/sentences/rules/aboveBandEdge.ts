import { BAND_EDGE_MHZ, isAboveBandEdge } from "../../findings/rules/aboveBandEdge.ts";
import { numeralAsSet } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../explain/picture.ts";
import { plainName } from "../explain/plainWords.ts";
import { carriers, list, partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";

export const aboveBandEdge: RuleWords<"above-band-edge"> = {
  title: "Channels above the present band edge",
  explain:
    "TV above 694 MHz (channel 48) was cleared for phones. A plan that still lists such channels is out of date, and phone masts transmit there now.",
  source: "470 to 694 MHz: Decision (EU) 2017/899, from memory",
  severities: ["note"],
  message: ({ finding: { at, facts } }) => {
    const n = facts.channels.length;
    const which = `${partName(at.part)} lists ${carriers(n, "tv")} above ${numeralAsSet(BAND_EDGE_MHZ)} MHz (${list(facts.channels)})`;
    return plural(n, {
      one: `${which}: no transmitter uses it now, so nobody misses it.`,
      other: `${which}: no transmitter uses them now, so nobody misses them.`,
    });
  },
  cure: ({ finding }) =>
    plural(finding.facts.channels.length, {
      one: "Take it out of the aerial’s plan, and consider a filter against phone masts.",
      other: "Take them out of the aerial’s plan, and consider a filter against phone masts.",
    }),
  customer: (told) =>
    plural(told.finding.facts.channels.length, {
      one: `The list of channels of ${plainName(told, told.finding.at.part)} is out of date, since one of them is used by mobile phones today.`,
      other: `The list of channels of ${plainName(told, told.finding.at.part)} is out of date, since some of them are used by mobile phones today.`,
    }),
  trade: ({ finding: { at, facts } }) =>
    `The plan of ${partName(at.part)} holds ${carriers(facts.channels.length, "tv")} above ${numeralAsSet(BAND_EDGE_MHZ)} MHz, the upper edge of channel 48. Since the bands at 700 and 800 MHz were cleared, phones transmit at 703 to 733 and 832 to 862 MHz. Masts transmit at 758 to 821 MHz. ` +
    "A wideband aerial takes that power in without use, and it drives amplifiers. A new plan and a filter that ends at 694 MHz are the remedy.",
  measure: ({ finding }) =>
    `Spectrum meter at ${partName(finding.at.part)}, from 694 to 862 MHz: no TV channel locks there. Blocks of 10 MHz that come and go are phone masts. If they are as strong as TV, put the filter before the first amplifier.`,
  neighbours: ["overload", "shared-frequencies"],
  picture: (told) => {
    const spot = spotOf(told);
    if (!spot) return null;
    const marks = markCarriers(spectrumAt(told, spot), isAboveBandEdge, { kind: "wrong", label: "cleared" });
    return pictureOf(told, spot, marks);
  },
};
