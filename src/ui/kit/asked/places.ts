/** Where a walk can end: the sockets of outlets and the inputs of receivers. */
import type { Evaluation, PartRecord } from "../../../evaluate/evaluation.ts";
import { carriersOffered } from "../../../findings/walk/choice.ts";
import { WANTED_SERVICES } from "../../../signal/carrier.ts";

export type WantedService = (typeof WANTED_SERVICES)[number];

export type WalkPlace = {
  /** Unique among the places of a design. */
  readonly key: string;
  readonly part: string;
  /** Socket or input; absent: whichever input of a receiver gets a carrier best. */
  readonly port?: string;
  /** "Plate 1, TV", "Receiver 2". */
  readonly label: string;
  readonly role: "receiver" | "outlet";
  readonly services: readonly WantedService[];
};

/** Receivers first: they are what somebody complains about. */
export function walkPlaces(evaluation: Evaluation): readonly WalkPlace[] {
  const places = evaluation.records.flatMap(walkPlacesOf);
  return [...places.filter((p) => p.role === "receiver"), ...places.filter((p) => p.role === "outlet")];
}

export function walkPlacesOf(record: PartRecord): readonly WalkPlace[] {
  const { part, kind, options, ports } = record;
  const name = part.label || part.id;
  const labelOf = (port: string) => ports.find((p) => p.id === port)?.label ?? port;
  const inputs = kind.reception?.(options).inputs ?? [];
  const sockets = kind.delivery?.(options).sockets ?? [];
  const place = (o: Omit<WalkPlace, "key" | "part">): WalkPlace => ({
    key: o.port === undefined ? part.id : `${part.id}/${o.port}`,
    part: part.id,
    ...o,
  });
  return [
    ...(inputs.length > 1
      ? [place({ label: name, role: "receiver", services: wanted(inputs.flatMap((i) => i.services)) })]
      : []),
    ...inputs.map(({ port, services }) =>
      place({
        port,
        label: inputs.length > 1 ? `${name}, ${labelOf(port)}` : name,
        role: "receiver",
        services: wanted(services),
      }),
    ),
    ...sockets.map(({ port, services }) =>
      place({ port, label: `${name}, ${labelOf(port)}`, role: "outlet", services: wanted(services) }),
    ),
  ];
}

function wanted(services: readonly string[]): readonly WantedService[] {
  return WANTED_SERVICES.filter((service) => services.includes(service));
}

/** Services of a place that some source sends; all of its services where nothing is sent at all. */
export function walkServicesAt(evaluation: Evaluation, place: WalkPlace): readonly WantedService[] {
  const record = evaluation.record(place.part);
  if (!record) return [];
  const sent = place.services.filter(
    (service) => carriersOffered(evaluation, record, { service }).length > 0,
  );
  return sent.length > 0 ? sent : place.services;
}

/** The input that puts supply and commands on the line of a place: its own, or that of a receiver behind a socket. */
export function supplySource(
  evaluation: Evaluation,
  { part, port }: Pick<WalkPlace, "part" | "port">,
): { readonly part: string; readonly port: string } | null {
  const record = evaluation.record(part);
  if (!record) return null;
  const supplies = record.power.supplies ?? [];
  const own = port === undefined ? supplies[0] : supplies.find((s) => s.port === port);
  if (own) return { part, port: own.port };
  const [arriving] = port === undefined ? [] : (record.feeds[port] ?? []);
  return arriving ? { part: arriving.part, port: arriving.port } : null;
}
