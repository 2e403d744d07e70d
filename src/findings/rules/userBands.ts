import type { Facts } from "../../sentences/explain/explanation.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../../sentences/explain/picture.ts";
import { capital, plainName, plainNames } from "../../sentences/explain/plainWords.ts";
import { list, partName, round1 } from "../../sentences/phrases.ts";
import type { SwitchState } from "../../signal/control.ts";
import { plural } from "../../words/plural.ts";
import { type SpokenDraft, type SpokenRule, spokenOf, wireAt } from "../rule.ts";

/** User bands used twice, and receivers that hold a single-cable line with the wrong voltage. */
export const userBands: SpokenRule = {
  id: "user-band-conflict",
  title: "User bands in conflict",
  explain:
    "On a single-cable line every tuner has a user band of its own. Two tuners on one band retune each other; a receiver left in " +
    "universal mode holds the line at 18 V or sends steady tone, and nobody else's messages get through.",
  source: "EN 50494 and EN 50607, as quoted",
  check: ({ record }) => {
    const declared = record.power.switches ?? [];
    return declared
      .filter((d) => d.by === "stack")
      .flatMap((d) => {
        const state = record.switches[d.port];
        return state
          ? [
              ...twice(record.part.id, state, wireAt(record, d.port)).map((f) => ({ ...f, port: d.port })),
              ...wrongMode(record.part.id, state, wireAt(record, d.port)),
            ]
          : [];
      });
  },
  explanation: {
    severities: ["error"],
    customer: (facts) =>
      facts.finding.value === undefined
        ? `${capital(plainName(facts, facts.finding.parts[0]))} is not set up for the cable it shares and blocks it for the others.`
        : plural(new Set(facts.finding.parts.slice(1)).size, {
            one: `Two tuners of ${plainNames(facts, facts.finding.parts.slice(1))} are set to the same place on the shared cable and keep taking it from each other.`,
            other: `${capital(plainNames(facts, facts.finding.parts.slice(1)))} are set to the same place on the shared cable and keep taking it from each other.`,
          }),
    trade: (facts) => {
      const { finding } = facts;
      if (finding.value === undefined)
        return (
          `On a single-cable line everybody rests at 13 V and rises to 18 V only for the few milliseconds of a message. ${partName(finding.parts[0] ?? "")} is in universal mode: it holds 13 or 18 V and sends ` +
          `steady tone of 22 kHz, so the messages of the others never stand out, and ${partName(finding.parts[1] ?? "")} obeys nobody.`
        );
      const at = userBandOf(facts);
      return (
        `User band ${at.number}${at.centreMHz === undefined ? "" : `, centred on ${round1(at.centreMHz)} MHz,`} is set at ${finding.value} tuners; each user band may have ${finding.limit ?? 1}. Each message moves another transponder onto it, so whoever spoke ` +
        `last has it and ${plural((finding.value ?? 2) - 1, { one: "the other loses lock", other: "the others lose lock" })}. EN 50494 allows up to 8 user bands on an output, EN 50607 up to 32.`
      );
    },
    measure: ({ finding }) =>
      finding.value === undefined
        ? `Voltmeter on the line at ${partName(finding.parts[1] ?? "")}: in rest 13 V belong there. With ${partName(finding.parts[0] ?? "")} plugged in it stays near 18 V or shows steady tone; unplug it, and the others work again.`
        : `${plural(new Set(finding.parts.slice(1)).size, {
            one: `Look into the menu of ${partName(finding.parts[1] ?? "")}: the same user band number twice proves it.`,
            other: `Look into the menus of ${list([...new Set(finding.parts.slice(1))].map(partName))}: the same user band number proves it.`,
          })} With a meter: that user band's centre shows a carrier that changes whenever the other tuner changes channel.`,
    neighbours: ["too-many-tuners", "switched-output-shared", "receiver-misses"],
    picture: (facts) => {
      const spot = spotOf(facts, facts.finding.value === undefined ? undefined : facts.finding.at.port);
      if (!spot) return null;
      const { number } = userBandOf(facts);
      const everything = facts.finding.value === undefined;
      const marks = markCarriers(
        spectrumAt(facts, spot),
        (band, i) => band.stack !== undefined && (everything || band.stack.numbers[i] === number),
        { kind: everything ? "lost" : "clash", label: everything ? "blocked" : `user band ${number}` },
      );
      return pictureOf(facts, spot, marks);
    },
  },
};

/** The user band that a finding speaks of: the first that two tuners share at its port. */
function userBandOf({ finding, record }: Facts): { readonly number: number; readonly centreMHz?: number } {
  const number = Number(/^User band (\d+)/.exec(spokenOf(finding))?.[1] ?? 0);
  for (const band of record?.outputs[finding.at.port ?? ""]?.bands ?? []) {
    const centreMHz = band.grid.centre[band.stack?.numbers.indexOf(number) ?? -1];
    if (centreMHz !== undefined) return { number, centreMHz };
  }
  return { number };
}

type Found = SpokenDraft;

function twice(part: string, state: SwitchState, wires: readonly string[]): Found[] {
  const users = new Map<number, string[]>();
  for (const offer of state.offers)
    for (const ub of offer.request?.userBands ?? []) users.set(ub, [...(users.get(ub) ?? []), offer.part]);
  return [...users]
    .filter(([, parts]) => parts.length > 1)
    .map(([ub, parts]) => ({
      severity: "error",
      parts: [part, ...new Set(parts)],
      wires,
      message: plural(new Set(parts).size, {
        one: `User band ${ub} of ${partName(part)} is set for ${parts.length} tuners of ${partName(parts[0] ?? "")}: they retune each other.`,
        other: `User band ${ub} of ${partName(part)} is used by ${list([...new Set(parts)].map(partName))}: they retune each other.`,
      }),
      value: parts.length,
      limit: 1,
      unit: "users",
      source: userBands.source,
      cure: "Give each tuner a user band of its own.",
    }));
}

function wrongMode(part: string, state: SwitchState, wires: readonly string[]): Found[] {
  return state.offers
    .filter((o) => o.kind === "commands" && !o.request?.userBands)
    .map((o) => ({
      severity: "error",
      parts: [o.part, part],
      wires,
      message: `${partName(o.part)} is not in single-cable mode but hangs on the single-cable line of ${partName(part)}: it holds the line, and the other receivers cannot send their messages.`,
      source: userBands.source,
      cure: "Set the receiver to single-cable mode with a free user band, or give it another line.",
    }));
}
