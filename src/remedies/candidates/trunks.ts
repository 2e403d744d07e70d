/** Planes that a unit lacks although the LNB has them: the missing cables between the two. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { type Site, wayUp } from "../site.ts";
import { recordsAround } from "./around.ts";

/** A cable like its sisters for each plane that is missing. */
export const missingTrunks: Idea = (site, finding) =>
  recordsAround(site, finding)
    .filter((record) => record.kind.trade.job === "switch unit")
    .flatMap((unit): Candidate[] => {
      const planes = unit.ports.filter((p) => p.side === "in" && p.role === "plane");
      const free = planes.filter((p) => !unit.joined[p.id]);
      const sister = planes.find((p) => unit.joined[p.id]);
      const source = sister && sourceOf(site, unit, sister.id);
      if (!source || free.length === 0) return [];
      const leads = free.flatMap((p) => {
        const out = source.lnb.ports.find((o) => o.role === "plane" && p.id.startsWith(o.id));
        return out && !source.lnb.joined[out.id] && isOfSame(sister.id, p.id)
          ? [{ from: out.id, to: p.id }]
          : [];
      });
      if (leads.length === 0) return [];
      const [id, lnb] = [unit.part.id, source.lnb.part.id];
      return [
        candidate("missing-trunks", [id, lnb], { source: lnb, ports: leads.map((l) => l.to) }, (design) => {
          const d = draft(design);
          const [x, y] = unit.part.at;
          leads.forEach(({ from, to }, i) => {
            if (!source.cable) {
              d.join([lnb, from], [id, to]);
              return;
            }
            const cable = d.put("cable", source.cable, [x - 376, y + i * 96]);
            d.join([lnb, from], [cable, "in"]);
            d.join([cable, "out"], [id, to]);
          });
          return d.result();
        }),
      ];
    });

/** Inputs of one satellite end alike: "vl" and "hh", "vl2" and "hh2". */
function isOfSame(a: string, b: string): boolean {
  return a.replace(/^\D+/, "") === b.replace(/^\D+/, "");
}

type Source = { readonly lnb: PartRecord; readonly cable?: Readonly<Record<string, unknown>> };

/** The LNB behind a plane, and the cable between them, where there is one. */
function sourceOf(site: Site, unit: PartRecord, port: string): Source | undefined {
  const way = wayUp(site, [unit.part.id, port], "satellite");
  const index = way.findIndex(({ record }) => record.kind.trade.job === "converter");
  const lnb = way[index]?.record;
  if (!lnb) return undefined;
  const cable = way.slice(0, index).find(({ record }) => record.kind.trade.job === "cable");
  return cable ? { lnb, cable: cable.record.options } : { lnb };
}
