import { plural } from "../../words/plural.ts";
import { pictureOf, spotOf } from "../explain/picture.ts";
import { capital, plainName } from "../explain/plainWords.ts";
import { partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";

export const tooManyTuners: RuleWords<"too-many-tuners"> = {
  title: "More tuners than feeds or user bands",
  explain:
    "A tuner needs a feed that it can set for itself. That is an output of its own, a whole polarisation, or a user band of its own. " +
    "Tuners beyond that share, and can only record or show what happens to be there.",
  source: "EN 50494 and EN 50607 for user bands; switched feeds: common practice, no source",
  severities: ["error", "warning"],
  message: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    const name = partName(at.part);
    if (facts.of === "feeds")
      return `The ${limit} tuners of ${name} share one switched feed: they can only tune within one quadrant.`;
    return plural(limit, {
      one: `${name} has one tuner but is set to no user band.`,
      other: (tuners) =>
        plural(value, {
          zero: `${name} has ${tuners} tuners but is set to no user band.`,
          one: `${name} has ${tuners} tuners but is set to 1 user band.`,
          other: (n) => `${name} has ${tuners} tuners but is set to ${n} user bands.`,
        }),
    });
  },
  cure: ({ finding: { at, facts } }) =>
    facts.of === "feeds"
      ? "Bring a feed to each tuner, or use an SCR/dSCR LNB."
      : `Set a free user band for each tuner of ${partName(at.part)}, if the LNB has one.`,
  customer: (told) =>
    `${capital(plainName(told, told.finding.at.part))} cannot watch and record as many programmes at once as it was built for, because its connection carries too few.`,
  trade: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    const ofBands = facts.of === "user bands";
    const tuners = plural(limit, { one: "one tuner", other: (n) => `${n} tuners` });
    const bands = plural(value, {
      zero: "no user band",
      one: "one user band",
      other: (n) => `${n} user bands`,
    });
    return (
      `${partName(at.part)} has ${tuners} and ${ofBands ? bands : "one feed that it can switch"}. ` +
      (ofBands
        ? "Each tuner needs a user band of its own: EN 50494 has up to 8 on an output, EN 50607 up to 32. A tuner without one cannot be tuned at all."
        : "All of them stay within the quadrant that the first one selects, a quarter of the transponders. Two tuners need two outputs, or a single-cable line with a user band each.")
    );
  },
  measure: ({ finding: { at, facts, value = 0, limit = 0 } }) =>
    facts.of === "user bands"
      ? `${plural(limit, {
          one: `In the menu of ${partName(at.part)}, look for its user band: if none is set, that proves it.`,
          other: (n) =>
            `In the menu of ${partName(at.part)}, count the user bands that are set: fewer than ${n}, one for each tuner, prove it.`,
        })} ${plural(value, {
          zero: "With a meter: no user band ever carries something for it.",
          one: "With a meter: only one user band ever carries something for it.",
          other: (n) => `With a meter: only ${n} user bands ever carry something for it.`,
        })}`
      : `Record a horizontal programme on ${partName(at.part)} and try to watch a vertical one: it fails, and the voltmeter at its plug stays near 18 V. That proves that one feed is shared.`,
  neighbours: ["user-band-conflict", "switched-output-shared", "wrong-feed"],
  picture: (told) => pictureOf(told, spotOf(told), []),
};
