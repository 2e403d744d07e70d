import { numeral, numeralAsSet } from "../../words/numbers.ts";
import { pictureOf, spotOf } from "../explain/picture.ts";
import { capital, plainNames } from "../explain/plainWords.ts";
import { beside, partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";

export const dwellingIsolation: RuleWords<"dwelling-isolation"> = {
  title: "Too little isolation between flats",
  explain:
    "A receiver sends a little of its own oscillator and of its supply’s noise back up the cable. There must be enough loss " +
    "between two flats that neither disturbs the other. Isolation is the loss of both ways and that of the part where they meet. " +
    "An outlet on a riser counts with its own sockets. Only the frequencies that an outlet gets are looked at; amplifiers let nothing back.",
  source: "The isolation limits chosen for the design, each with its own source",
  severities: ["warning"],
  message: ({ finding: { facts, value = 0, limit = 0 } }) =>
    `Between ${partName(facts.outlets[0])} (${facts.dwellings[0]}) and ${partName(facts.outlets[1])} (${facts.dwellings[1]}) there are only ` +
    `${beside(value, limit)} dB at ${numeral(facts.frequencyMHz)} MHz; ${numeralAsSet(limit)} dB are asked for.`,
  cure: ({ finding: { at } }) =>
    `Replace ${partName(at.part)} with a part of higher isolation, or fit outlets with more loss to the sockets.`,
  customer: (told) =>
    `${capital(plainNames(told, told.finding.facts.outlets))} belong to different flats and are not isolated enough, so a receiver in one can disturb the other.`,
  trade: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    const [one, other] = facts.outlets;
    const ways =
      at.part === one || at.part === other
        ? `From the sockets of ${partName(at.part)} to the line behind it, and down to ${partName(at.part === one ? other : one)}`
        : `From ${partName(one)} up to ${partName(at.part)} and down to ${partName(other)}`;
    return (
      `${ways} lie ${beside(value, limit)} dB at ${numeral(facts.frequencyMHz)} MHz. ` +
      `${numeralAsSet(limit)} dB are asked for from ${numeralAsSet(facts.fromMHz)} to ${numeralAsSet(facts.toMHz)} MHz. ` +
      "That is the worst of the frequencies that the outlets get. Loss in an outlet at either end adds to it."
    );
  },
  measure: ({ finding: { facts, value = 0, limit = 0 } }) =>
    `Feed a signal generator or noise source of known level into ${partName(facts.outlets[0])} at ${numeral(facts.frequencyMHz)} MHz and read the level meter at ${partName(facts.outlets[1])}. ` +
    `If it reads only ${numeral(value)} dB less, the lack of isolation is proved; ${numeralAsSet(limit)} dB less would be in order.`,
  neighbours: ["open-end", "level-limits"],
  picture: (told) => {
    const { facts, limit = 0 } = told.finding;
    const outlet = told.evaluation.record(facts.outlets[0]);
    const input = outlet?.ports.find((p) => p.side === "in");
    const spot = outlet && input ? spotOf({ ...told, record: outlet }, input.id) : null;
    const { fromMHz, toMHz } = facts;
    return pictureOf(told, spot, [
      { kind: "stretch", fromMHz, toMHz, label: `${numeralAsSet(limit)} dB asked for` },
    ]);
  },
};
