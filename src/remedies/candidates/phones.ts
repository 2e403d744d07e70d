/** Phone masts that come in with the aerial: a filter before the amplifier. */
import type { PartId } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";

/** Top of the mast's neighbours below: which filter leaves the channels that are on air. */
const EDGE_700_MHZ = 694;

export const phoneFilter: Idea = (site, finding) =>
  withNext(site, finding.parts).flatMap((record): Candidate[] => {
    const { id } = record.part;
    return Object.entries(record.inputs).flatMap(([input, spectrum]): Candidate[] => {
      if (!spectrum.bands.some((b) => b.origin.service === "mobile")) return [];
      const highest = spectrum.bands
        .filter((b) => b.origin.service === "tv")
        .reduce((top, b) => Math.max(top, b.grid.toMHz), 0);
      const band = highest > EDGE_700_MHZ ? "800" : "700";
      return [
        candidate("phone-filter", [id, input, band], {}, (design) => {
          const d = draft(design);
          d.insert("filter-mobile", { band }, [id, input]);
          return d.result();
        }),
      ];
    });
  });

/** The parts, and whatever follows where something gets in from outside: one filter there serves all behind it. */
function withNext({ evaluation }: Site, parts: readonly PartId[]): readonly PartRecord[] {
  const ids = parts.flatMap((id) => {
    const record = evaluation.record(id);
    if (record?.kind.trade.job !== "unwanted signal") return [id];
    return [id, ...Object.values(record.joined).map(([next]) => next)];
  });
  return [...new Set(ids)].flatMap((id) => evaluation.record(id) ?? []);
}

/** The best class that the trade keeps in store, for cables and for all else. */
const BEST_CLASS = { cable: "A++", other: "A" } as const;

/** A poorly screened cable, outlet or joint gives way to a better one. */
export const betterScreen: Idea = (site, finding) =>
  finding.parts.flatMap((id): Candidate[] => {
    const record = site.evaluation.record(id);
    const key = record && optionMeaning(record.kind, "screening");
    if (!record || key === undefined || !record.treatment.ingress) return [];
    const to = record.kind.trade.job === "cable" ? BEST_CLASS.cable : BEST_CLASS.other;
    if (record.options[key] === to) return [];
    return [
      candidate("better-screen", [id, to], { to }, (design) => {
        const d = draft(design);
        d.set(id, { [key]: to });
        return d.result();
      }),
    ];
  });

/** A pick-up that comes in by the cable itself is stopped where it comes in. */
export const screenCable: Idea = (site, finding) =>
  finding.parts.flatMap((id): Candidate[] => {
    const record = site.evaluation.record(id);
    if (record?.kind.trade.job !== "unwanted signal" || !record.joined.in || !record.joined.out) return [];
    return [
      candidate("screen-cable", [id], {}, (design) => {
        const d = draft(design);
        d.remove(id);
        return d.result();
      }),
    ];
  });
