/** Verdicts in words: one sentence or two for whoever sits before the receiver, and why carriers are missing. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { ServiceVerdict, TunerVerdict, Verdict, VerdictState } from "../findings/finding.ts";
import { capital } from "./explain/plainWords.ts";
import { missingClause } from "./missingWords.ts";
import { list, round1, share, withLabels } from "./phrases.ts";

const STATE_NAMES: Readonly<Record<VerdictState, string>> = {
  works: "works",
  edge: "works on a knife’s edge",
  fails: "fails",
};

const IDLE_NAMES: Readonly<Record<NonNullable<Verdict["idle"]>, string>> = {
  "nothing connected": "not connected yet",
  off: "off",
  "no source": "no signal yet",
};

/** How a receiver or an outlet stands, in a word or two. */
export function stateName({ state, idle }: Pick<Verdict, "state" | "idle">): string {
  return idle ? IDLE_NAMES[idle] : STATE_NAMES[state];
}

/** "Gets 40 of 80 satellite transponders. 40 are stopped by “Plate”." */
export function verdictSentence(verdict: Verdict, evaluation: Evaluation): string {
  return labelled(bareSentence(verdict, evaluation), evaluation);
}

function bareSentence(verdict: Verdict, evaluation: Evaluation): string {
  if (verdict.idle) return IDLE[verdict.role][verdict.idle];
  const services = verdict.services.filter((s) => s.wanted > 0);
  const got = list(services.map((s) => share(s.got, s.wanted, s.counted ?? s.service)));
  if (verdict.role === "outlet") return `Hands on ${got}.`;
  const worst = services
    .flatMap(({ missing, wanted }) => missing.map((m) => ({ ...m, wanted })))
    .sort((a, b) => b.count - a.count)[0];
  if (worst) return `Gets ${got}. ${capital(missingClause(worst, worst.wanted, evaluation))}.`;
  const dead = verdict.tuners.filter((t) => t.got < t.wanted && t.missing.length > 0);
  if (dead[0] && verdict.state === "fails")
    return `Gets ${got}, but not with every tuner. ${tunerWords(dead[0], evaluation)}`;
  return [`Gets ${got}.`, ...marginWords(verdict)].join(" ");
}

/** What the tightest carrier has to spare, and why that is too little where it is. */
function marginWords({ marginDb, tightest, edge }: Verdict): readonly string[] {
  if (marginDb === undefined || !tightest) return [];
  const { carrier, by } = tightest;
  if (!edge) return [`${capital(spare(marginDb, by))} at ${carrier}.`];
  const short = `On a knife’s edge: ${carrier}`;
  switch (edge.kind) {
    case "outside limits":
      return [`${short} is ${apart(-marginDb, 0)} dB ${by === "level high" ? "above" : "below"} the limit.`];
    case "spread":
      return [
        `${short} has ${spare(marginDb, by, edge.neededDb)}, and real parts stray by ${apart(edge.neededDb, marginDb)} dB.`,
      ];
    case "kept distance":
      return [
        `${short} has ${spare(marginDb, by, edge.neededDb)}, and ${apart(edge.neededDb, marginDb)} dB are to be kept.`,
      ];
    case "rain":
      return [
        `${short} has ${spare(marginDb, by)}, and rain takes it for ${rainTime(edge.minutesAYear)} a year.`,
      ];
  }
}

function spare(marginDb: number, by: NonNullable<Verdict["tightest"]>["by"], beside?: number): string {
  const db = beside === undefined ? round1(marginDb) : apart(marginDb, beside);
  return `${db} dB ${by === "C/N" ? "of C/N" : by === "level low" ? "of level" : "below the highest level"} to spare`;
}

/** A figure with as many decimals as it takes to differ from another one as shown. */
export function apart(figure: number, from: number): string {
  for (const decimals of [1, 2, 3]) {
    const text = String(Number(figure.toFixed(decimals)));
    if (text !== String(Number(from.toFixed(decimals)))) return text;
  }
  return String(figure);
}

function rainTime(minutes: number): string {
  const hours = minutes / 60;
  return hours < 48 ? `${Math.round(hours)} hours` : `${Math.round(hours / 24)} days`;
}

const IDLE: Readonly<Record<Verdict["role"], Readonly<Record<NonNullable<Verdict["idle"]>, string>>>> = {
  receiver: {
    "nothing connected": "Is not connected yet.",
    off: "Is switched off and asks for nothing.",
    "no source": "There is no aerial or dish for it.",
  },
  outlet: {
    "nothing connected": "Is not connected yet.",
    off: "Is switched off.",
    "no source": "Nothing arrives that its sockets could hand on.",
  },
};

/** "Tuner 2 gets none of 80 satellite transponders: …" */
function tunerWords(tuner: TunerVerdict, evaluation: Evaluation): string {
  const { number, got, wanted, missing } = tuner;
  const [first] = missing;
  const why = first ? `: ${missingClause(first, wanted, evaluation)}` : "";
  return `Tuner ${number} gets ${share(got, wanted, "satellite")}${why}.`;
}

/** What a tuner lacks, in a sentence; undefined where it lacks nothing. */
export function tunerSentence(tuner: TunerVerdict, evaluation: Evaluation): string | undefined {
  return tuner.got < tuner.wanted ? labelled(tunerWords(tuner, evaluation), evaluation) : undefined;
}

/** Why carriers of a service are missing, most frequent first: "31 are stopped by “Plate 2”". */
export function missingSentences(service: ServiceVerdict, evaluation: Evaluation): readonly string[] {
  return service.missing.map((m) => labelled(missingClause(m, service.wanted, evaluation), evaluation));
}

function labelled(text: string, evaluation: Evaluation): string {
  return withLabels(text, (id) => evaluation.record(id)?.part.label || id);
}
