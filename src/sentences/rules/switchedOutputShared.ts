import { isLive } from "../../signal/readout.ts";
import { numeral } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../explain/picture.ts";
import { capital, plainNames } from "../explain/plainWords.ts";
import { list, partName } from "../phrases.ts";
import { askedWords, waveAsked } from "../planes.ts";
import type { RuleWords, Told } from "../ruleWords.ts";
import { portOfPart, voltsDo } from "../supplyWords.ts";

export const switchedOutputShared: RuleWords<"switched-output-shared"> = {
  title: "A switched output is shared by two receivers",
  explain:
    "A switched output delivers one of four quadrants at a time: the one that the highest voltage and any tone on the line ask for. " +
    "Two receivers on it fight, and each gets only what the other’s request leaves: a quarter of the transponders.",
  source: "13/18 V and 22 kHz control after EN 61319-1; sharing: common practice, no source",
  severities: ["error"],
  message: (told) => {
    const { at, facts } = told.finding;
    const who = list(facts.receivers.map(partName));
    const output = portOfPart(told.record, at.part, at.port ?? "");
    const by = facts.joins === undefined ? "" : ` through ${partName(facts.joins)}`;
    const both = facts.receivers.length === 2 ? "both" : "all of them";
    return plural(facts.receivers.length, {
      one: `The inputs of ${who} share ${output}${by}: all of them see only what one asks for.`,
      other: `${who} share ${output}${by}: ${both} see only what one asks for.`,
    });
  },
  cure: (told) =>
    hasNoHalves(told)
      ? plural(told.finding.facts.receivers.length, {
          one: "Give each input an output of its own.",
          other: "Give each receiver an output of its own.",
        })
      : plural(told.finding.facts.receivers.length, {
          one: "Give each input an output of its own, or use an SCR/dSCR LNB.",
          other: "Give each receiver an output of its own, or use an SCR/dSCR LNB.",
        }),
  customer: (told) => {
    const { receivers } = told.finding.facts;
    return plural(receivers.length, {
      one: `The inputs of ${plainNames(told, receivers)} share one connection that serves only one of them at a time, so one decides what the others can see.`,
      other: `${capital(plainNames(told, receivers))} share one connection that serves only one of them at a time, so one decides what the others can see.`,
    });
  },
  trade: (told) => {
    const { at, value, facts } = told.finding;
    const state = told.record?.switches[at.port ?? ""];
    const asks = (state?.offers ?? [])
      .filter((o) => !o.dormant && o.kind === "commands")
      .map(
        (o) =>
          `${partName(o.part)} asks for ${o.request ? `${waveAsked(told.evaluation.record(o.part), o.request.polarisation)} ${o.request.half}` : ""} (${voltsDo(o.volts, { one: "arrives", other: "arrive" })}${o.request?.half === "high" ? ", with tone" : ""})`,
      );
    if (hasNoHalves(told))
      return `${list(asks)}. On a shared line the highest voltage decides the polarisation (above ${numeral(state?.thresholdVolts ?? 0)} V is horizontal): the output is at ${facts.setting ?? "nothing"}. The others miss the other polarisation, half of the transponders.`;
    return (
      `${list(asks)}. On a shared line the highest voltage decides the polarisation (above ${numeral(state?.thresholdVolts ?? 0)} V is ${askedWords(told.record, "H")}). Tone from anybody ` +
      `decides the high band: the output is at ${facts.setting ?? "nothing"}. ${plural(value ?? 2, {
        one: "Each input reaches all four quadrants only while the others happen to ask for the same",
        other: (n) =>
          `The ${n} receivers each reach all four quadrants only while the others happen to ask for the same`,
      })}; otherwise a quarter of the transponders.`
    );
  },
  measure: ({ finding: { facts } }) => {
    const [first = "", second = ""] = facts.receivers;
    return plural(facts.receivers.length, {
      one: `Meter at an input of ${partName(first)}: note volts, tone and one transponder of another quadrant (not there). Unplug its other inputs: if volts and tone change and that transponder comes, the line is shared.`,
      other: `Meter at the socket of ${partName(second)}: note volts, tone and one transponder of another quadrant (not there). Unplug ${partName(first)}: if volts and tone change and that transponder comes, the line is shared.`,
    });
  },
  neighbours: ["receiver-misses", "user-band-conflict", "too-many-tuners"],
  picture: (told: Told<"switched-output-shared">) => {
    const spot = spotOf(told);
    if (!spot) return null;
    const marks = markCarriers(
      spectrumAt(told, spot),
      (band, i) => band.origin.service === "satellite" && band.selected && isLive(band, i),
      { kind: "stretch", label: `now: ${told.finding.facts.setting ?? "nothing"}` },
    );
    return pictureOf(told, spot, marks);
  },
};

/** The output belongs to an LNB of C band or Ka band, which switches the polarisation alone. */
function hasNoHalves({ record, finding: { at } }: Told<"switched-output-shared">): boolean {
  return record?.power.switches?.find((s) => s.port === at.port)?.by === "polarisation";
}
