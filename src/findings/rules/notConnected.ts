import type { PartId } from "../../design/design.ts";
import { remembered } from "../../signal/remember.ts";
import { signalOrderOf } from "../causes/signalOrder.ts";
import type { Draft } from "../finding.ts";
import { type End, isToldByPlanes, type MissedEnd, missedEnds, openEnds } from "../openEnds.ts";
import { culpritFirst, type DesignRule } from "../rule.ts";
import { deadCablesOf } from "./deadStub.ts";

export type NotConnectedFacts =
  /** Inputs of one part by which these receivers would get what they are without. */
  | { readonly kind: "missed"; readonly ports: readonly string[]; readonly receivers: readonly PartId[] }
  /** Ends that nobody is without yet, by part and port. */
  | { readonly kind: "still open"; readonly ends: readonly [End, ...End[]] };

type Drafted = Draft<"not-connected">;

/** Open inputs that a receiver suffers from, and one quiet note about all other open ends of the design. */
export const notConnected: DesignRule<"not-connected"> = {
  id: "not-connected",
  *checkDesign(evaluation) {
    yield evaluation.records.length;
    const order = signalOrderOf(evaluation);
    const place = (part: PartId) => order.get(part) ?? 0;
    const missed = missedEnds(evaluation);
    const isMissed = new Set(missed.map((end) => `${end.part}/${end.port}`));
    const dead = new Set(evaluation.records.flatMap(deadCablesOf));
    const quiet = evaluation.records
      .flatMap(openEnds)
      .filter((end) => !dead.has(end.part))
      .filter((end) => !isMissed.has(`${end.part}/${end.port}`) && !isToldByPlanes(evaluation, end))
      // The same list however the design is drawn.
      .sort((a, b) => place(a.part) - place(b.part) || (a.port < b.port ? -1 : 1));
    return [...missedAt(missed, place), ...stillOpen(quiet)];
  },
};

/** One finding for each part whose open inputs somebody suffers from. */
function missedAt(missed: readonly MissedEnd[], place: (part: PartId) => number): readonly Drafted[] {
  const byPart = new Map<PartId, MissedEnd[]>();
  for (const end of missed) remembered(byPart, end.part, () => []).push(end);
  return [...byPart].map(([part, ends]) => {
    const receivers = [...new Set(ends.flatMap((end) => end.receivers))].sort((a, b) => place(a) - place(b));
    return {
      severity: "error",
      at: { part, port: ends[0]?.port ?? "" },
      parts: culpritFirst(part, receivers),
      wires: [],
      facts: { kind: "missed", ports: ends.map((end) => end.port), receivers },
    };
  });
}

function stillOpen([first, ...others]: readonly End[]): readonly Drafted[] {
  if (!first) return [];
  const ends = [first, ...others] as const;
  return [
    {
      severity: "note",
      at: { part: first.part },
      parts: culpritFirst(
        first.part,
        others.map((end) => end.part),
      ),
      wires: [],
      value: ends.length,
      facts: { kind: "still open", ends },
    },
  ];
}
