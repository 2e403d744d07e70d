/**
 * What fits a free port: parts that take what the line carries, likeliest first, and the usual runs of several parts.
 * What usually hangs on what is declared with the parts (`parts/neighbours.ts`).
 */
import type { PortRef } from "../../design/design.ts";
import type { Attachment } from "../../design/edits/attach.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { CATALOGUE } from "../../parts/catalogue.ts";
import type { PartKind, Port } from "../../parts/contract.ts";
import { usuallyAfter } from "../../parts/neighbours.ts";
import { WANTED_SERVICES } from "../../signal/carrier.ts";
import { type Carried, carriedAt } from "../carried.ts";
import { bestInput, isInputFor, isOutputFor, misfit } from "./inputs.ts";
import { runsOf } from "./runs.ts";
import { lastLength, lengthOption, made, sizesOf } from "./sizes.ts";

/**
 * Everything that may be joined to a free port; nothing for a port that is taken or gone.
 * @param lengthM of new cables [m]; absent: as long as the cable added last
 */
export function fitsAt(evaluation: Evaluation, ref: PortRef, lengthM?: number): readonly Attachment[] {
  const record = evaluation.record(ref[0]);
  const port = record?.ports.find((p) => p.id === ref[1]);
  if (!record || !port || record.joined[port.id]) return [];
  const length = lengthM ?? lastLength(evaluation);
  const carried = carriedAt(evaluation, ref);
  const ranked =
    port.side === "out"
      ? CATALOGUE.flatMap((kind) => after(kind, record.kind, port, carried, length))
      : CATALOGUE.flatMap((kind) => before(kind, record, port, length));
  // The order of the catalogue decides between equals.
  return ranked.sort((a, b) => a.rank - b.rank).map(({ attachment }) => attachment);
}

/** Smaller is likelier; a whole number is a place in the list of what is usual. */
type Ranked = { readonly rank: number; readonly attachment: Attachment };

/** Behind everything that is usual. */
const UNUSUAL = 100;
/** Other sizes of what is likely come behind all that is likely, but for the likeliest job itself. */
const OTHER_SIZE = 50;
/** Receivers are plugged into sockets rather than into anything else that may lead to them. */
const SOCKET_FIRST = 0.5;
/** A run stands right behind its first part alone. */
const RUN = 0.01;

function after(
  kind: PartKind,
  former: PartKind,
  output: Port,
  carried: Carried,
  lengthM: number | undefined,
): Ranked[] {
  const place = usuallyAfter(former, output).indexOf(kind.trade.job);
  return sizesOf(kind).flatMap((size, nth) => {
    const options = { ...size, ...lengthOption(kind, lengthM) };
    const part = made(kind, options);
    const input = bestInput(part, output, carried);
    if (!input) return [];
    const rank =
      placeRank(place, kind) + misfit(part, input, carried) + (nth > 0 && place !== 0 ? OTHER_SIZE : 0);
    const alone: Attachment = { kind: kind.kind, options, port: input.id, behind: [] };
    const runs = runsOf(alone, part, carried);
    return [alone, ...runs].map((attachment, i) => ({ rank: rank + i * RUN, attachment }));
  });
}

function before(kind: PartKind, record: PartRecord, input: Port, lengthM: number | undefined): Ranked[] {
  const options = lengthOption(kind, lengthM);
  const part = made(kind, options);
  const wanted = WANTED_SERVICES.filter((service) => isInputFor(record, input.id, service));
  const outputs = kind
    .ports(part.options)
    .filter((p) => p.side === "out" && p.medium === input.medium)
    .filter((p) => wanted.some((service) => isOutputFor(part, p, service)))
    .map((p) => ({
      id: p.id,
      rank:
        placeRank(usuallyAfter(kind, p).indexOf(record.kind.trade.job), kind) -
        (p.role === "socket" ? SOCKET_FIRST : 0),
    }));
  const [best] = outputs.sort((a, b) => a.rank - b.rank);
  if (!best) return [];
  const { gives } = kind.trade;
  const isWrongFeed = gives && record.kind.trade.takes && gives !== record.kind.trade.takes;
  const attachment: Attachment = { kind: kind.kind, options, port: best.id, behind: [] };
  return [{ rank: best.rank + (isWrongFeed ? OTHER_SIZE : 0), attachment }];
}

/** A defect is never what one means to put in: it comes last. */
function placeRank(place: number, kind: PartKind): number {
  return (place < 0 ? UNUSUAL : place) + (kind.trade.defect ? UNUSUAL : 0);
}
