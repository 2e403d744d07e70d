/** Verdicts in words: one sentence or two for whoever sits before the receiver, and why carriers are missing. */

import type { Evaluation } from "../evaluate/evaluation.ts";
import type { ServiceVerdict, SoundFacts, TunerVerdict, Verdict, VerdictState } from "../findings/finding.ts";
import type { Why } from "../findings/missing.ts";
import { isAsleep } from "../findings/verdict.ts";
import { serviceName } from "../signal/carrier.ts";
import { numeral } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { culpritCure, culpritWords } from "./culpritWords.ts";
import { capital, roughly } from "./explain/plainWords.ts";
import { messageOf } from "./finding.ts";
import { missingClause } from "./missingWords.ts";
import { labelled, list, share } from "./phrases.ts";

const STATE_NAMES: Readonly<Record<VerdictState, string>> = {
  works: "works",
  edge: "works on a knife’s edge",
  fails: "fails",
};

const IDLE_NAMES: Readonly<Record<NonNullable<Verdict["idle"]>, string>> = {
  "nothing connected": "not connected yet",
  off: "off",
  standby: "standby",
  "no source": "no signal yet",
};

/** How a receiver or an outlet stands, in a word or two. */
export function stateName({ state, idle }: Pick<Verdict, "state" | "idle">): string {
  return idle ? IDLE_NAMES[idle] : STATE_NAMES[state];
}

/** How many receivers work, in a sentence or two: the headline of a verdict. */
export function workingSentence(verdicts: readonly Verdict[]): string {
  const receivers = verdicts.filter((v) => v.role === "receiver");
  const judged = judgedReceivers(verdicts);
  const asleep = receivers.filter((v) => isAsleep(v.idle)).length;
  if (receivers.length === 0) return "No receiver yet. Add one to see what it would get.";
  if (judged.length === 0) return asleep > 0 ? "No receiver is on." : "No receiver is connected yet.";
  const working = judged.filter((v) => v.state !== "fails").length;
  const onEdge = judged.filter((v) => v.state === "edge").length;
  const isAllOnEdge = onEdge > 0 && onEdge === working;
  return [
    workingWords(working, judged.length, { edge: isAllOnEdge ? edgeOfAll(working) : "", asleep }),
    ...(isAllOnEdge ? [] : edgeWords(onEdge)),
    ...asleepWords(asleep),
  ].join(" ");
}

/** Receivers that are connected and on: of the others nobody knows whether they would work. */
export function judgedReceivers(verdicts: readonly Verdict[]): readonly Verdict[] {
  return verdicts.filter((v) => v.role === "receiver" && v.idle !== "nothing connected" && !isAsleep(v.idle));
}

function asleepWords(asleep: number): readonly string[] {
  if (asleep === 0) return [];
  return [
    plural(asleep, {
      one: "One more is off or in standby.",
      other: (n) => `${n} more are off or in standby.`,
    }),
  ];
}

/** What follows where all that work are on an edge. */
function edgeOfAll(working: number): string {
  return plural(working, {
    one: ", on a knife’s edge",
    other: working === 2 ? ", both on a knife’s edge" : ", all on a knife’s edge",
  });
}

function workingWords(
  working: number,
  of: number,
  { edge, asleep }: { readonly edge: string; readonly asleep: number },
): string {
  if (of === 1) {
    const who = asleep === 0 ? "The receiver" : "The receiver that is on";
    return working === 1 ? `${who} works${edge}.` : `${who} does not work as it should.`;
  }
  if (working === of)
    return of === 2 ? `Both receivers work${edge}.` : `All ${numeral(of)} receivers work${edge}.`;
  return plural(working, {
    zero:
      of === 2
        ? "Neither receiver works as it should."
        : `None of ${numeral(of)} receivers works as it should.`,
    one: (n) => `${n} of ${numeral(of)} receivers works${edge}.`,
    other: (n) => `${n} of ${numeral(of)} receivers work${edge}.`,
  });
}

function edgeWords(onEdge: number): readonly string[] {
  if (onEdge === 0) return [];
  return [
    plural(onEdge, {
      one: "One of them works on a knife’s edge.",
      other: (n) => `${n} of them work on a knife’s edge.`,
    }),
  ];
}

const SHORT_SERVICES: Readonly<Record<ServiceVerdict["service"], string>> = {
  tv: "TV",
  dab: "DAB",
  fm: "FM",
  satellite: "sat",
  distant: "distant",
  mobile: "mobile",
  cordless: "cordless",
};

