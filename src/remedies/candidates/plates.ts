/** Plates: one that has just the sockets that are needed, also for leads that hang loose now. */
import type { PortRef } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Finding } from "../../findings/finding.ts";
import { CATALOGUE, defaultOptions } from "../../parts/catalogue.ts";
import type { PartKind, Port } from "../../parts/contract.ts";
import type { Service } from "../../signal/carrier.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";
import { recordsAround } from "./around.ts";

/** Kinds with sockets, those with the fewest ports first: what has no filters takes nothing away. */
const PLATES = CATALOGUE.filter((kind) => kind.delivery)
  .map((kind) => ({ kind, ports: kind.ports(defaultOptions(kind)) }))
  .sort((a, b) => a.ports.length - b.ports.length);

/** Trials that another plate stands back where nothing points at it. */
const NOT_NAMED = 6;
/** Of the leads that hang loose near a plate, so many are thought of. */
const MOST_LOOSE = 2;

/** Another plate in the place of one, with every lead on the socket that it belongs on. */
export const otherPlate: Idea = (site, finding) =>
  platesAround(site, finding).flatMap((record): readonly Candidate[] => {
    const leads = leadsAt(site, record);
    const loose = looseNear(site, record);
    const wishes = [leads, ...(loose.length > 0 ? [[...leads, ...loose]] : [])];
    const isMeant = loose.length > 0 || finding.parts.includes(record.part.id);
    // Nobody takes a plate off the wall for too much level, unless it is the plate that gives too much.
    const isNamed = finding.parts[0] === record.part.id;
    if (!isNamed && (finding.at.side === "too much" || finding.rule === "tuner-blocked")) return [];
    const kept = servicesHandedOn(site, record);
    return wishes.flatMap((wanted) => {
      const one = plateFor(record, wanted, kept) ?? plateFor(record, wanted, []);
      return one ? [isMeant ? one : { ...one, doubt: NOT_NAMED }] : [];
    });
  });

/** Plates on the ways of a finding; all of them where something that it is about hangs loose. */
function platesAround(site: Site, finding: Finding): readonly PartRecord[] {
  const around = recordsAround(site, finding);
  const isLoose = around.some(hangsLoose);
  return (isLoose ? site.evaluation.records : around).filter((record) => record.kind.delivery);
}

/** Nothing leads to any of its inputs. */
function hangsLoose({ ports, joined }: PartRecord): boolean {
  const inputs = ports.filter((p) => p.side === "in");
  return inputs.length > 0 && inputs.every((p) => !joined[p.id]);
}

/** What hangs on an output of a plate, or should: where it leads to, and what it is for. */
type Lead = { readonly to: PortRef; readonly services: readonly Service[] };

function leadsAt(site: Site, record: PartRecord): readonly Lead[] {
  return record.ports.flatMap((p) => {
    const to = p.side === "out" ? record.joined[p.id] : undefined;
    return to ? [leadTo(site, to)] : [];
  });
}

/** A lead to no receiver is the line that goes on: it is for nothing of its own. */
function leadTo(site: Site, to: PortRef): Lead {
  const other = site.evaluation.record(to[0]);
  const input = other?.kind.reception?.(other.options).inputs.find((i) => i.port === to[1]);
  return { to, services: input?.services ?? [] };
}

/** Inputs of parts that nothing leads to, the nearest on the drawing first. */
function looseNear(site: Site, record: PartRecord): readonly Lead[] {
  const [x, y] = record.part.at;
  return site.evaluation.records
    .filter((other) => other !== record && hangsLoose(other))
    .flatMap((other) => {
      const apart = Math.abs(other.part.at[0] - x) + Math.abs(other.part.at[1] - y);
      return other.ports
        .filter((p) => p.side === "in" && p.medium === "coax")
        .map((p) => ({ apart, lead: leadTo(site, [other.part.id, p.id]) }));
    })
    .sort((a, b) => a.apart - b.apart)
    .slice(0, MOST_LOOSE)
    .map(({ lead }) => lead);
}

/** Services that come out of a plate now, whether somebody is plugged in or not. */
function servicesHandedOn(site: Site, record: PartRecord): readonly Service[] {
  const verdict = site.report.verdicts.find((v) => v.part === record.part.id);
  return (verdict?.services ?? []).flatMap((s) => (s.got > 0 ? [s.service] : []));
}

/** The plainest other plate with a port for every lead and a socket for what is kept; undefined where there is none. */
function plateFor(
  record: PartRecord,
  leads: readonly Lead[],
  kept: readonly Service[],
): Candidate | undefined {
  const inputs = record.ports.filter((p) => p.side === "in" && record.joined[p.id]).length;
  for (const { kind, ports } of PLATES) {
    if (kind === record.kind || ports.filter((p) => p.side === "in").length < inputs) continue;
    const sockets = kind.delivery?.(defaultOptions(kind)).sockets ?? [];
    if (!kept.every((service) => sockets.some((s) => s.services.includes(service)))) continue;
    const places = leads.length > 0 ? portsFor(kind, ports, leads) : undefined;
    if (places) return replaced(record, kind, places);
  }
  return undefined;
}

type Move = { readonly to: PortRef; readonly port: string };

/** A port of its own for each lead. */
function portsFor(
  kind: PartKind,
  ports: readonly Port[],
  leads: readonly Lead[],
): readonly Move[] | undefined {
  const sockets = kind.delivery?.(defaultOptions(kind)).sockets ?? [];
  const free = new Set(ports.filter((p) => p.side === "out").map((p) => p.id));
  const moves: Move[] = [];
  for (const { to, services } of leads) {
    const port = [...free].find((id) => {
      const socket = sockets.find((s) => s.port === id);
      if (services.length === 0) return ports.some((p) => p.id === id && p.role === "trunk");
      return socket?.services.some((s) => services.includes(s)) ?? false;
    });
    if (port === undefined) return undefined;
    free.delete(port);
    moves.push({ to, port });
  }
  return moves;
}

function replaced(record: PartRecord, kind: PartKind, moves: readonly Move[]): Candidate {
  const { id } = record.part;
  const about = [id, kind.kind, ...moves.map((m) => m.to.join("."))] as const;
  return candidate("other-plate", about, { kind: kind.kind }, (design) => {
    const d = draft(design);
    for (const port of record.ports) if (port.side === "out") d.unjoin([id, port.id]);
    d.swap(id, kind.kind);
    for (const { to, port } of moves) d.join([id, port], to);
    return d.result();
  });
}
