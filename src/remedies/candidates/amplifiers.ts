/** Amplifiers put in, taken out, or exchanged for what should stand there. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { metresOf, optionMeaning, standardValues } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { type Step, wayUp } from "../site.ts";
import { AMPLIFYING_JOBS, excessDb, isForeign, SPARE_DB } from "./levels.ts";
import { curePlaceOf } from "./places.ts";

/** An amplifier that is not needed, taken out of the line: with its inserter, or a splitter in its place. */
export const amplifierAway: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  if (!place || excessDb(finding) <= 0 || isForeign(finding)) return [];
  const way = wayUp(site, [place.part.part.id, place.input], place.service).map((s) => s.record);
  return [place.part, ...way]
    .filter(({ kind }) => kind.inline && AMPLIFYING_JOBS.includes(kind.trade.job))
    .map(without);
};

function without(record: PartRecord): Candidate {
  const { id } = record.part;
  const used = record.ports.filter((p) => p.side === "out" && record.joined[p.id]);
  if (used.length < 2) {
    // An inserter that feeds nothing else any more goes with it.
    const port = record.power.load?.ports[0] ?? "";
    const unit = record.kind.trade.job === "mast amplifier" ? record.feeds[port]?.[0]?.part : undefined;
    return candidate("amplifier-away", [id], {}, (design) => {
      const d = draft(design);
      const isUnit = kindOf(d.part(unit ?? "")?.kind ?? "")?.trade.job === "supply";
      d.remove(id, ...(unit !== undefined && isUnit ? [unit] : []));
      return d.result();
    });
  }
  const kind = kindOf("splitter");
  const key = kind && optionMeaning(kind, "ways");
  const ways = kind && key ? standardValues(kind, key).find((n) => n >= used.length) : undefined;
  return candidate("passive-splitter", [id], { ways: ways ?? used.length }, (design) => {
    if (key === undefined || ways === undefined) return null;
    const d = draft(design);
    const input = record.ports.find((p) => p.side === "in")?.id ?? "";
    const [before, ...after] = [[id, input] as const, ...used.map((p) => [id, p.id] as const)].map(d.other);
    if (!before) return null;
    for (const { id: port } of [...used, { id: input }]) d.unjoin([id, port]);
    d.swap(id, "splitter", { [key]: ways });
    d.join(before, [id, "in"]);
    after.forEach((end, i) => {
      if (end) d.join([id, `out${i + 1}`], end);
    });
    return d.result();
  });
}

/** A masthead amplifier for a satellite line amplifier that somebody took for one. */
export const tvAmplifier: Idea = (site, finding) => {
  const record = site.evaluation.record(finding.parts[0] ?? "");
  const service = curePlaceOf(site, finding)?.service;
  if (record?.kind.trade.madeFor !== "satellite" || service === "satellite") return [];
  const { id } = record.part;
  return [
    candidate("tv-amplifier", [id], {}, (design) => {
      const d = draft(design);
      d.swap(id, "amp-masthead", { takes: service === "tv" ? "uhf" : "all" });
      return d.result();
    }),
  ];
};

/** An amplifier for satellite IF before the longest cable of a line that is too weak. */
export const lineAmplifier: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  const under = -excessDb(finding);
  if (place?.service !== "satellite" || under <= 0) return [];
  const way = wayUp(site, [place.part.part.id, place.input], "satellite");
  const metres = ({ record }: Step) => metresOf(record.kind, record.options) ?? 0;
  const longest = way.filter((step) => metres(step) > 0).sort((a, b) => metres(b) - metres(a))[0];
  if (!longest?.in) return [];
  const id = longest.record.part.id;
  const shared = longest.record.inputs.in?.bands.some((b) => b.origin.service !== "satellite") ?? false;
  const wide =
    longest.record.inputs.in?.bands.some((b) => b.origin.service === "satellite" && b.grid.fromMHz < 900) ??
    false;
  const gainDb = Math.min(20, Math.max(8, Math.ceil(under + SPARE_DB + 1)));
  return [
    candidate("line-amplifier", [id, gainDb], { db: gainDb }, (design) => {
      const d = draft(design);
      const range = wide ? { fromMHz: 290, toMHz: 2350 } : {};
      d.insert("amp-if", { ...range, gainDb, below: shared ? "passed" : "stopped" }, [id, "in"]);
      return d.result();
    }),
  ];
};