/** The result of a receiver or an outlet for a small tile, by the service that lacks most: "1 of 6 TV". */
export function resultWords(verdict: Verdict): string {
  if (verdict.idle) return capital(stateName(verdict));
  const lacking = (s: ServiceVerdict) => s.got / s.wanted;
  const [worst] = verdict.services.filter((s) => s.wanted > 0).sort((a, b) => lacking(a) - lacking(b));
  if (!worst || (verdict.state === "fails" && worst.got >= worst.wanted)) return capital(stateName(verdict));
  return `${worst.got} of ${worst.wanted} ${SHORT_SERVICES[worst.service]}`;
}

/** "Gets 40 of 80 satellite transponders. 40 are stopped by “Plate”." */
export function verdictSentence(verdict: Verdict, evaluation: Evaluation): string {
  return labelled(bareSentence(verdict, evaluation), evaluation);
}

/** The same for whoever pays: rooms and programmes, no figures of the trade, no parts on the way. */
export function customerVerdict({ idle, role, services, state, tuners, failsBy }: Verdict): string {
  if (idle) return IDLE[role][idle];
  const got = list(services.filter((s) => s.wanted > 0).map((s) => roughly(s.got, s.wanted, s)));
  const verb = role === "outlet" ? "Delivers" : "Gets";
  if (state === "edge")
    return `${verb} ${got}, but only just: bad weather or ageing parts may cost ${services.every(isRadio) ? "the sound" : "the picture"}.`;
  const isWhole = services.every((s) => s.got >= s.wanted);
  if (state === "fails" && isWhole && tuners.some((t) => t.got < t.wanted))
    return `${verb} ${got}, but cannot watch and record as it was built to.`;
  if (state === "fails" && isWhole && failsBy)
    return `Would get ${got}, but not with the equipment as it is set up now.`;
  const isHissing = services.some(({ sound }) => sound?.step === "heard");
  return isHissing ? `${verb} ${got}, some of them with hiss.` : `${verb} ${got}.`;
}

function isRadio({ service }: ServiceVerdict): boolean {
  return service === "fm" || service === "dab";
}

function bareSentence(verdict: Verdict, evaluation: Evaluation): string {
  if (verdict.idle) return IDLE[verdict.role][verdict.idle];
  const services = verdict.services.filter((s) => s.wanted > 0);
  const got = list(services.map((s) => share(s.got, s.wanted, s.counted ?? s.service)));
  const heard = list(services.flatMap(({ sound, got: n }) => (sound ? [soundWords(sound, n)] : [])));
  const all = heard === "" ? got : `${got}, ${heard}`;
  const gets = `Gets ${all}`;
  const reasons = reasonsWords(services, evaluation);
  if (verdict.role === "outlet")
    return [`Delivers ${all}${marginWords(verdict)}.${culpritOf(verdict)}`, ...reasons].join(" ");
  if (reasons.length > 0) return [`${gets}.`, ...reasons].join(" ");
  const dead = verdict.tuners.filter((t) => t.got < t.wanted && t.missing.length > 0);
  if (dead[0] && verdict.state === "fails")
    return `Gets ${got}, but not with every tuner. ${tunerWords(dead[0], evaluation)}`;
  if (verdict.failsBy)
    return `Would get ${got}, but fails as it stands. ${messageOf(verdict.failsBy[0], evaluation)}`;
  return `${gets}${marginWords(verdict)}.${culpritOf(verdict)}`;
}

/** Whose fault it is that so little is to spare, and what is to be done: " ⟦lnb⟧ is turned by 15° … Turn ⟦lnb⟧ …" */
function culpritOf({ culprit }: Verdict): string {
  return culprit ? ` ${culpritWords(culprit)} ${culpritCure(culprit) ?? ""}`.trimEnd() : "";
}

/** More reasons than these stand with the receiver's services. */
const REASONS_TOLD = 2;

/** Of equal counts what lets nothing arrive is told before what spoils what arrives. */
const REASON_ORDER: readonly Why[] = [
  "absent",
  "not selectable",
  "wrong feed",
  "cut",
  "out of range",
  "blocked",
  "disturbed",
  "noisy",
];

/** Why carriers are missing, most of them first, each with its service where there are several: "80 are stopped by ⟦plate⟧." */
function reasonsWords(services: readonly ServiceVerdict[], evaluation: Evaluation): readonly string[] {
  const all = services
    .flatMap((of) => {
      const { wanted, service } = of;
      return of.missing.map((m) => ({ ...m, wanted, service, name: serviceName(of) }));
    })
    .sort((a, b) => b.count - a.count || REASON_ORDER.indexOf(a.why) - REASON_ORDER.indexOf(b.why));
  const several = new Set(all.map((m) => m.service)).size > 1;
  const told = all.map((m) => {
    const clause = missingClause(m, m.wanted, evaluation, m.service);
    return several ? `${capital(m.name)}: ${clause}.` : `${capital(clause)}.`;
  });
  return [...new Set(told)].slice(0, REASONS_TOLD);
}

