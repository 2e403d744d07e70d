/** Which receivers an edit gave something, and which it took something from. */
import type { PartId } from "../design/design.ts";
import type { Report, Verdict } from "../findings/finding.ts";
import { isServedMore } from "./served.ts";

export type ReceiverTurns = {
  /** Receivers that are connected, and those of them that work, perhaps on a knife’s edge. */
  readonly of: number;
  readonly working: number;
  /** Work now and did not before. */
  readonly gained: readonly PartId[];
  /** Do not work any more. */
  readonly lost: readonly PartId[];
  /** Get more, or less, and are judged as before. */
  readonly better: readonly PartId[];
  readonly worse: readonly PartId[];
};

/** Of receivers that both reports know; one that came or went is only counted. */
export function receiverTurns(before: Report, after: Report): ReceiverTurns {
  const was = new Map(receiversOf(before).map((v) => [v.part, v]));
  const now = receiversOf(after);
  const turns = {
    gained: [] as PartId[],
    lost: [] as PartId[],
    better: [] as PartId[],
    worse: [] as PartId[],
  };
  for (const is of now) {
    const former = was.get(is.part);
    const turn = former && turnOf(former, is);
    if (turn) turns[turn].push(is.part);
  }
  const judged = now.filter(isJudged);
  return { of: judged.length, working: judged.filter(works).length, ...turns };
}

function turnOf(was: Verdict, is: Verdict): "gained" | "lost" | "better" | "worse" | null {
  if (works(was) !== works(is)) return works(is) ? "gained" : "lost";
  if (isServedMore(was, is)) return "better";
  return isServedMore(is, was) ? "worse" : null;
}

function receiversOf({ verdicts }: Report): readonly Verdict[] {
  return verdicts.filter((v) => v.role === "receiver");
}

/** One that is not connected yet neither works nor fails. */
function isJudged({ idle }: Verdict): boolean {
  return idle !== "nothing connected";
}

function works(verdict: Verdict): boolean {
  return isJudged(verdict) && verdict.state !== "fails";
}
