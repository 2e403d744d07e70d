import { type EchoGrade, echoGrade } from "../../rf/echo.ts";
import { type BandFacts, bandFactsOf } from "../bandFacts.ts";
import type { Severity } from "../finding.ts";
import { type RuleOf, wireIdsAt } from "../rule.ts";

export type EchoFacts = {
  /** Signals that come in by two ways, in the order in which they meet themselves. */
  readonly bands: readonly BandFacts[];
  /** Where the first of them does [MHz]. */
  readonly fromMHz: number;
  readonly toMHz: number;
  /** How far the copies are apart where they are nearest [dB, positive], and what that does. */
  readonly differenceDb: number;
  readonly grade: EchoGrade;
};

/** One signal that arrives twice. */
export const echo: RuleOf<"same-signal-twice"> = {
  id: "same-signal-twice",
  check: ({ record }) => {
    const twice = record.meetings.filter((m) => m.echo);
    const first = twice[0];
    if (!first) return [];
    const bands = new Map(twice.map((m) => [JSON.stringify(bandFactsOf(m.victim)), bandFactsOf(m.victim)]));
    const differenceDb = Math.min(...twice.flatMap((m) => m.ciDb.map(Math.abs)));
    const grade = echoGrade(differenceDb);
    return [
      {
        severity: SEVERITY[grade],
        at: { part: record.part.id, port: first.port, service: first.victim.origin.service },
        parts: [record.part.id, first.victim.origin.part],
        wires: first.port.startsWith("#") ? [] : wireIdsAt(record, first.port),
        facts: {
          bands: [...bands.values()],
          fromMHz: first.fromMHz,
          toMHz: first.toMHz,
          differenceDb,
          grade,
        },
      },
    ];
  },
};

/** Where the notches lie is not known, so none is called lost; who has too little to spare for one is on an edge (`margin.ts`). */
const SEVERITY: Readonly<Record<EchoGrade, Severity>> = {
  deep: "warning",
  uneven: "warning",
  slight: "note",
};
