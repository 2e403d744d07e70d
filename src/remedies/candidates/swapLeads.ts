/** Two leads on each other's ports, swapped back. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Port, PortRole } from "../../parts/contract.ts";
import { outputFeed } from "../../parts/outputFeed.ts";
import type { Band, Spectrum } from "../../signal/band.ts";
import type { Service } from "../../signal/carrier.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";
import { recordsAround } from "./around.ts";
import { blamedOf } from "./mend.ts";

/** Ports that are there for something of their own: on others swapped leads make no difference. */
const OWN: readonly PortRole[] = [
  "plane",
  "band",
  "terrestrial",
  "position",
  "socket",
  "trunk",
  "tap",
  "input",
];

/** Trials that a swap stands back for each thing that does not speak for it. */
const PLACES_PER_DOUBT = 6;

/** Of the pairs at one part, so many are tried. */
const MOST_PAIRS = 6;

export const swapLeads: Idea = (site, finding) =>
  recordsAround(site, finding).flatMap((record) => {
    const outputs = swapsOf(site, record, "out");
    const isKnown = blamedOf(finding)?.does === "legs swapped" && blamedOf(finding)?.part === record.part.id;
    return [
      ...swapsOf(site, record, "in"),
      ...(isKnown ? outputs.map((swap) => ({ ...swap, doubt: 0 })) : outputs),
    ];
  });

function swapsOf(site: Site, record: PartRecord, side: Port["side"]): readonly Candidate[] {
  const ports = record.ports.filter(
    (p) => p.side === side && p.medium === "coax" && record.joined[p.id] && OWN.includes(p.role),
  );
  return ports
    .flatMap((a, i) => ports.slice(i + 1).map((b) => ({ a, b, doubt: doubtOf(site, record, a, b) })))
    .filter(
      ({ a, b }) =>
        (side === "in" || isSocket(a) === isSocket(b)) &&
        ![a, b].some((p) => isEnded(site, record, p)) &&
        !areRight(site, record, a, b),
    )
    .concat(side === "out" ? unlikeOutputs(record) : [])
    .sort((a, b) => a.doubt - b.doubt)
    .slice(0, MOST_PAIRS)
    .map(({ a, b, doubt }) => ({ ...swapped(record.part.id, a.id, b.id), doubt: doubt * PLACES_PER_DOUBT }));
}

/** Where a line is ended on purpose nobody else is meant to hang. */
function isEnded(site: Site, record: PartRecord, port: Port): boolean {
  return site.evaluation.record(record.joined[port.id]?.[0] ?? "")?.kind.trade.job === "load";
}

/** Outputs of the same converter that give feeds of different sorts: their leads are easily mistaken for each other. */
function unlikeOutputs({ kind, ports, joined, power }: PartRecord) {
  const outputs = ports.flatMap((port) => {
    const feed = port.side === "out" && joined[port.id] ? outputFeed(kind, power, port.id) : undefined;
    return feed ? [{ port, feed }] : [];
  });
  return outputs.flatMap((a, i) =>
    outputs.slice(i + 1).flatMap((b) => (a.feed === b.feed ? [] : [{ a: a.port, b: b.port, doubt: 0 }])),
  );
}

/** A socket takes a receiver's lead, which nobody plugs into a trunk. */
function isSocket({ role }: Port): boolean {
  return role === "socket";
}

/** A receiver's lead on a socket that is not for it, led to a free one of the same plate that is. */
export const otherSocket: Idea = (site, finding) =>
  recordsAround(site, finding).flatMap((record) => {
    const sockets = record.kind.delivery?.(record.options).sockets ?? [];
    const free = sockets.flatMap((s) => record.ports.filter((p) => p.id === s.port && !record.joined[p.id]));
    return record.ports
      .filter((p) => record.joined[p.id] && fitOf(site, record, p, p) === "wrong")
      .flatMap((from) =>
        free.filter((to) => fitOf(site, record, from, to) === "right").map((to) => moved(record, from, to)),
      );
  });

function moved({ part: { id } }: PartRecord, from: Port, to: Port): Candidate {
  return candidate("other-socket", [id, from.id, to.id], { from: from.id, to: to.id }, (design) => {
    const d = draft(design);
    const end = d.other([id, from.id]);
    if (!end) return null;
    d.unjoin([id, from.id]);
    d.join([id, to.id], end);
    return d.result();
  });
}

function swapped(id: string, a: string, b: string): Candidate {
  return candidate("swap-leads", [id, a, b], { ports: [a, b] }, (design) => {
    const d = draft(design);
    const [first, second] = [d.other([id, a]), d.other([id, b])];
    if (!first || !second) return null;
    d.unjoin([id, a]);
    d.unjoin([id, b]);
    d.join([id, a], second);
    d.join([id, b], first);
    return d.result();
  });
}

/** 0: both ports have what belongs on the other one; the more, the less speaks for a swap. */
function doubtOf(site: Site, record: PartRecord, a: Port, b: Port): number {
  const is = (here: Port, as: Port) => fitOf(site, record, here, as);
  const wrong = Number(is(a, a) === "wrong") + Number(is(b, b) === "wrong");
  const better = Number(is(a, b) === "right") + Number(is(b, a) === "right");
  return 4 - wrong - better;
}

/** Both leads are seen to be where they belong. */
function areRight(site: Site, record: PartRecord, a: Port, b: Port): boolean {
  return fitOf(site, record, a, a) === "right" && fitOf(site, record, b, b) === "right";
}

type Fit = "right" | "wrong" | "unknown";

/** Whether what is plugged in at one port is what another one is meant for. */
function fitOf(site: Site, record: PartRecord, here: Port, as: Port): Fit {
  if (here.side === "out") return socketFit(site, record, here, as);
  return arrivalFit(record.inputs[here.id], as);
}

/** A socket is meant for a receiver of its services. */
function socketFit(site: Site, record: PartRecord, here: Port, as: Port): Fit {
  const [id = "", port = ""] = record.joined[here.id] ?? [];
  const other = site.evaluation.record(id);
  const input = other?.kind.reception?.(other.options).inputs.find((i) => i.port === port);
  const socket = record.kind.delivery?.(record.options).sockets.find((s) => s.port === as.id);
  if (!input || !socket) return "unknown";
  return input.services.some((service) => socket.services.includes(service)) ? "right" : "wrong";
}

function arrivalFit(spectrum: Spectrum | undefined, as: Port): Fit {
  const [band] = spectrum?.bands ?? [];
  if (!band || !isNamed(as)) return "unknown";
  return isMeantFor(band, as) ? "right" : "wrong";
}

/** What is meant for the ports of a diplexer. */
const MEANT: Readonly<Record<string, Service>> = {
  tv: "tv",
  uhf: "tv",
  sat: "satellite",
  fm: "fm",
  dab: "dab",
};

function isNamed({ id, role }: Port): boolean {
  return role === "terrestrial" || role === "plane" || (role === "band" && MEANT[id] !== undefined);
}

/** Ports of planes are named after them, those of diplexers after the service. */
function isMeantFor({ origin, half }: Band, { id, role }: Port): boolean {
  if (role === "terrestrial") return origin.service !== "satellite";
  if (role === "plane") {
    if (origin.service !== "satellite" || origin.polarisation === undefined) return false;
    const plane = `${origin.polarisation.toLowerCase()}${id.length > 1 ? (half?.[0] ?? "") : ""}`;
    return id.startsWith(plane);
  }
  return MEANT[id] === origin.service;
}
