/** A lead that is off: a free output and a free input that belong together. */
import type { PortRef } from "../../design/design.ts";
import { reaches } from "../../design/lookup.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { Port } from "../../parts/contract.ts";
import { remembered } from "../../signal/remember.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";
import { recordsAround } from "./around.ts";

type Loose = { readonly record: PartRecord; readonly port: Port };

type Pair = { readonly from: Loose; readonly to: Loose; readonly strangeness: number };

/** Of the pairs that a finding calls to mind, so many are tried. */
const MOST_PAIRS = 6;

/** Plugs a loose lead in where it most likely belongs. */
export const plugIn: Idea = (site, finding) => {
  const near = new Set(recordsAround(site, finding).map((r) => r.part.id));
  return pairsOf(site)
    .filter(({ from, to }) => near.has(from.record.part.id) || near.has(to.record.part.id))
    .slice(0, MOST_PAIRS)
    .map(({ from, to, strangeness }) => ({ ...plugged(refOf(from), refOf(to)), doubt: strangeness }));
};

function plugged(from: PortRef, to: PortRef): Candidate {
  return candidate("plug-in", [...to, ...from], { from, to }, (design) => {
    const d = draft(design);
    d.join(from, to);
    return d.result();
  });
}

function refOf({ record, port }: Loose): PortRef {
  return [record.part.id, port.id];
}

const pairs = new WeakMap<Evaluation, readonly Pair[]>();

/** Every free output with every free input that it fits, the most natural pair first. */
function pairsOf(site: Site): readonly Pair[] {
  return remembered(pairs, site.evaluation, () => {
    const free = (side: Port["side"]) =>
      site.evaluation.records.flatMap((record) =>
        record.ports
          .filter((port) => port.side === side && !record.joined[port.id])
          .map((port): Loose => ({ record, port })),
      );
    const inputs = free("in");
    return free("out")
      .flatMap((from) => inputs.flatMap((to) => pairOf(site, from, to) ?? []))
      .sort((a, b) => a.strangeness - b.strangeness);
  });
}

function pairOf(site: Site, from: Loose, to: Loose): Pair | undefined {
  if (from.port.medium !== to.port.medium || !isMeant(from, to) || isAcross(site, from, to)) return undefined;
  if (reaches(site.design.wires, to.record.part.id, from.record.part.id)) return undefined;
  return { from, to, strangeness: strangenessOf(from, to) };
}

/** From the roof into the room without a cable, where others have one. */
function isAcross({ evaluation }: Site, from: Loose, to: Loose): boolean {
  const isRoof = from.record.kind.family === "convert" || from.record.kind.family === "receive";
  if (!isRoof || to.record.kind.family !== "use") return false;
  return evaluation.records.some((r) => r.kind.trade.job === "cable");
}

/** A socket is for a receiver's lead, and only for one that takes what the socket offers. */
function isMeant({ record, port }: Loose, to: Loose): boolean {
  const socket = record.kind.delivery?.(record.options).sockets.find((s) => s.port === port.id);
  const input = to.record.kind.reception?.(to.record.options).inputs.find((i) => i.port === to.port.id);
  if (socket && !input) return false;
  if (to.record.kind.trade.job === "load") return isEnd(port);
  if (!socket || !input) return true;
  return input.services.some((service) => socket.services.includes(service));
}

function isEnd({ role }: Port): boolean {
  return role === "trunk" || role === "leg" || role === "tap";
}

/** How unlikely a pair is: ports of other planes, an output without signal, ends far apart on the drawing. */
function strangenessOf(from: Loose, to: Loose): number {
  const isNamed = from.port.role === "plane" && to.port.role === "plane";
  const isOther = isNamed && from.port.id.slice(0, 2) !== to.port.id.slice(0, 2) ? 4 : 0;
  // Units of a cascade hand each other their trunks, never the line of a subscriber.
  const isOffTrunk = from.record.kind === to.record.kind && from.port.role !== "trunk";
  const isSilent = (record: PartRecord) => Object.values(record.outputs).every((s) => s.bands.length === 0);
  const isLoose = ({ record }: Loose, side: Port["side"]) =>
    record.ports.every((p) => p.side !== side || !record.joined[p.id]);
  const [a, b] = [from.record.part.at, to.record.part.at];
  const apart = Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]);
  return (
    isOther +
    (isOffTrunk ? 3 : 0) +
    (isSilent(from.record) ? 3 : 0) +
    (isLoose(from, "out") ? 0 : 0.5) +
    (isLoose(to, "in") ? 0 : 0.5) +
    apart / (apart + 1000)
  );
}