/** "free of hiss", "one of them with clear hiss", "all with faint hiss". */
function soundWords({ step, count }: SoundFacts, got: number): string {
  if (step === "clean") return "free of hiss";
  const hiss = step === "good" ? "faint hiss" : "clear hiss";
  if (count === got) return got > 1 ? `all with ${hiss}` : `with ${hiss}`;
  return plural(count, { one: `one of them with ${hiss}`, other: (n) => `${n} of them with ${hiss}` });
}

/** What the tightest carrier has to spare, and why that is too little where it is. */
function marginWords({ marginDb, tightest, edge }: Verdict): string {
  if (marginDb === undefined || !tightest) return "";
  const { by } = tightest;
  const carrier = carrierName(tightest);
  const limit = LIMIT_WORDS[by];
  if (!edge) return `. To spare: ${numeral(marginDb)} dB (${carrier}, ${limit})`;
  const has = (beside: number) =>
    `. On a knife’s edge: ${carrier} has ${apart(marginDb, beside)} dB to spare (${limit})`;
  switch (edge.kind) {
    case "outside limits":
      return `. On a knife’s edge: ${carrier} is ${apart(-marginDb, 0)} dB ${BEYOND_WORDS[by]}`;
    case "spread":
      return `${has(edge.neededDb)}, and the spread of real parts is ${apart(edge.neededDb, marginDb)} dB`;
    case "kept distance":
      return `${has(edge.neededDb)}, and ${apart(edge.neededDb, marginDb)} dB are to be kept`;
    case "two ways":
      return `${has(edge.neededDb)}, and its two ways cancel by up to ${apart(edge.neededDb, marginDb)} dB`;
    case "rain":
      return `${has(0)}, and rain takes it for ${rainTime(edge.minutesAYear)} a year`;
  }
}

/** An FM station goes by its frequency alone: "88.3 MHz". */
function carrierName({ service, carrier }: NonNullable<Verdict["tightest"]>): string {
  return service === "fm" ? `${carrier} MHz` : carrier;
}

/** On which side of its limit a carrier lies that is outside. */
const BEYOND_WORDS: Readonly<Record<NonNullable<Verdict["tightest"]>["by"], string>> = {
  "level low": "below the lowest level",
  "level high": "above the highest level",
  "C/N": "short of the C/N that it should have",
  "all signals": "above what the tuner takes in all",
  neighbour: "short of what a stronger neighbour leaves it",
};

const LIMIT_WORDS: Readonly<Record<NonNullable<Verdict["tightest"]>["by"], string>> = {
  "level low": "above the lowest level",
  "level high": "below the highest level",
  "C/N": "C/N",
  "all signals": "all signals together against an overloaded tuner",
  neighbour: "against being blocked by a stronger neighbour",
};

/** A figure with as many decimals as it takes to differ from another one as shown. */
export function apart(figure: number, from: number): string {
  for (const decimals of [1, 2, 3]) {
    const text = numeral(figure, decimals);
    if (text !== numeral(from, decimals)) return text;
  }
  return numeral(figure, 9);
}

function rainTime(minutes: number): string {
  const hours = minutes / 60;
  return hours < 48 ? `${Math.round(hours)} hours` : `${Math.round(hours / 24)} days`;
}

const IDLE: Readonly<Record<Verdict["role"], Readonly<Record<NonNullable<Verdict["idle"]>, string>>>> = {
  receiver: {
    "nothing connected": "Is not connected yet.",
    off: "Is unplugged and asks for nothing.",
    standby: "Is in standby and asks for nothing.",
    "no source": "Nothing drawn here sends what it is made for.",
  },
  outlet: {
    "nothing connected": "Is not connected yet.",
    off: "Is switched off.",
    standby: "Is in standby.",
    "no source": "Nothing arrives that its sockets could deliver.",
  },
};

/** "Tuner 2 gets none of 80 satellite transponders: …" */
function tunerWords(tuner: TunerVerdict, evaluation: Evaluation): string {
  const { number, got, wanted, missing } = tuner;
  const [first] = missing;
  const why = first ? `: ${missingClause(first, wanted, evaluation, "satellite")}` : "";
  return `Tuner ${number} gets ${share(got, wanted, "satellite")}${why}.`;
}

/** What a tuner lacks, in a sentence; undefined where it lacks nothing. */
export function tunerSentence(tuner: TunerVerdict, evaluation: Evaluation): string | undefined {
  return tuner.got < tuner.wanted ? labelled(tunerWords(tuner, evaluation), evaluation) : undefined;
}

/** Why carriers of a service are missing, most frequent first: "31 are stopped by “Plate 2”". */
export function missingSentences(service: ServiceVerdict, evaluation: Evaluation): readonly string[] {
  return service.missing.map((m) =>
    labelled(missingClause(m, service.wanted, evaluation, service.service), evaluation),
  );
}
