/** The list of work in words, and what a cure gives up. */
import type { Part } from "../../design/design.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import type { Meaning } from "../../parts/optionTrade.ts";
import type { GivenUp } from "../../remedies/givenUp.ts";
import type { Work, WorkPlace } from "../../remedies/work.ts";
import { plural } from "../../words/plural.ts";
import { list } from "../phrases.ts";
import { changeWords, optionWords } from "./optionWords.ts";
import type { StepNames } from "./told.ts";

/** "Move the lead of “HL trunk” from HH to HL of “Multiswitch”" */
export function workWords(work: Work, names: StepNames): string {
  const { end, name } = names;
  switch (work.kind) {
    case "fit":
      return work.between
        ? `Fit ${named(work.part)} between ${end(work.between[0])} and ${end(work.between[1])}`
        : `Fit ${named(work.part)}`;
    case "remove":
      return removed(work.part, name(work.part.id));
    case "replace":
      return `Replace ${name(work.before.id)} with: ${kindName(work.after)}${caption(work.after)}`;
    case "set":
      if (work.options.every(({ option }) => means(work.part, option, "obstacles")))
        return `Put ${name(work.part.id)} where its view is free`;
      if (work.options.every(({ option }) => means(work.part, option, "further feeds")))
        return `Place the LNBs beside the first one on ${name(work.part.id)}, and realign them with a meter`;
      return `Set ${name(work.part.id)}: ${list(work.options.map((o) => optionChange(work.part, o)))}`;
    case "connect":
      return `Connect ${end(work.from)} to ${end(work.to)}`;
    case "disconnect":
      return `Remove the lead from ${end(work.from)} to ${end(work.to)}`;
    case "move lead":
      return `Move the lead of ${end(work.kept)} from ${end(work.from)} to ${end(work.to)}`;
  }
}

/** What stands in the drawing for a fault is mended, not taken off. */
function removed({ kind }: Part, name: string): string {
  const trade = kindOf(kind)?.trade;
  if (trade?.job === "unwanted signal") return `Replace the lead that picks up ${name}`;
  return trade?.defect ? `Cut out ${name} and fit a new connector` : `Remove ${name}`;
}

const PLACES: Readonly<Record<WorkPlace, string>> = {
  roof: "on the roof",
  building: "under the roof or in the cupboard",
  room: "in the room",
};

/** "in the room, 5 minutes"; without a time where it is part of fitting something. */
export function workEffort({ place, minutes }: Work): string {
  if (minutes === 0) return PLACES[place];
  const time = plural(Math.round(minutes), {
    one: (n) => `${n} minute`,
    other: (n) => `${n} minutes`,
  });
  return `${PLACES[place]}, ${time}`;
}

/** “Receiver” has 2 satellite tuners, instead of 8. */
export function givenUpWords({ part, tuners, before }: GivenUp, { name }: StepNames): string {
  return plural(tuners, {
    zero: `${name(part)} then has no satellite tuner, instead of ${before}.`,
    one: (n) => `${name(part)} has ${n} satellite tuner, instead of ${before}.`,
    other: (n) => `${name(part)} has ${n} satellite tuners, instead of ${before}.`,
  });
}

function named(part: Part): string {
  return `“${part.label || part.id}”${caption(part)}`;
}

function kindName({ kind }: Part): string {
  return kindOf(kind)?.name ?? kind;
}

function caption(part: Part): string {
  const words = kindOf(part.kind)?.caption(part.options) ?? "";
  return words ? ` (${words})` : "";
}

function optionChange(
  part: Part,
  { option, from, to }: { option: string; from: unknown; to: unknown },
): string {
  const [before, after] = changeWords(part.kind, option, { from, to });
  return `${optionWords(part.kind, option)} from ${before} to ${after}`;
}

/** What stands before a dish is not set: the dish goes where it does not. Nor is where an LNB sits. */
function means({ kind }: Part, option: string, meaning: Meaning): boolean {
  const found = kindOf(kind);
  return found !== undefined && optionMeaning(found, meaning) === option;
}
