/** What the tour says and points at, step by step, from a receiver that fails to a cure. */
import type { Design, PartId } from "../../../design/design.ts";
import { partById } from "../../../design/lookup.ts";
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import { waysOf } from "../../../findings/causes/ways.ts";
import type { Report } from "../../../findings/finding.ts";
import { workingSentence } from "../../../sentences/verdict.ts";

/** The example that the tour is made in. */
export const TOUR_EXAMPLE = "house-wideband-fails";

export const TOUR_STEPS = ["receiver", "wire", "cause", "cures", "apply", "done"] as const;

export type TourStep = (typeof TOUR_STEPS)[number];

/** What the tour looks at: a receiver that fails, what makes it fail, and what lies between. */
export type TourFacts = {
  readonly receiver: PartId | null;
  readonly culprit: PartId | null;
  /** From the receiver up to the culprit, both included. */
  readonly way: readonly PartId[];
};

export function tourFacts(evaluation: Evaluation, { verdicts, causes }: Report): TourFacts {
  const fails = verdicts.find((v) => v.role === "receiver" && v.state === "fails" && !v.idle);
  if (!fails) return { receiver: null, culprit: null, way: [] };
  const receiver = fails.part;
  const culprit = causes.find((cause) => cause.receivers.includes(receiver))?.root.parts[0] ?? null;
  const above = waysOf(evaluation)
    .signalTo(receiver)
    .map(({ part }) => part);
  const end = culprit === null ? -1 : above.indexOf(culprit);
  return { receiver, culprit, way: [receiver, ...above.slice(0, end + 1)] };
}

type Told = { readonly title: string; readonly text: string };

export function tourWords(step: TourStep, facts: TourFacts, { design, report }: Shown): Told {
  const name = (part: PartId | null) => `“${(part && partById(design, part)?.label) || "the part"}”`;
  switch (step) {
    case "receiver":
      return {
        title: "A receiver fails",
        text: `${workingSentence(report.verdicts)} ${name(facts.receiver)} is one that fails: its tile is red and says what is missing.`,
      };
    case "wire":
      return {
        title: "Where it begins",
        text: `Follow the red wires from the receiver towards the roof. They begin at ${name(facts.culprit)}.`,
      };
    case "cause":
      return {
        title: "Why",
        text: "The verdict names the cause in a sentence. “Why?” explains it to the customer, to the trade, and for the meter.",
      };
    case "cures":
      return {
        title: "What helps",
        text: "Likely changes are tried one after another. Only those that cure something and break nothing are listed, with work and price.",
      };
    case "apply":
      return {
        title: "Apply a cure",
        text: "“Preview” shows a cure on the drawing. “Apply” carries it out in one step, and Undo takes that back.",
      };
    case "done":
      return {
        title: "Done",
        text: `${workingSentence(report.verdicts)} Now draw a house of your own: begin with a new design, or change this one.`,
      };
  }
}

export type Shown = { readonly design: Design; readonly report: Report };

/** Selector of what a step points at; on a narrow screen it may not be there, and the words do without. */
export function tourTarget(step: TourStep, { receiver, culprit }: TourFacts): string | null {
  switch (step) {
    case "receiver":
      return cardOf(receiver);
    case "wire":
      return cardOf(culprit);
    case "cause":
      return 'section[aria-label="Causes"] .finding';
    case "cures":
      return ".cures .cures-head";
    case "apply":
      return ".proposal .button.main";
    case "done":
      return ".verdict-summary";
  }
}

function cardOf(part: PartId | null): string | null {
  return part === null ? null : `.react-flow__node[data-id="${CSS.escape(part)}"]`;
}
