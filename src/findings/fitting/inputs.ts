/** What a kind of part takes in by an input, and how well that suits what a line carries. */
import type { AnyOptions, Delivery, PartKind, Port } from "../../parts/contract.ts";
import type { Service } from "../../signal/carrier.ts";
import { type Carried, isOrLeadsTo } from "../carried.ts";
import { isMeantFor } from "../passesService.ts";

/** A part that is not there yet: its kind and all of its options. */
export type Made = { readonly kind: PartKind; readonly options: AnyOptions };

/** Behind everything that suits. */
const WRONG_FEED = 60;
const LOST_SERVICE = 0.2;
const IDLE_SOCKET = 0.1;
/** An input made for one band takes it with less loss than one that takes all. */
const OWN_BAND = -0.05;
/** Others of its job are meant more often. */
const RARE = 0.5;

/** Whether an input is made for a service; one that leads nowhere, as that of a load, is made for all. */
export function isInputFor({ kind, options }: Made, input: string, service: Service): boolean {
  const port = kind.ports(options).find((p) => p.id === input);
  if (port?.medium === "sky") return service === "satellite";
  const received = kind.reception?.(options).inputs;
  if (received) return received.some((each) => each.port === input && each.services.includes(service));
  const { paths = [] } = kind.signal(options, { id: "new", powered: true });
  const own = paths.filter((path) => path.from === input);
  return own.length === 0 || own.some((path) => isMeantFor(path.response, service));
}

/** Whether an output can give a service: its own, a socket's, or what some input takes in for it. */
export function isOutputFor(made: Made, output: Port, service: Service): boolean {
  const { kind, options } = made;
  const { emits = [] } = kind.signal(options, { id: "new", powered: true });
  if (emits.length > 0)
    return emits.some(
      ({ port, bands }) => isOrLeadsTo(port, output.id) && bands.some((b) => b.origin.service === service),
    );
  const socket = kind.delivery?.(options).sockets.find(({ port }) => port === output.id);
  if (socket) return socket.services.includes(service);
  return kind.ports(options).some((p) => p.side === "in" && isInputFor(made, p.id, service));
}

/** The input that suits an output best; undefined where none takes anything of what comes. */
export function bestInput(made: Made, output: Port, carried: Carried): Port | undefined {
  const suits = (input: Port) =>
    [...carried.services].filter((service) => isInputFor(made, input.id, service)).length +
    (isSamePlane(input, output) ? 1 : 0);
  const inputs = made.kind
    .ports(made.options)
    .filter((p) => p.side === "in" && p.medium === output.medium)
    .map((input) => ({ input, count: suits(input) }))
    .filter(({ count }) => count > 0 || carried.services.size === 0);
  return inputs.sort((a, b) => b.count - a.count)[0]?.input;
}

function isSamePlane(a: Port, b: Port): boolean {
  return (
    a.plane !== undefined && a.plane.polarisation === b.plane?.polarisation && a.plane.half === b.plane?.half
  );
}

/** What speaks against a part: services that it loses, sockets that stay idle, a feed that its receiver cannot use. */
export function misfit(made: Made, input: Port, carried: Carried): number {
  const { kind } = made;
  const lost = [...carried.services].filter((service) => !servesBy(made, input.id, service)).length;
  return (
    (suitsFeed(kind, carried) ? 0 : WRONG_FEED) +
    (kind.trade.isRare ? RARE : 0) +
    (input.role === "band" ? OWN_BAND : 0) +
    lost * LOST_SERVICE +
    idleSockets(made, input, carried) * IDLE_SOCKET
  );
}

/** A receiver need not receive all that comes; an outlet is for what it has sockets for, whatever it lets through. */
function servesBy(made: Made, input: string, service: Service): boolean {
  if (made.kind.reception) return true;
  if (!made.kind.delivery) return isInputFor(made, input, service);
  return socketsFedBy(made, input).some(({ services }) => services.includes(service));
}

/** Whether a part that takes one sort of satellite feed only can make use of that of a line. */
export function suitsFeed({ trade }: PartKind, { services, feed }: Carried): boolean {
  return !services.has("satellite") || !feed || !trade.takes || trade.takes === feed;
}

/** Sockets of an outlet that would have nothing for anybody, fed by this input alone. */
function idleSockets(made: Made, input: Port, { services }: Carried): number {
  const all = made.kind.delivery?.(made.options).sockets ?? [];
  const fed = socketsFedBy(made, input.id);
  const busy = fed.filter((s) => services.size === 0 || s.services.some((each) => services.has(each)));
  return all.length - busy.length;
}

/** Sockets of an outlet that hang on an input. */
export function socketsFedBy({ kind, options }: Made, input: string): Delivery["sockets"] {
  const { paths = [] } = kind.signal(options, { id: "new", powered: true });
  const sockets = kind.delivery?.(options).sockets ?? [];
  return sockets.filter(({ port }) => paths.some((path) => path.from === input && path.to === port));
}
