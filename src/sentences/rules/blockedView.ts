import { numeral } from "../../words/numbers.ts";
import { plainName } from "../explain/plainWords.ts";
import { besideLimit } from "../figures.ts";
import { partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";

export const blockedView: RuleWords<"blocked-view"> = {
  title: "A dish that cannot see its satellite",
  explain:
    "A dish needs a free view of its satellite. A roof edge, a wall or a tree takes some or all of the signal. " +
    "A satellite below the horizon cannot be received at all.",
  source: "Direction from the orbit’s geometry; loss behind an edge by ITU-R P.526, from memory",
  severities: ["error", "warning"],
  message: ({ finding: { at, facts } }) => {
    const name = partName(at.part);
    if (facts.kind === "below the horizon")
      return `The satellite of ${name} stands ${degrees(-facts.elevationDeg)} below the horizon of the site: nothing can be received.`;
    return `Before ${name} an obstacle reaches up to ${degrees(facts.topDeg)}, and the satellite has an elevation of ${degrees(facts.elevationDeg)}. It takes ${numeral(facts.lossDb)} dB.`;
  },
  cure: ({ finding: { at, facts } }) =>
    facts.kind === "below the horizon"
      ? `Choose a satellite above the horizon for ${partName(at.part)}, or correct its orbital position and the place.`
      : `Move ${partName(at.part)} to a place with a free view, or take the obstacle away.`,
  customer: (told) =>
    told.finding.facts.kind === "below the horizon"
      ? `The satellite that ${plainName(told, told.finding.at.part)} is meant for cannot be seen from here.`
      : `Something stands between ${plainName(told, told.finding.at.part)} and the satellite, so programmes are missing or break up.`,
  trade: ({ finding: { at, facts } }) => {
    const name = partName(at.part);
    if (facts.kind === "below the horizon")
      return `From the site of ${name} the satellite has an elevation of ${degrees(facts.elevationDeg)}. Check the signs of longitude and orbital position: east is positive.`;
    const [elevation, top] = besideLimit(facts.elevationDeg, facts.topDeg);
    return `${name} looks to azimuth ${degrees(facts.azimuthDeg)}, elevation ${elevation}°, and there the obstacle reaches up to ${top}°. An edge that just touches the ray takes 6 dB, and each degree above it some decibels more.`;
  },
  measure: ({ finding: { at } }) =>
    `Go to ${partName(at.part)} with a compass and an inclinometer, and look along its azimuth and elevation. The sun stands in that direction on a few days around the equinoxes: where its light falls on the whole dish, the view is free.`,
  neighbours: ["level-limits", "low-carrier-to-noise", "receiver-misses"],
  picture: () => null,
};

function degrees(value: number): string {
  return `${numeral(value, 0)}°`;
}
