/** From a figure of a verdict to the carrier that it belongs to. */
import type { PartRecord } from "../../../evaluate/evaluation.ts";
import { barrierOf, handedOn } from "../../../findings/handedOn.ts";
import { carriersGot } from "../../../findings/reception.ts";
import { carriers } from "../../../sentences/phrases.ts";
import type { Service } from "../../../signal/carrier.ts";
import { cniDb } from "../../../signal/readout.ts";
import { type Question, questionAt } from "./question.ts";

/** The figure that was pressed. */
export type VerdictFigure = "levelMin" | "levelMax" | "cnMin";

const WHICH: Readonly<Record<VerdictFigure, string>> = {
  levelMin: "the weakest",
  levelMax: "the strongest",
  cnMin: "the one with the lowest C/N",
};

type Candidate = {
  readonly levelDbuv: number /** What disturbs is counted as noise. */;
  readonly cnDb: number;
  readonly ask: () => Question | null;
};

/** The question about the carrier behind a figure of a service; null when nothing is got of it. */
export function verdictQuestion(
  record: PartRecord,
  service: Service,
  figure: VerdictFigure,
): Question | null {
  const part = record.part.id;
  const { kind, options } = record;
  let which = "";
  const got: readonly Candidate[] = kind.reception
    ? carriersGot(record, service).map((c) => ({
        levelDbuv: c.levelDbuv,
        cnDb: c.cnDb,
        ask: () => ({
          at: { part, port: c.port },
          carrier: { origin: c.origin, index: c.index },
          ...(c.userBand === undefined ? {} : { userBand: c.userBand }),
          which,
        }),
      }))
    : handedOn(record, kind.delivery?.(options).sockets ?? [], service)
        .filter(({ port, band }) => !barrierOf(record, port, band))
        .map(({ port, band, i }) => ({
          levelDbuv: band.level[i] ?? 0,
          cnDb: cniDb(band, i),
          ask: () => questionAt({ part, port }, band, i, which),
        }));
  which = got.length > 1 ? `${WHICH[figure]} of ${carriers(got.length, service)}` : "";
  return pick(got, figure)?.ask() ?? null;
}

function pick(got: readonly Candidate[], figure: VerdictFigure): Candidate | undefined {
  const rank = (c: Candidate) =>
    figure === "cnMin" ? c.cnDb : figure === "levelMin" ? c.levelDbuv : -c.levelDbuv;
  return got.reduce<Candidate | undefined>(
    (best, c) => (best === undefined || rank(c) < rank(best) ? c : best),
    undefined,
  );
}
