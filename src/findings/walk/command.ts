/** The walk of a command: which switches hear an input, who decides there, and whether it gets what it asks for. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { switchStates } from "../../evaluate/power.ts";
import type { SwitchDeclaration } from "../../parts/contract.ts";
import { list, partName, round1, withLabels } from "../../sentences/phrases.ts";
import type { Offer, Request, SwitchState } from "../../signal/control.ts";
import { plural } from "../../words/plural.ts";

/** A switch that the commands of an input can reach. */
export type CommandStop = {
  readonly part: PartId;
  readonly port: string;
  /** How it stands now; null where nobody feeds it. */
  readonly setting: string | null;
  /** What the input asks for here, and what would be understood if it were alone on the line. */
  readonly asked: string;
  readonly understood: string | null;
  /** Whose voltage decides now. */
  readonly decidedBy: PartId | null;
  /** Others that speak to this switch now. */
  readonly others: readonly PartId[];
  readonly volts: number;
  readonly toneArrives: boolean;
  /** Behind another switch that stands elsewhere now. */
  readonly dormant: boolean;
  /** True when the switch does what this input asks for. */
  readonly granted: boolean;
  readonly words: string;
};

export type CommandWalk = {
  readonly stops: readonly CommandStop[];
  readonly lines: readonly string[];
};

type Speaker = { readonly part: PartId; readonly port: string };

/** Every switch upstream that hears an input, in the order of the design. */
export function walkCommand(evaluation: Evaluation, speaker: Speaker): CommandWalk {
  const label = (text: string) => withLabels(text, (id) => evaluation.record(id)?.part.label || id);
  const stops = evaluation.records.flatMap((record) => stopsAt(record, speaker));
  const spoken = stops.map((stop) => ({ ...stop, words: label(stop.words) }));
  const silent = label(`No switch hears ${partName(speaker.part)} on this cable.`);
  return { stops: spoken, lines: spoken.length > 0 ? spoken.map((stop) => stop.words) : [silent] };
}

function stopsAt(record: PartRecord, speaker: Speaker): readonly CommandStop[] {
  const declared = record.power.switches ?? [];
  return declared.flatMap((d) => {
    const state = record.switches[d.port];
    const own = state?.offers.find((o) => o.part === speaker.part && o.port === speaker.port);
    return state && own?.request ? [stopOf(record, d, state, own, own.request)] : [];
  });
}

function stopOf(
  record: PartRecord,
  declared: SwitchDeclaration,
  state: SwitchState,
  own: Offer,
  request: Request,
): CommandStop {
  const awake = state.offers.filter((o) => !o.dormant);
  const others = awake.filter((o) => o.kind === "commands" && o !== own);
  const stacked = declared.by === "stack";
  const understood = stacked
    ? own.toneArrives && request.userBands
      ? userBandWords(request.userBands)
      : null
    : settingAlone(record, declared.port, own);
  const stop = {
    part: record.part.id,
    port: declared.port,
    setting: state.setting,
    asked: stacked ? userBandWords(request.userBands ?? []) : askedSetting(declared.by, request),
    understood,
    decidedBy: (awake[0] ?? state.offers[0])?.part ?? null,
    others: [...new Set(others.map((o) => o.part))],
    volts: own.volts,
    toneArrives: own.toneArrives,
    dormant: own.dormant,
  };
  const granted = stacked
    ? understood !== null && !own.dormant && rivals(others, request).length === 0
    : !own.dormant && state.setting === stop.asked;
  const words = stacked ? stackWords(stop, request, others) : switchWords(stop, state.thresholdVolts, own);
  return { ...stop, granted, words: `${partName(own.part)} asks ${partName(record.part.id)} for ${words}` };
}

/** How the switch would stand if nobody else spoke to it. */
function settingAlone(record: PartRecord, port: string, own: Offer): string | null {
  const power = record.power;
  const alone = switchStates(record.part.id, power, (p) => (p === port ? [{ ...own, dormant: false }] : []));
  return alone[port]?.setting ?? null;
}

function askedSetting(by: SwitchDeclaration["by"], { polarisation, half, position = 1 }: Request): string {
  const quadrant = `${polarisation}${half === "low" ? "L" : "H"}`;
  if (by === "position") return String(position);
  return by === "both" ? `${position}:${quadrant}` : quadrant;
}

/** Those who keep a single-cable line or one of the same user bands from it. */
function rivals(others: readonly Offer[], { userBands = [] }: Request): readonly Offer[] {
  return others.filter(
    (o) => !o.request?.userBands || o.request.userBands.some((ub) => userBands.includes(ub)),
  );
}

function userBandWords(numbers: readonly number[]): string {
  return plural(numbers.length, {
    zero: "no user band",
    one: `user band ${numbers[0]}`,
    other: `user bands ${list(numbers.map(String))}`,
  });
}

type Bare = Omit<CommandStop, "words" | "granted">;

function switchWords(stop: Bare, thresholdVolts: number, own: Offer): string {
  const { asked, understood, setting, others, decidedBy, dormant } = stop;
  const volts = plural(own.volts, { one: (n) => `${n} V arrives`, other: (n) => `${n} V arrive` });
  const arrives = `${volts}${own.toneArrives ? "" : ", no tone"}`;
  const stands = setting === null ? "nobody feeds it" : `it stands at ${setting}`;
  if (dormant) return `${asked}, but a switch before it stands elsewhere; ${stands}.`;
  if (others.length > 0 && setting !== asked) {
    const who =
      decidedBy === own.part ? `the tone of ${list(others.map(partName))}` : partName(decidedBy ?? "");
    return `${asked}, but ${who} decides: ${stands}.`;
  }
  if (understood !== asked)
    return `${asked}, but ${arrives} and its threshold is ${round1(thresholdVolts)} V: it understands ${understood ?? "nothing"}.`;
  const shared = others.length > 0 ? `; ${list(others.map(partName))} may ask otherwise` : "";
  return `${asked} and gets it: ${arrives}${shared}.`;
}

function stackWords(stop: Bare, request: Request, others: readonly Offer[]): string {
  if (!request.userBands) return "no user band: it is not in single-cable mode and holds the line.";
  if (stop.understood === null) return `${stop.asked}, but no message arrives there.`;
  if (stop.dormant) return `${stop.asked}, but a switch before it stands elsewhere.`;
  const first = rivals(others, request)[0];
  if (!first)
    return plural(request.userBands.length, {
      zero: `${stop.asked}.`,
      one: `${stop.asked} and gets it.`,
      other: `${stop.asked} and gets them.`,
    });
  const uses = plural(request.userBands.length, { one: "uses it too", other: "uses one of them too" });
  const clash = first.request?.userBands ? uses : "holds the line";
  return `${stop.asked}, but ${partName(first.part)} ${clash}.`;
}
