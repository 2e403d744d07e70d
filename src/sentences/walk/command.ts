/** The walk of a command in sentences. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { type CommandStop, walkCommand } from "../../findings/walk/command.ts";
import { plural } from "../../words/plural.ts";
import { besideLimit } from "../figures.ts";
import { labelled, list, partName } from "../phrases.ts";

/** A switch with what is said of it. */
export type ToldCommandStop = CommandStop & { readonly words: string };

export type ToldCommand = { readonly stops: readonly ToldCommandStop[]; readonly lines: readonly string[] };

/** Walks the commands of an input, and tells of every switch that hears them. */
export function tellCommand(
  evaluation: Evaluation,
  speaker: { readonly part: string; readonly port: string },
): ToldCommand {
  const label = (text: string) => labelled(text, evaluation);
  const stops = walkCommand(evaluation, speaker).map((stop) => ({ ...stop, words: label(wordsOf(stop)) }));
  const silent = label(`No switch hears ${partName(speaker.part)} on this cable.`);
  return { stops, lines: stops.length > 0 ? stops.map((stop) => stop.words) : [silent] };
}

function wordsOf(stop: CommandStop): string {
  const what = stop.kind === "switch" ? switchWords(stop) : stackWords(stop);
  return `${partName(stop.speaker)} asks ${partName(stop.part)} for ${what}`;
}

function switchWords(stop: CommandStop & { kind: "switch" }): string {
  const { asked, understood, setting, others, decidedBy, dormant } = stop;
  const [volts, threshold] = besideLimit(stop.volts, stop.thresholdVolts);
  const arrives = `${plural(stop.volts, { one: `${volts} V arrives`, other: `${volts} V arrive` })}${stop.toneArrives ? "" : ", no tone"}`;
  const stands = setting === null ? "nobody feeds it" : `it is at ${setting}`;
  if (dormant) return `${asked}, but a switch before it is in another position; ${stands}.`;
  if (others.length > 0 && setting !== asked) {
    const who =
      decidedBy === stop.speaker ? `the tone of ${list(others.map(partName))}` : partName(decidedBy ?? "");
    return `${asked}, but ${who} decides: ${stands}.`;
  }
  if (understood !== asked)
    return `${asked}, but ${arrives} and its threshold is ${threshold} V: it understands ${understood ?? "nothing"}.`;
  const shared = others.length > 0 ? `; ${list(others.map(partName))} may ask otherwise` : "";
  return `${asked} and gets it: ${arrives}${shared}.`;
}

function stackWords({
  userBands,
  isUnderstood,
  dormant,
  rival,
}: CommandStop & { kind: "single-cable" }): string {
  if (!userBands) return "no user band: it is not in single-cable mode and blocks the line.";
  const asked = userBandWords(userBands);
  if (!isUnderstood) return `${asked}, but no message arrives there.`;
  if (dormant) return `${asked}, but a switch before it is in another position.`;
  if (!rival)
    return plural(userBands.length, {
      zero: `${asked}.`,
      one: `${asked} and gets it.`,
      other: `${asked} and gets them.`,
    });
  const uses = plural(userBands.length, { one: "uses it too", other: "uses one of them too" });
  return `${asked}, but ${partName(rival.part)} ${rival.holdsLine ? "blocks the line" : uses}.`;
}

function userBandWords(numbers: readonly number[]): string {
  return plural(numbers.length, {
    zero: "no user band",
    one: `user band ${numbers[0]}`,
    other: `user bands ${list(numbers.map(String))}`,
  });
}
