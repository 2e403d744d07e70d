import { isAboveBandEdge, isNowhere } from "../../findings/rules/aboveBandEdge.ts";
import { numeralAsSet } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../explain/picture.ts";
import { plainName } from "../explain/plainWords.ts";
import { carriers, list, partName } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";

export const aboveBandEdge: RuleWords<"above-band-edge"> = {
  title: "Channels above the band edge, or in no TV band",
  explain:
    "TV above 694 MHz (channel 48 in Europe) was cleared for phones. A plan that still lists such channels is out of date, and phone masts transmit there now. A number that lies in no TV band is wrong, or belongs to another channel raster.",
  source: "470 to 694 MHz: Decision (EU) 2017/899, from memory; 698 MHz in the Americas, from memory",
  severities: ["note"],
  message: (told) => [...aboveMessage(told), ...nowhereMessage(told)].join(" "),
  cure: ({ finding: { facts } }) =>
    [
      ...(facts.channels.length === 0
        ? []
        : [
            plural(facts.channels.length, {
              one: "Take it out of the aerial’s plan, and consider a filter against phone masts.",
              other: "Take them out of the aerial’s plan, and consider a filter against phone masts.",
            }),
          ]),
      ...(facts.nowhere.length === 0
        ? []
        : [
            plural(facts.nowhere.length, {
              one: "Correct the number, or set the channel raster of the country.",
              other: "Correct the numbers, or set the channel raster of the country.",
            }),
          ]),
    ].join(" "),
  customer: (told) => {
    const { channels, nowhere } = told.finding.facts;
    const name = plainName(told, told.finding.at.part);
    if (channels.length === 0)
      return plural(nowhere.length, {
        one: `The list of channels of ${name} has a number that no TV channel has here.`,
        other: `The list of channels of ${name} has numbers that no TV channel has here.`,
      });
    return plural(channels.length, {
      one: `The list of channels of ${name} is out of date, since one of them is used by mobile phones today.`,
      other: `The list of channels of ${name} is out of date, since some of them are used by mobile phones today.`,
    });
  },
  trade: ({ finding: { at, facts } }) =>
    [
      ...(facts.channels.length === 0
        ? []
        : [
            `The plan of ${partName(at.part)} holds ${carriers(facts.channels.length, "tv")} above ${numeralAsSet(facts.edgeMHz)} MHz, the band edge of TV today. In Europe the bands at 700 and 800 MHz were cleared: phones transmit at 703 to 733 and 832 to 862 MHz. Masts transmit at 758 to 821 MHz.`,
            `A wideband aerial takes that power in without use, and it drives amplifiers. A new plan and a filter that ends at ${numeralAsSet(facts.edgeMHz)} MHz are the remedy.`,
          ]),
      ...(facts.nowhere.length === 0
        ? []
        : [
            `The plan of ${partName(at.part)} holds ${carriers(facts.nowhere.length, "tv")} that lie neither in Band III, 174 to 230 MHz, nor above 470 MHz. Channel 14 begins at 470 MHz where channels are 6 MHz wide; where they are 8 MHz wide it is channel 21.`,
          ]),
    ].join(" "),
  measure: ({ finding: { at, facts } }) =>
    facts.channels.length === 0
      ? `Spectrum meter at ${partName(at.part)}: run a channel search, and enter what locks by its frequency.`
      : `Spectrum meter at ${partName(at.part)}, from ${numeralAsSet(facts.edgeMHz)} to 862 MHz: no TV channel locks there. Blocks of 10 MHz that come and go are phone masts. If they are as strong as TV, put the filter before the first amplifier.`,
  neighbours: ["overload", "shared-frequencies"],
  picture: (told) => {
    const spot = spotOf(told);
    if (!spot) return null;
    const spectrum = spectrumAt(told, spot);
    const marks = [
      ...markCarriers(spectrum, isAboveBandEdge, { kind: "wrong", label: "cleared" }),
      ...markCarriers(spectrum, isNowhere, { kind: "wrong", label: "no channel" }),
    ];
    return pictureOf(told, spot, marks);
  },
};

function aboveMessage({ finding: { at, facts } }: Told<"above-band-edge">): readonly string[] {
  const n = facts.channels.length;
  if (n === 0) return [];
  const which = `${partName(at.part)} lists ${carriers(n, "tv")} above ${numeralAsSet(facts.edgeMHz)} MHz (${list(facts.channels)})`;
  return [
    plural(n, {
      one: `${which}: no transmitter uses it now, so nobody misses it.`,
      other: `${which}: no transmitter uses them now, so nobody misses them.`,
    }),
  ];
}

function nowhereMessage({ finding: { at, facts } }: Told<"above-band-edge">): readonly string[] {
  const n = facts.nowhere.length;
  if (n === 0) return [];
  const which = `${partName(at.part)} lists ${carriers(n, "tv")} outside all TV bands (${list(facts.nowhere)})`;
  return [
    plural(n, {
      one: `${which}: its number or the channel raster is wrong.`,
      other: `${which}: their numbers or the channel raster are wrong.`,
    }),
  ];
}
