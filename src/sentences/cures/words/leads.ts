import { GRADES } from "../../../parts/cable.ts";
import { plural } from "../../../words/plural.ts";
import { list } from "../../phrases.ts";
import type { WordsOf } from "../told.ts";

function gradeName(grade: string): string {
  return Object.entries(GRADES).find(([key]) => key === grade)?.[1].short ?? grade;
}

/** Leads, joints and cables. */
export const LEAD_WORDS: WordsOf<
  | "plug-in"
  | "swap-leads"
  | "other-socket"
  | "other-output"
  | "wire-off"
  | "load"
  | "sound-joint"
  | "cable-grade"
  | "new-cable"
  | "right-quadrants"
  | "missing-trunks"
> = {
  "plug-in": {
    title: ({ facts, end }) => `Connect ${end(facts.from)} to ${end(facts.to)}`,
    reason: () => "One end is open, and the other belongs to that end.",
  },
  "swap-leads": {
    title: ({ facts, place, name, port }) => {
      const [a, b] = facts.ports.map((p) => port([place, p]));
      return `Swap the leads on ${a} and ${b} of ${name(place)}`;
    },
    reason: () => "Each of the two then gets what it is there for.",
  },
  "other-socket": {
    title: ({ facts, place, name, port }) =>
      `Move the lead at ${name(place)} from socket ${port([place, facts.from])} to socket ${port([place, facts.to])}`,
    reason: () => "That socket is the one for it, and it is free.",
  },
  "other-output": {
    title: ({ facts, place, name, port }) =>
      `Move the line at ${name(place)} from output ${port([place, facts.from])} to output ${port([place, facts.to])}`,
    reason: () => "That output gives the feed that the receiver needs, and nothing is connected to it.",
  },
  "wire-off": {
    title: ({ facts, end }) => `Remove the wire from ${end(facts.from)} to ${end(facts.to)}`,
    reason: () => "The signal then has one way only.",
  },
  load: {
    title: ({ facts, place, name }) =>
      plural(facts.count, {
        one: `Put a 75 Ω terminator on the open end of ${name(place)}`,
        other: (n) => `Put ${n} 75 Ω terminators on the open ends of ${name(place)}`,
      }),
    reason: () => "A terminated end reflects nothing.",
  },
  "sound-joint": {
    title: ({ place, name }) => `Cut out ${name(place)} and fit a new connector`,
    reason: () => "A sound joint loses next to nothing.",
  },
  "cable-grade": {
    title: ({ facts, name }) => {
      const grade = gradeName(facts.grade);
      return plural(facts.cables.length, {
        one: `Replace ${name(facts.cables[0] ?? "")} with ${grade} cable`,
        other: (n) => `Replace ${n} cables on the way with ${grade} cable`,
      });
    },
    reason: () => "Fewer volts and fewer decibels are lost over the same length.",
  },
  "new-cable": {
    title: ({ facts, place, name }) => `Replace ${name(place)} with new ${gradeName(facts.grade)} cable`,
    reason: () => "The present cable takes more volts or decibels than a sound one of its length.",
  },
  "right-quadrants": {
    title: ({ facts, place, name, port }) => {
      const moves = facts.moves.map((m) => `${port([place, m.from])} to ${port([place, m.to])}`);
      return `Move the leads at ${name(place)}: ${list(moves)}`;
    },
    reason: () => "Each input stands for one quadrant, and these get another one.",
  },
  "missing-trunks": {
    title: ({ facts, place, name, port }) => {
      const inputs = list(facts.ports.map((p) => port([place, p])));
      if (facts.cables === 0) return `Connect ${name(facts.source)} to ${inputs} of ${name(place)}`;
      return plural(facts.ports.length, {
        one: `Run the missing cable from ${name(facts.source)} to ${inputs} of ${name(place)}`,
        other: `Run the missing cables from ${name(facts.source)} to ${inputs} of ${name(place)}`,
      });
    },
    reason: () => "Everything behind the multiswitch lacks the quadrants of the open inputs.",
  },
};
