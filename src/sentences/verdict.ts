/** Verdicts in words: one sentence or two for whoever sits before the receiver, and why carriers are missing. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { ServiceVerdict, TunerVerdict, Verdict, VerdictState } from "../findings/finding.ts";
import { capital } from "./explain/plainWords.ts";
import { missingClause } from "./missingWords.ts";
import { list, share, withLabels } from "./phrases.ts";

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
  return dead[0] && verdict.state === "fails"
    ? `Gets ${got}, but not with every tuner. ${tunerWords(dead[0], evaluation)}`
    : `Gets ${got}.`;
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
