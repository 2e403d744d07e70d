import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Band } from "../../signal/band.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { isLive } from "../../signal/readout.ts";
import { type BandFacts, bandFactsOf } from "../bandFacts.ts";
import type { Severity } from "../finding.ts";
import { isFormer } from "../former.ts";
import { type RuleOf, wireIdsAt } from "../rule.ts";
import { isOfUse, userBandsBehind } from "../userBandsBehind.ts";

export type BandCutFacts = {
  /** Every signal of the service that loses something here, at the output that passes most of it. */
  readonly cuts: readonly CutFacts[];
};

export type CutFacts = {
  readonly band: BandFacts;
  readonly port: string;
  /** So many of so many carriers are cut; of user bands only those that somebody behind it uses. */
  readonly lost: number;
  readonly of: number;
  /** Stretches that are lost [MHz]. */
  readonly stretches: readonly { readonly fromMHz: number; readonly toMHz: number }[];
  /** The lowest carrier lost, and what is left of it [MHz, dBµV]. */
  readonly example: { readonly centreMHz: number; readonly levelDbuv: number };
};

/** A part that lets a band through, but not the whole of it. */
export const bandCut: RuleOf<"band-cut"> = {
  id: "band-cut",
  check: ({ record }) =>
    WANTED_SERVICES.flatMap((service) => {
      const cuts = cutsHere(record, service);
      const [first] = cuts;
      if (!first) return [];
      const lost = cuts.reduce((sum, cut) => sum + cut.facts.lost, 0);
      return [
        {
          severity: cuts.some((cut) => cut.severity === "error") ? ("error" as const) : first.severity,
          at: { part: record.part.id, port: first.facts.port, service },
          parts: [record.part.id] as const,
          wires: [...new Set(cuts.flatMap((cut) => wireIdsAt(record, cut.facts.port)))],
          value: lost,
          limit: 0,
          unit: first.facts.band.sort === "user bands" ? "user bands" : UNITS[service],
          facts: { cuts: cuts.map((cut) => cut.facts) },
        },
      ];
    }),
};

/** What is counted, as machines read it beside the number. */
const UNITS: Readonly<Record<(typeof WANTED_SERVICES)[number], string>> = {
  tv: "TV channels",
  dab: "DAB blocks",
  fm: "FM stations",
  satellite: "satellite transponders",
};

/** Carriers that get through; of user bands all of them, and those that somebody uses. */
type Live = { readonly live: number; readonly liveOfUse: number };

type CutHere = { readonly facts: CutFacts; readonly severity: Severity };

/** For every band of a service, the output that passes most of it, if it passes some but not all. */
function cutsHere(record: PartRecord, service: Service): readonly CutHere[] {
  const sockets = record.kind.delivery?.(record.options).sockets;
  const best = new Map<string, { port: string; band: Band; lost: readonly number[] } & Live>();
  // In the order of the part's outputs, so that the same design gives the same finding whatever came first.
  for (const { id: port } of record.ports) {
    const spectrum = record.outputs[port];
    const services = sockets?.find((s) => s.port === port)?.services;
    if (!spectrum || (services && !services.includes(service))) continue;
    for (const band of spectrum.bands) {
      if (band.origin.service !== service) continue;
      const { live, liveOfUse, lost } = countCut(record, port, band);
      const name = `${band.origin.key}${band.half ?? ""}${services ? port : ""}`;
      const former = best.get(name);
      if (live > 0 && (!former || live > former.live)) best.set(name, { port, band, live, liveOfUse, lost });
    }
  }
  return [...best.values()]
    .filter((cut) => cut.lost.length > 0)
    .map(({ port, band, lost, liveOfUse }) => ({
      severity: severityOf(record, port, band),
      facts: {
        band: bandFactsOf(band),
        port,
        lost: lost.length,
        of: liveOfUse + lost.length,
        stretches: stretchesOf(band, lost),
        example: { centreMHz: band.grid.centre[lost[0] ?? 0] ?? 0, levelDbuv: band.level[lost[0] ?? 0] ?? 0 },
      },
    }));
}

/** A user band that nobody uses may well be cut; a terrestrial filter may be meant so. */
function severityOf(record: PartRecord, port: string, band: Band): Severity {
  if (!band.stack) return band.origin.service === "satellite" ? "error" : "warning";
  return userBandsBehind(record, port).size > 0 ? "error" : "note";
}

/** Of user bands those count that receivers behind the output use; all of them, while none speaks from there. */
function countCut(record: PartRecord, port: string, band: Band): { readonly lost: readonly number[] } & Live {
  const used = userBandsBehind(record, port);
  const lost: number[] = [];
  let live = 0;
  let liveOfUse = 0;
  for (let i = 0; i < band.cut.length; i++) {
    if (isFormer(band, i)) continue;
    if (isLive(band, i)) {
      live++;
      if (isOfUse(band, i, used)) liveOfUse++;
    } else if (isOfUse(band, i, used) && isCutBy(band, i, record.part.id)) lost.push(i);
  }
  return { live, liveOfUse, lost };
}

/** Whether a carrier was taken away by this very part. */
export function isCutBy(band: Band, i: number, part: string): boolean {
  const mark = band.cut[i] ?? 0;
  return mark > 0 && band.cuts[mark - 1]?.part === part;
}

/** Runs of carriers; neighbours closer than half their width are one run. */
function stretchesOf(band: Band, carriers: readonly number[]): CutFacts["stretches"] {
  const runs: { fromMHz: number; toMHz: number }[] = [];
  for (const i of carriers) {
    const width = band.grid.width[i] ?? 0;
    const fromMHz = (band.grid.centre[i] ?? 0) - width / 2;
    const last = runs.at(-1);
    if (last && fromMHz <= last.toMHz + width / 2) last.toMHz = fromMHz + width;
    else runs.push({ fromMHz, toMHz: fromMHz + width });
  }
  return runs;
}
