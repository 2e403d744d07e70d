/** What is read out after an edit: what was done, and what became of the receivers. */
import type { Design, Part, PartId } from "../design/design.ts";
import { partById, quoted } from "../design/lookup.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { EditFacts } from "../remedies/editFacts.ts";
import type { ReceiverTurns } from "../remedies/receiverTurns.ts";
import { plural } from "../words/plural.ts";
import { optionWords, valueWords } from "./cures/optionWords.ts";
import { capital } from "./explain/plainWords.ts";
import { list } from "./phrases.ts";
import { workingWords } from "./receivers.ts";

/** What was done, in a sentence. */
export function editSentence(facts: EditFacts): string {
  switch (facts.what) {
    case "added":
      return addedSentence(facts.parts, facts.wires);
    case "inserted":
      return `${quoted(facts.part)} inserted between ${quoted(facts.from)} and ${quoted(facts.to)}.`;
    case "removed":
      return removedSentence(facts.parts, facts.isClosed);
    case "replaced":
      return replacedSentence(facts.parts);
    case "set":
      return setSentence(facts.parts);
    case "renamed":
      return renamedSentence(facts.parts);
    case "connected":
      return counted(facts.wires, {
        one: ({ from, to }) => `${quoted(from)} connected to ${quoted(to)}.`,
        other: (n) => `${n} wires connected.`,
      });
    case "disconnected":
      return counted(facts.wires, {
        one: ({ from, to }) => `Wire from ${quoted(from)} to ${quoted(to)} deleted.`,
        other: (n) => `${n} wires deleted.`,
      });
    case "reconnected":
      return plural(facts.come, { one: "Wire connected elsewhere.", other: (n) => `${n} wires changed.` });
    case "moved":
      if (facts.isAll) return "All parts moved.";
      return counted(facts.parts, {
        one: (part) => `${quoted(part)} moved.`,
        other: (n) => `${n} parts moved.`,
      });
    case "retitled":
      return `Title changed to “${facts.title}”.`;
    case "variant":
      return `Now on variant “${facts.name}”.`;
    case "variants":
      return "Variants changed.";
    case "settings":
      return "Settings of the design changed.";
    case "several":
      return severalSentence(facts);
  }
}

/** The same of a step that was taken back, or made again. */
export function stepSentence(way: "undone" | "redone", done: string): string {
  return way === "undone" ? `Undone: ${done}` : `Redone: ${done}`;
}

export function openedSentence({ title }: Design): string {
  return `“${title}” is open.`;
}

/** `title`: what the preview shows, as the bar over the canvas calls it. */
export function previewSentence(title: string): string {
  return `Preview, nothing is changed yet: ${title}.`;
}

/** What became of the receivers, in a sentence; empty where nobody is connected. `design`: names those that it tells of. */
export function receiversSentence(turns: ReceiverTurns, design: Design): string {
  const { of, working, gained, lost, better, worse } = turns;
  if (of === 0) return "";
  const names = (parts: readonly PartId[]) => list(parts.map((id) => quoted(partById(design, id))));
  const told = [
    ...(lost.length > 0 ? [`lost: ${names(lost)}.`] : []),
    ...(gained.length > 0 ? [`gained: ${names(gained)}.`] : []),
    ...(worse.length > 0 ? [`gets less: ${names(worse)}.`] : []),
    ...(better.length > 0 ? [`gets more: ${names(better)}.`] : []),
  ];
  const count = capital(workingWords(working, of));
  const [first, ...others] = told;
  return first ? [`${count}; ${first}`, ...others.map(capital)].join(" ") : `${count}.`;
}

/** Of edits that only tidy up, nobody needs to hear how the receivers stand. */
export function touchesSignals({ what }: EditFacts): boolean {
  return what !== "moved" && what !== "renamed" && what !== "retitled" && what !== "variants";
}

function addedSentence(parts: readonly Part[], wires: number): string {
  return counted(parts, {
    one: (part) => (wires > 0 ? `${quoted(part)} added and connected.` : `${quoted(part)} added.`),
    other: (n) => `${n} parts added.`,
  });
}

function removedSentence(parts: readonly Part[], isClosed: boolean): string {
  return counted(parts, {
    one: (part) =>
      isClosed ? `${quoted(part)} deleted, and its wire closed again.` : `${quoted(part)} deleted.`,
    other: (n) => `${n} parts deleted.`,
  });
}

function replacedSentence(parts: readonly { readonly before: Part; readonly after: Part }[]): string {
  return counted(parts, {
    one: ({ before, after }) => `${quoted(before)} replaced: ${kindOf(after.kind)?.name ?? after.kind}.`,
    other: (n) => `${n} parts replaced.`,
  });
}

function setSentence(
  parts: readonly { readonly after: Part; readonly options: readonly string[] }[],
): string {
  return counted(parts, {
    one: ({ after, options }) => {
      const [option = ""] = options;
      if (options.length > 1) return `Values of ${quoted(after)} changed.`;
      const value = valueWords(after.kind, option, after.options[option]);
      return `${quoted(after)}: ${optionWords(after.kind, option)} set to ${value}.`;
    },
    other: (n) => `Values of ${n} parts changed.`,
  });
}

function renamedSentence(parts: readonly { readonly before: Part; readonly after: Part }[]): string {
  return counted(parts, {
    one: ({ before, after }) => `${quoted(before)} renamed to ${quoted(after)}.`,
    other: (n) => `${n} parts renamed.`,
  });
}

function severalSentence(facts: Extract<EditFacts, { readonly what: "several" }>): string {
  const { added, removed, changed } = facts;
  const clauses = [
    plural(added, { zero: "", one: (n) => `${n} part added`, other: (n) => `${n} parts added` }),
    plural(removed, { zero: "", one: (n) => `${n} part deleted`, other: (n) => `${n} parts deleted` }),
    plural(changed, { zero: "", one: (n) => `${n} part changed`, other: (n) => `${n} parts changed` }),
  ];
  return `${list(clauses.filter((clause) => clause !== ""))}.`;
}

type Told<T> = { readonly one: (entry: T) => string; readonly other: (n: string) => string };

function counted<T>(entries: readonly T[], { one, other }: Told<T>): string {
  const [first] = entries;
  return plural(entries.length, { one: first === undefined ? "" : one(first), other });
}
