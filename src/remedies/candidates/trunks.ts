/** Planes that a unit lacks although the LNB has them: the missing cables between the two. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Port } from "../../parts/contract.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { type Site, wayUp } from "../site.ts";
import { recordsAround } from "./around.ts";

/** A cable like its sisters for each plane that is missing; for a whole satellite, from an LNB that nothing hangs on. */
export const missingTrunks: Idea = (site, finding) =>
  recordsAround(site, finding)
    .filter((record) => record.kind.trade.job === "switch unit")
    .flatMap((unit): Candidate[] => {
      const planes = unit.ports.filter((p) => p.side === "in" && p.role === "plane");
      const known = planes.find((p) => unit.joined[p.id]);
      const sister = known && sourceOf(site, unit, known.id);
      const satellites = [...new Set(planes.map((p) => p.plane?.position))];
      return satellites.flatMap((position): readonly Candidate[] => {
        const own = planes.filter((p) => p.plane?.position === position);
        const free = own.filter((p) => !unit.joined[p.id]);
        const first = own.find((p) => unit.joined[p.id]);
        const source = first ? sourceOf(site, unit, first.id) : sister && { ...sister, lnb: idleLnb(site) };
        return source?.lnb ? led(unit, free, { ...source, lnb: source.lnb }) : [];
      });
    });

/** An LNB with a plane on each output, none of which leads anywhere. */
function idleLnb({ evaluation }: Site): PartRecord | undefined {
  return evaluation.records.find(
    ({ kind, ports, joined }) =>
      kind.trade.gives === "planes" && ports.every((p) => p.side === "in" || !joined[p.id]),
  );
}

function led(unit: PartRecord, free: readonly Port[], source: Source): readonly Candidate[] {
  const leads = free.flatMap(({ id, plane }) => {
    const out = source.lnb.ports.find(
      ({ side, plane: own }) =>
        side === "out" && own?.polarisation === plane?.polarisation && own?.half === plane?.half,
    );
    return out && !source.lnb.joined[out.id] ? [{ from: out.id, to: id }] : [];
  });
  if (leads.length === 0) return [];
  const [id, lnb] = [unit.part.id, source.lnb.part.id];
  const facts = { source: lnb, ports: leads.map((l) => l.to), cables: source.cable ? leads.length : 0 };
  return [
    candidate("missing-trunks", [id, lnb], facts, (design) => {
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
