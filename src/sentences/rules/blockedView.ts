import { numeral } from "../../words/numbers.ts";
import { plainName } from "../explain/plainWords.ts";
import { besideLimit } from "../figures.ts";
import { partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";

export const blockedView: RuleWords<"blocked-view"> = {
  title: "A dish that cannot see its satellite",
  explain:
    "A dish needs a free view of its satellite. A roof edge, a wall or a tree takes some or all of the signal. " +
    "A satellite below the horizon cannot be received at all. An LNB beside the first must sit where its own satellite’s beam meets.",
  source:
    "Direction from the orbit’s geometry; loss behind an edge by ITU-R P.526; place of a feed by the beam deviation factor; from memory",
  severities: ["error", "warning"],
  message: ({ finding: { at, facts } }) => {
    const name = partName(at.part);
    if (facts.kind === "below the horizon")
      return `The satellite of ${name} stands ${degrees(-facts.elevationDeg)} below the horizon of the site: nothing can be received.`;
    if (facts.kind === "feed beside its place") {
      const [is, needed] = [facts.spacingMm, facts.neededMm].map((mm) => numeral(mm, 0));
      const sits = facts.isMonoblock
        ? `The LNBs of the monoblock on ${name} are ${is} mm apart, and ${needed} mm are needed here`
        : `The LNB of feed ${facts.feed} of ${name} sits ${is} mm from the first and belongs at ${needed} mm`;
      return `${sits}. ${facts.isMonoblock ? "The second" : "It"} looks ${numeral(facts.pastDeg)}° past its satellite, which takes ${numeral(facts.lossDb)} dB.`;
    }
    return `Before ${name} an obstacle reaches up to ${degrees(facts.topDeg)}, and the satellite has an elevation of ${degrees(facts.elevationDeg)}. It takes ${numeral(facts.lossDb)} dB.`;
  },
  cure: ({ finding: { at, facts } }) => {
    if (facts.kind === "feed beside its place")
      return facts.isMonoblock
        ? `Use a monoblock that is made for ${partName(at.part)}, or two LNBs with a position switch.`
        : `Move the LNB of feed ${facts.feed} to ${numeral(facts.neededMm, 0)} mm from the first.`;
    return facts.kind === "below the horizon"
      ? `Choose a satellite above the horizon for ${partName(at.part)}, or correct its orbital position and the place.`
      : `Move ${partName(at.part)} to a place with a free view, or take the obstacle away.`;
  },
  customer: (told) => {
    if (told.finding.facts.kind === "feed beside its place")
      return `The part for the second satellite does not fit ${plainName(told, told.finding.at.part)}, so programmes from there are missing or break up in rain.`;
    return told.finding.facts.kind === "below the horizon"
      ? `The satellite that ${plainName(told, told.finding.at.part)} is meant for cannot be seen from here.`
      : `Something stands between ${plainName(told, told.finding.at.part)} and the satellite, so programmes are missing or break up.`;
  },
  trade: ({ finding: { at, facts } }) => {
    const name = partName(at.part);
    if (facts.kind === "below the horizon")
      return `From the site of ${name} the satellite has an elevation of ${degrees(facts.elevationDeg)}. Check the signs of longitude and orbital position: east is positive.`;
    if (facts.kind === "feed beside its place")
      return (
        `A feed ${numeral(facts.spacingMm, 0)} mm beside the first one looks beside it by an angle that depends on the size of the dish. A larger dish needs more millimetres for the same angle. ` +
        `Turned to the middle between both satellites, ${name} shares the error: half the angle for each, about a quarter of the decibels.`
      );
    const [elevation, top] = besideLimit(facts.elevationDeg, facts.topDeg);
    return `${name} looks to azimuth ${degrees(facts.azimuthDeg)}, elevation ${elevation}°, and there the obstacle reaches up to ${top}°. An edge that just touches the ray takes 6 dB, and each degree above it some decibels more.`;
  },
  measure: ({ finding: { at, facts } }) => {
    if (facts.kind === "feed beside its place")
      return `Align ${partName(at.part)} on the first satellite, then turn it slowly with the meter on the LNB of feed ${facts.feed}. If its level rises well above what it was, this LNB sits beside its place.`;
    return `Go to ${partName(at.part)} with a compass and an inclinometer, and look along its azimuth and elevation. The sun stands in that direction on a few days around the equinoxes: where its light falls on the whole dish, the view is free.`;
  },
  neighbours: ["level-limits", "low-carrier-to-noise", "receiver-misses"],
  picture: () => null,
};

function degrees(value: number): string {
  return `${numeral(value, 0)}°`;
}
