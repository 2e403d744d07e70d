import { plural } from "../../words/plural.ts";
import { capital, plainName, plainNames } from "../explain/plainWords.ts";
import { list, partName } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";
import { portOfPart, portsWords } from "../supplyWords.ts";

export const notConnected: RuleWords<"not-connected"> = {
  title: "Nothing is connected",
  explain:
    "A part whose input is open has nothing to work on; one whose outputs are all open does nothing for anybody. " +
    "While a design is being drawn that is no fault. It is one as soon as a receiver is without something because of it.",
  source: "common practice, no source",
  severities: ["error", "note"],
  message: (told) => {
    const { at, facts } = told.finding;
    if (facts.kind === "missed" && isOffDish(told, facts.ports))
      return `${partName(at.part)} is on no dish, so ${withoutSignal(facts.receivers, at.part)}.`;
    const asked = facts.kind === "missed" ? emptyPosition(told, facts.ports) : undefined;
    if (facts.kind === "missed" && asked) {
      const askers = list(facts.receivers.map(partName));
      const where = `${partName(at.part)} for position ${asked.empty}, where nothing is connected`;
      return plural(facts.receivers.length, {
        one: `${askers} asks ${where}.`,
        other: `${askers} ask ${where}.`,
      });
    }
    if (facts.kind === "missed")
      return plural(facts.ports.length, {
        one: `Nothing is connected to ${inputsOf(told, facts.ports)}, so ${withoutSignal(facts.receivers, at.part)}.`,
        other: `Nothing is connected to ${inputsOf(told, facts.ports)}, so ${withoutSignal(facts.receivers, at.part)}.`,
      });
    const { ends } = facts;
    const [first] = ends;
    return plural(ends.length, {
      one: `1 end is still open: ${portOfPart(told.evaluation.record(first.part), first.part, first.port)}.`,
      other: (n) => `${n} ends are still open: ${list([...new Set(ends.map((e) => e.part))].map(partName))}.`,
    });
  },
  cure: (told) => {
    const { facts } = told.finding;
    if (facts.kind === "missed" && isOffDish(told, facts.ports))
      return `Put ${partName(told.finding.at.part)} onto its dish.`;
    const asked = facts.kind === "missed" ? emptyPosition(told, facts.ports) : undefined;
    if (facts.kind === "missed" && asked)
      return `Set ${list(facts.receivers.map(partName))} to ${asked.inUse}, or connect position ${asked.empty}.`;
    return facts.kind === "missed" ? `Connect ${inputsOf(told, facts.ports)}.` : undefined;
  },
  customer: (told) => {
    const { at, facts } = told.finding;
    if (facts.kind === "missed" && isOffDish(told, facts.ports))
      return `${capital(plainName(told, at.part))} is on no dish, so ${plainNames(told, facts.receivers)} cannot get what it would receive.`;
    if (facts.kind === "missed") {
      const isCable = told.record?.kind.trade.job === "cable";
      const lack = isCable
        ? "A cable is not plugged in"
        : `A cable is missing at ${plainName(told, at.part)}`;
      return `${lack}, so ${plainNames(told, facts.receivers)} cannot get what belongs there.`;
    }
    return plural(facts.ends.length, {
      one: `One connection of ${plainName(told, at.part)} is still free, which is fine if it is meant to be.`,
      other: (n) => `There are ${n} connections still free, which is fine if they are meant to be.`,
    });
  },
  trade: (told) => {
    const { at, facts } = told.finding;
    if (facts.kind === "missed")
      return (
        `What ${list(facts.receivers.map(partName))} should get would come in at ${inputsOf(told, facts.ports)}, and no other way to a source was found. ` +
        `Either the lead of ${partName(at.part)} is off, or this drawing lacks a wire.`
      );
    const shown = facts.ends
      .slice(0, 12)
      .map((end) => portOfPart(told.evaluation.record(end.part), end.part, end.port));
    return (
      `Open are, of ${plural(facts.ends.length, { one: "1 end", other: (n) => `${n} ends` })}: ${list(shown)}. A part without input delivers nothing, and ` +
      "one that leads nowhere only loads the line before it. A free connection on purpose is no fault, and nobody suffers from these."
    );
  },
  measure: ({ finding: { at } }) =>
    `Look first: is the cable of ${partName(at.part)} plugged in and labelled? If it is, this drawing lacks a wire. A level meter on the loose cable end shows whether signal is waiting there.`,
  neighbours: ["open-end", "receiver-misses"],
  picture: () => null,
};

/** "the input of ⟦plate⟧", "inputs VL and HL of ⟦ms⟧". */
function inputsOf(told: Told<"not-connected">, ports: readonly string[]): string {
  const { part } = told.finding.at;
  return `${portsWords(told.evaluation.record(part), ports).replace(/^its /, "the ")} of ${partName(part)}`;
}

function withoutSignal(receivers: readonly string[], part: string): string {
  const [only] = receivers;
  if (receivers.length === 1 && only === part) return "it lacks what would come in there";
  return plural(receivers.length, {
    one: `${list(receivers.map(partName))} is without signal from there`,
    other: `${list(receivers.map(partName))} are without signal from there`,
  });
}

/** More positions than these are not listed. */
const MOST_POSITIONS_TOLD = 3;

/** An open position of a switch that has LNBs on others: the receiver asks for the wrong one, or a lead is off. */
function emptyPosition(
  { record }: Told<"not-connected">,
  [port, ...others]: readonly string[],
): { readonly empty: string; readonly inUse: string } | undefined {
  const inputs = record?.ports.filter((p) => p.role === "position") ?? [];
  const empty = inputs.find((p) => p.id === port);
  const inUse = inputs.filter((p) => record?.joined[p.id]).map((p) => p.label);
  if (!empty || others.length > 0 || inUse.length === 0) return undefined;
  const words =
    inUse.length > MOST_POSITIONS_TOLD ? "one that is connected" : `position ${inUse.join(" or ")}`;
  return { empty: empty.label, inUse: words };
}

/** Whether what is open is the feed of an LNB, which sits on a dish and has no lead. */
function isOffDish({ record }: Told<"not-connected">, ports: readonly string[]): boolean {
  return ports.every((id) => record?.ports.find((p) => p.id === id)?.medium === "sky");
}
