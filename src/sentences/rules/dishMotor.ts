import { numeral } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { pictureOf, spotOf } from "../explain/picture.ts";
import { capital, plainName } from "../explain/plainWords.ts";
import { list, partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";

export const dishMotor: RuleWords<"motor-line"> = {
  title: "A dish motor that is not commanded, shared, or too weakly fed",
  explain:
    "A dish motor obeys the commands of one receiver on its cable and lives on that receiver’s supply. While it turns it draws several times as much as at rest.",
  source: "DiSEqC and usual currents, from memory; one receiver for a motor: common practice, no source",
  severities: ["error", "warning"],
  message: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    const name = partName(at.part);
    switch (facts.kind) {
      case "no commands":
        return `${partName(facts.receiver)} sends no motor commands, so ${name} never turns the dish.`;
      case "shared":
        return `${list(facts.receivers.map(partName))} share ${name}: each turns the dish away from what the others watch.`;
      case "too much current":
        return `While ${name} turns, ${partName(facts.supply)} must give ${numeral(value)} mA, and it gives ${numeral(limit)} mA at most.`;
    }
  },
  cure: ({ finding: { facts } }) => {
    switch (facts.kind) {
      case "no commands":
        return `Set ${partName(facts.receiver)} to send motor commands.`;
      case "shared":
        return "Give the motor to one receiver, and the others a dish or an LNB of their own.";
      case "too much current":
        return "Use a receiver with a stronger supply, or a motor or LNB that draws less.";
    }
  },
  customer: (told) => {
    const { at, facts } = told.finding;
    const name = plainName(told, at.part);
    switch (facts.kind) {
      case "no commands":
        return `${capital(plainName(told, facts.receiver))} does not tell ${name} to turn, so only one satellite is received.`;
      case "shared":
        return "Several receivers turn the same dish, and only one of them sees what it wants.";
      case "too much current":
        return `${capital(plainName(told, facts.supply))} is too weak to turn the dish: it stops halfway, or the picture goes.`;
    }
  },
  trade: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    const name = partName(at.part);
    switch (facts.kind) {
      case "no commands":
        return `${name} waits for motor commands by 22 kHz (DiSEqC). ${partName(facts.receiver)} feeds it and sends none, so the dish stays where it stands.`;
      case "shared":
        return `${plural(facts.receivers.length, { one: "One receiver sends", other: (n) => `${n} receivers send` })} to ${name}. A motor has one place at a time and follows the last command.`;
      case "too much current":
        return `Motor and LNB together draw ${numeral(value)} mA while ${name} turns. ${partName(facts.supply)} is made for ${numeral(limit)} mA: its protection cuts in, and the motor stops.`;
    }
  },
  measure: ({ finding: { at, facts, limit = 0 } }) => {
    switch (facts.kind) {
      case "no commands":
        return `Look into the menu of ${partName(facts.receiver)} for a motor. A meter that sends such commands from its plug turns the dish.`;
      case "shared":
        return "Unplug all receivers but one: with it alone the dish stays where it was sent.";
      case "too much current":
        return `Ammeter in the line of ${partName(at.part)} while it turns: more than ${numeral(limit)} mA, or volts that come and go, prove it.`;
    }
  },
  neighbours: ["supply-overloaded", "switched-output-shared", "command-lost"],
  picture: (told) => {
    const spot = spotOf(told);
    return spot ? pictureOf(told, spot, []) : null;
  },
};
